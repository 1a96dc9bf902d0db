import { describe, expect, test } from 'vitest';
import { allowableEsals, requiredModulus, requiredStructuralNumber } from 'settline/structure';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

const TERMS = { reliability: 50, overallDeviation: '0.45', serviceabilityLoss: '2.7' } as const;
const ground = { ...TERMS, resilientModulus: '5000 psi' } as const;
const road = { ...ground, structuralNumber: 3 } as const;

describe('the equation', () => {
  // by pencil: at 50 % and a loss of 2.7 two terms fall out; log10 4 = 0.602059991327962
  test('what is left at half reliability and the whole range of loss', () => {
    const log = 9.36 * 0.602059991327962 - 0.2 + 2.32 * 3.698970004336019 - 8.07;
    const { esals, standardNormalDeviate, beyondChart } = allowableEsals(road);
    expect(Math.log10(esals)).toBeCloseTo(log, 12);
    expect(Object.is(standardNormalDeviate, 0)).toBe(true);
    expect(beyondChart).toEqual([]);
  });

  test('reliability takes off its deviate times the deviation', () => {
    const sure = allowableEsals({ ...road, reliability: 90 });
    expect(sure.standardNormalDeviate).toBe(-1.282);
    const ratio = Math.log10(sure.esals / allowableEsals(road).esals);
    expect(ratio).toBeCloseTo(-1.282 * 0.45, 12);
    const own = allowableEsals({ ...road, reliability: 90, standardNormalDeviate: '-1.3' });
    expect(own.standardNormalDeviate).toBe(-1.3);
    expect(Math.log10(own.esals / sure.esals)).toBeCloseTo(-0.018 * 0.45, 12);
  });

  test('a loss of a tenth of the range', () => {
    // SN + 1 = 4: 4^5.19 = exp(5.19 x 1.386294361119891), by pencil 1332.57
    const lost = -1 / (0.4 + 1094 / Math.exp(5.19 * 1.386294361119891));
    const less = allowableEsals({ ...road, serviceabilityLoss: '0.27' });
    expect(Math.log10(less.esals / allowableEsals(road).esals)).toBeCloseTo(lost, 12);
  });

  test('the modulus goes in by the power 2.32', () => {
    const firm = allowableEsals({ ...road, resilientModulus: '10000 psi' });
    expect(firm.esals / allowableEsals(road).esals).toBeCloseTo(2 ** 2.32, 11);
    const metric = allowableEsals({ ...road, resilientModulus: '34.473786465841586789 MPa' });
    expect(metric.esals / allowableEsals(road).esals).toBeCloseTo(1, 12);
  });

  test('solved for the structural number and for the modulus', () => {
    const { esals } = allowableEsals(road);
    const back = requiredStructuralNumber({ ...ground, esals });
    expect(back.structuralNumber).toBeCloseTo(3, 12);
    expect(back.standardNormalDeviate).toBe(0);
    const asked = requiredModulus({ ...TERMS, esals, structuralNumber: 3 });
    expect(asked.resilientModulus.toNumber('psi')).toBeCloseTo(5000, 8);
  });

  test('where the ground alone is enough, none', () => {
    expect(requiredStructuralNumber({ ...ground, esals: '1e-3' }).structuralNumber).toBe(0);
  });

  test('what lies beyond the chart is told', () => {
    const beyond = (esals: number, resilientModulus: string) =>
      requiredStructuralNumber({ ...ground, esals, resilientModulus }).beyondChart;
    expect(beyond(50_000, '1000 psi')).toEqual([]);
    expect(beyond(49_999, '5000 psi')).toEqual(['esals']);
    expect(beyond(50_000_001, '40001 psi')).toEqual(['esals', 'resilient-modulus']);
    expect(beyond(50_000_000, '40000 psi')).toEqual([]);
    expect(allowableEsals({ ...road, resilientModulus: '900 psi' }).beyondChart).toContain(
      'resilient-modulus',
    );
    expect(requiredModulus({ ...TERMS, esals: 1e9, structuralNumber: 1 }).beyondChart).toEqual([
      'esals',
      'resilient-modulus',
    ]);
  });

  test('each carries a caution, a source and its working', () => {
    for (const { cautions, working } of [
      allowableEsals(road),
      requiredStructuralNumber({ ...ground, esals: 1e6 }),
      requiredModulus({ ...TERMS, esals: 1e6, structuralNumber: 3 }),
    ]) {
      expect(cautions.map(({ id }) => id)).toEqual(['pavement-design']);
      expect(new Set(working.map(({ source }) => source))).toEqual(
        new Set(['flexible-pavement-sheet']),
      );
    }
    const [step] = allowableEsals(road).working;
    expect(step?.result.value).toBe(allowableEsals(road).esals);
    expect(formulaOf(step)).toBe(
      'W = 10^(Z * s + 9.36 * log10(SN + 1) - 0.20 + log10(dPSI / 2.7) / (0.40 + 1094 / (SN + 1)^5.19) + 2.32 * log10(M / u) - 8.07)',
    );
    expect(step?.given.map(({ symbol }) => symbol)).toEqual(['SN', 'Z', 's', 'dPSI', 'M', 'u']);
  });
});

describe('refusals', () => {
  test('everything missing is said at once', () => {
    const faults = faultsOf(() => allowableEsals({} as never));
    expect(faults.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['structuralNumber', 'REQUIRED'],
      ['reliability', 'REQUIRED'],
      ['overallDeviation', 'REQUIRED'],
      ['serviceabilityLoss', 'REQUIRED'],
      ['resilientModulus', 'REQUIRED'],
    ]);
  });

  test.each([
    ['structuralNumber', 0, 'NOT_POSITIVE'],
    ['structuralNumber', 31, 'OUT_OF_RANGE'],
    ['reliability', 49, 'OUT_OF_RANGE'],
    ['reliability', 100, 'OUT_OF_RANGE'],
    ['reliability', NaN, 'NOT_FINITE'],
    ['overallDeviation', -0.1, 'NEGATIVE'],
    ['overallDeviation', 1.1, 'OUT_OF_RANGE'],
    ['serviceabilityLoss', 0.19, 'OUT_OF_RANGE'],
    ['serviceabilityLoss', 4.1, 'OUT_OF_RANGE'],
    ['standardNormalDeviate', 1.282, 'OUT_OF_RANGE'],
    ['resilientModulus', 5000, 'UNIT_MISSING'],
    ['resilientModulus', '0 psi', 'NOT_POSITIVE'],
    ['resilientModulus', '5000 lb', 'UNIT_UNKNOWN'],
    ['resilientModulus', '200000 MPa', 'OUT_OF_RANGE'],
  ] as const)('%s %j', (field, value, code) => {
    const issue = expectFault(() => allowableEsals({ ...road, [field]: value }), code);
    expect(issue.path).toEqual([field]);
  });

  test.each([
    [0, 'NOT_POSITIVE'],
    [1e11, 'OUT_OF_RANGE'],
  ] as const)('esals %j', (esals, code) => {
    expectFault(() => requiredStructuralNumber({ ...ground, esals }), code);
    expectFault(() => requiredModulus({ ...TERMS, structuralNumber: 3, esals }), code);
  });

  test('more than 30 would be needed', () => {
    const options = { ...ground, esals: 1e10, resilientModulus: '0.1 psi' };
    expect(expectFault(() => requiredStructuralNumber(options), 'OUT_OF_RANGE').path).toEqual([
      'esals',
    ]);
  });
});
