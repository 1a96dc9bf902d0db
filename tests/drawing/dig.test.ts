import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawDig } from 'settline/drawing';
import { planJob, renderJobSheet, type JobPlan } from 'settline/job';
import { formatLength, type Length } from 'settline/units';
import { heronYardFile } from '../heron-yard.js';
import { expectFault } from '../faults.js';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { PLANS, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, readXml, textsOf, type Element } from './read-svg.js';

const SYSTEMS = ['us', 'metric'] as const;
type System = (typeof SYSTEMS)[number];
const unitOf = (system: System) => (system === 'us' ? 'in' : 'mm');
const depthText = (depth: Length, system: System): string =>
  formatLength(depth, { as: unitOf(system), rounding: 'half-even' });
const wordsOf = (root: Element): string[] => elementsOf(root, 'text').map(({ text }) => text);
const drawn = (plan: JobPlan, pavement: string, system: System = 'metric'): Element =>
  readXml(drawDig(plan, { system, pavement }));

const cases = PLANS.flatMap((plan) =>
  plan.pavements.flatMap((pavement) =>
    SYSTEMS.map((system) => ({
      name: `${plan.name}, ${pavement.id}, ${system}`,
      plan,
      pavement,
      system,
    })),
  ),
);

describe('the deepest place is that of the plan, as the sheet prints it', () => {
  test.each(cases)('$name', ({ plan, pavement, system }) => {
    const root = drawn(plan, pavement.id, system);
    const words = wordsOf(root).join(' ');
    const { deepestCut } = pavement.earth;
    if (deepestCut === null) {
      const depth = depthText(pavement.dig.depth.abs(), system);
      expect(words).toContain(`One depth is used for the whole dig: ${depth}`);
      expect(textsOf(root, 'depth')).toEqual([]);
      expect(textsOf(root, 'strong')).toContain(depth);
      return;
    }
    const depth = depthText(deepestCut.depth, system);
    expect(textsOf(root, 'strong')).toContain(`deepest dig ${depth}`);
    expect(renderJobSheet(plan, { system, width: 120 })).toContain(depth);
    expect(words).toContain(`Deepest dig ${depth}, at x `);
  });
});

/** Places of the figures, read back from the coordinates along the sides. */
function figuresOf(
  root: Element,
): { readonly x: number; readonly y: number; readonly text: string }[] {
  const scale = (letter: 'x' | 'y') =>
    elementsOf(root, 'text').flatMap((element) => {
      const [, value] = new RegExp(`^${letter} (-?[\\d.]+) m$`).exec(element.text) ?? [];
      return value === undefined ? [] : [{ at: numberOf(element, letter), value: Number(value) }];
    });
  const along = (letter: 'x' | 'y') => {
    const marks = scale(letter);
    const [first, last] = [marks[0], marks.at(-1)];
    if (first === undefined || last === undefined || first === last) expect.unreachable('no scale');
    const each = (last.value - first.value) / (last.at - first.at);
    return (at: number) => first.value + (at - first.at) * each;
  };
  const [toX, toY] = [along('x'), along('y')];
  return (
    elementsOf(root, 'text')
      .filter(({ attributes }) => attributes['class'] === 'depth')
      // figures stand 6 above their crosses
      .map((element) => ({
        x: toX(numberOf(element, 'x')),
        y: toY(numberOf(element, 'y') + 6),
        text: element.text,
      }))
  );
}

