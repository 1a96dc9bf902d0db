import { describe, expect, test } from 'vitest';
import { pathText, type Step } from 'settline';
import {
  inletArea,
  relativeDensity,
  reservoirDepth,
  soilPhases,
  stefanDepth,
} from 'settline/ground';
import { excavationGates } from 'settline/site';
import { expectFault } from '../faults.js';

const formulasOf = (steps: readonly Step[]): string[] =>
  steps.map((step) => (step.kind === 'formula' ? step.formula : step.procedure));

describe('working that depends on what is given', () => {
  test('a stone reservoir that stays empty has a depth of nothing', () => {
    const fast = { depth: '100 mm', time: '1 h' };
    const empty = reservoirDepth({ rain: '50 mm', infiltration: fast });
    expect(empty.depth.isZero()).toBe(true);
    expect(formulasOf(empty.working)).toEqual(['d = max(0, (q * R + P - f * t / T) / n)']);
    const slow = { depth: '5 mm', time: '1 h' };
    expect(formulasOf(reservoirDepth({ rain: '50 mm', infiltration: slow }).working)).toEqual([
      'd = max(0, (q * R + P - f * t / T) / n)',
    ]);
  });

  test('the rise to the far end of an inlet is worked out where its run is given', () => {
    const rain = { depth: '60 mm', time: '1 h' };
    const inlet = { capacity: '100 l/min', rain, coefficient: '0.8' };
    const last = (steps: readonly Step[]) => formulasOf(steps).at(-1);
    expect(last(inletArea(inlet).working)).toBe('A = Q * t / (C * p)');
    expect(last(inletArea({ ...inlet, run: '9 m', fall: '2%' }).working)).toBe('h = L * s');
  });

  test('a dig deeper than the table says so in its working', () => {
    const nameAt = (depth: string) =>
      excavationGates({ depth, soil: 'C' }).working.at(-1)?.result.name;
    expect(nameAt('10 ft')).toBe('offset');
    expect(nameAt('21 ft')).toBe('offset (table ends above this depth)');
  });
});

describe('soil that cannot be', () => {
  test.each<[string, () => unknown, string, string]>([
    [
      // 0.8 - 0.7 x 1.3 = -0.11
      'denser than without voids',
      () => relativeDensity({ maximumVoids: '0.8', minimumVoids: '0.1', percent: 130 }),
      'percent',
      'gives a negative void ratio. Check the percent',
    ],
    [
      // 2 - 1.6 x 1.3 = -0.08
      'no density at 130 %',
      () => relativeDensity({ loosest: '0.4 t/m3', densest: '2 t/m3', percent: 130 }),
      'percent',
      'no density is that far past the densest state',
    ],
    [
      // 0.5 x 1.5 = 0.75
      'solids lighter than water',
      () => soilPhases({ dryDensity: '500 kg/m3', voidRatio: '0.5', moisture: '0.1' }),
      'dryDensity',
      'these figures make the specific gravity of the solids 0.75; soil has 1 to 5',
    ],
    [
      'ground too dry to hold frost back',
      () =>
        stefanDepth({
          airIndex: { value: 5000, unit: 'C-days' },
          surfaceFactor: 1,
          layers: [
            {
              name: 'dry gravel',
              conductivity: { value: 3, unit: 'W/(m K)' },
              latentHeat: { value: 1, unit: 'kJ/m3' },
            },
          ],
        }),
      'layers',
      'frost would go below',
    ],
  ])('%s', (_name, run, path, words) => {
    const { path: at, message } = expectFault(run, 'OUT_OF_RANGE');
    expect(pathText(at)).toBe(path);
    expect(message).toContain(words);
  });

  test.each([
    // 2.6 / 1.4 = 1.857
    [
      'dryDensity',
      { dryDensity: '2000 kg/m3', specificGravity: '2.6', voidRatio: '0.4', moisture: '0.1' },
    ],
    ['voidRatio', { voidRatio: '0.4', porosity: '0.2', specificGravity: '2.6', moisture: '0.1' }],
  ] as const)('%s that the other figures contradict', (path, figures) => {
    const { path: at, message } = expectFault(() => soilPhases(figures), 'CONFLICTING_FIELDS');
    expect(pathText(at)).toBe(path);
    expect(message).toContain(
      path === 'dryDensity' ? 'make it 1.857 times that of water.' : 'make it 0.25.',
    );
  });
});