describe('figures on the grid', () => {
  /** Ground that rises by 1 in 10 along x over a level finish. */
  const tilted = (): JobPlan => {
    const job = heronYardFile();
    const points: [number, number, number][] = [
      [-5, -5, 51],
      [25, -5, 54],
      [25, 25, 54],
      [-5, 25, 51],
    ];
    job['existingLevels'] = { unit: 'm', points };
    return planJob(job as never);
  };

  test('are ground less subgrade at their places, minus where it is filled', () => {
    const plan = tilted();
    const [drive] = plan.pavements;
    const total = drive?.buildUp.total.toNumber('m') ?? Number.NaN;
    const root = drawn(plan, 'drive');
    const figures = figuresOf(root);
    expect(figures.length).toBeGreaterThan(15);
    for (const { x, y, text } of figures) {
      const ground = 51.5 + x / 10;
      const finish = 52.05 + (0.35 * y) / 14;
      expect(Math.abs(Number(text) - 1000 * (ground - finish + total))).toBeLessThan(1.5);
    }
    expect(figures.some(({ text }) => text.startsWith('-'))).toBe(true);
    expect(figures.some(({ text }) => !text.startsWith('-'))).toBe(true);
  });

  test.each(cases)('none is covered by the mark of the deepest place: $name', (one) => {
    const root = drawn(one.plan, one.pavement.id, one.system);
    const marks = elementsOf(root, 'circle').map((mark) => [
      numberOf(mark, 'cx'),
      numberOf(mark, 'cy'),
      numberOf(mark, 'r'),
    ]);
    const covered = elementsOf(root, 'text')
      .filter(({ attributes }) => attributes['class'] === 'depth')
      .filter((figure) =>
        marks.some(
          ([cx = 0, cy = 0, r = 0]) =>
            Math.hypot(numberOf(figure, 'x') - cx, numberOf(figure, 'y') - 4 - cy) < r + 4,
        ),
      );
    expect(covered.map(({ text }) => text)).toEqual([]);
    expect(marks.length > 0).toBe(one.pavement.earth.deepestCut !== null);
  });

  test('have the zero line between minus and plus', () => {
    const root = drawn(tilted(), 'drive');
    const lines = elementsOf(root, 'line').filter(
      ({ attributes }) => attributes['class'] === 'zero',
    );
    expect(lines.length).toBeGreaterThan(10);
    expect(wordsOf(root).join(' ')).toContain('line where there is neither dig nor fill');
    expect(wordsOf(root).join(' ')).toMatch(/lowest ground \d+ mm below subgrade/);
    // more ground to the right: fill lies left of the line, dig right of it
    const figures = elementsOf(root, 'text').filter(
      ({ attributes }) => attributes['class'] === 'depth',
    );
    for (const figure of figures) {
      const [x, y] = [numberOf(figure, 'x'), numberOf(figure, 'y') + 6];
      const beside = lines.find((line) => {
        const [a, b] = [numberOf(line, 'y1'), numberOf(line, 'y2')];
        return Math.min(a, b) <= y && y <= Math.max(a, b);
      });
      if (beside === undefined) continue;
      const at = (numberOf(beside, 'x1') + numberOf(beside, 'x2')) / 2;
      if (Math.abs(at - x) < 8) continue;
      expect(figure.text.startsWith('-')).toBe(x < at);
    }
  });

  test('a dig without fill has no zero line, not in the legend either', () => {
    const root = drawn(planJob(heronYardFile() as never), 'drive');
    expect(wordsOf(root).join(' ')).not.toContain('neither dig nor fill');
    expect(figuresOf(root).every(({ text }) => !text.startsWith('-'))).toBe(true);
  });
});

describe('where one depth holds', () => {
  test('the digs at the stakes stand at the stakes', () => {
    const without = heronYardFile();
    delete without['existingLevels'];
    const plan = planJob(without as never);
    const [drive] = plan.pavements;
    expect(drive?.dig.basis).toBe('along-strings');
    const words = wordsOf(drawn(plan, 'drive'));
    const measured = plan.stringLines
      .filter(({ pavement }) => pavement === 'drive')
      .flatMap(({ stakes }) =>
        stakes.flatMap(({ id, dig }) => (dig === null ? [] : [{ id, dig }])),
      );
    expect(measured.length).toBeGreaterThan(0);
    for (const { id, dig } of measured) {
      expect(words).toContain(`${id}: ${depthText(dig, 'metric').replace(' mm', '')}`);
    }
    expect(words.join(' ')).toContain('the average along the strings.');
  });
});

describe('the layout of the depths', () => {
  test.each(PLANS.map((plan) => ({ name: plan.name, plan })))('$name', ({ plan }) => {
    for (const { id } of plan.pavements) {
      for (const style of STYLES) {
        expect(layoutFaults(drawDig(plan, { ...style, pavement: id }))).toEqual([]);
      }
    }
  });

  test('of made-up sites', () => {
    fc.assert(
      fc.property(site, fc.constantFrom(...SYSTEMS), (of, system) => {
        const plan = planJob(jobOf(of, system));
        for (const style of STYLES) {
          expect(layoutFaults(drawDig(plan, { ...style, pavement: 'drive' }))).toEqual([]);
        }
      }),
      runs(60),
    );
  });

  test('hostile names stay text and inside', () => {
    for (const name of ['<b>&"\'</b>', '\u05d0\u05d1 12', 'W'.repeat(60)]) {
      const job = heronYardFile();
      for (const pavement of job.pavements) pavement['name'] = name;
      const plan = planJob(job as never);
      for (const style of STYLES) {
        const svg = drawDig(plan, { ...style, pavement: 'drive' });
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toContain('<b>');
      }
    }
  });
});

test('what is no plan and pavements it has not are refused', () => {
  const [plan] = PLANS;
  if (plan === undefined) expect.unreachable();
  expectFault(() => drawDig({ ...plan }, { system: 'us', pavement: 'court' }), 'PLAN_INVALID');
  expectFault(() => drawDig(plan, { system: 'us', pavement: 'lawn' }), 'UNKNOWN_ID');
  expectFault(() => drawDig(plan, { system: 'us' } as never), 'REQUIRED');
});

test('the depths name the cautions', () => {
  const [plan] = PLANS;
  if (plan === undefined) expect.unreachable();
  expect(wordsOf(drawn(plan, 'court')).join(' ')).toContain('An open dig can cave in');
});
