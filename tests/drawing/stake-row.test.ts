import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawStakeRow, type DrawOptions } from 'settline/drawing';
import { describeMove, planJob } from 'settline/job';
import { checkStakeLine, type StakeLine } from 'settline/stakes';
import { formatLength, length, type Length } from 'settline/units';
import { expectFault } from '../faults.js';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { PLANS, STYLES } from './drawn-plans.js';
import { layoutFaults } from './layout-faults.js';
import { elementsOf, numberOf, readXml, type Element } from './read-svg.js';

const drawn = (row: Parameters<typeof drawStakeRow>[0], options: DrawOptions = { system: 'us' }) =>
  readXml(drawStakeRow(row, options));
const wordsOf = (root: Element): string[] => elementsOf(root, 'text').map(({ text }) => text);
const inches = (value: Length): string => formatLength(value, { as: 'in', rounding: 'half-even' });

const lines = PLANS.flatMap((plan) =>
  plan.stringLines.map((line) => ({ name: `${plan.name}, ${line.id}`, line })),
);

/** The stakes in the picture, in the order of the row. */
const stakesOf = (
  root: Element,
): { readonly x: number; readonly y: number; readonly isOut: boolean }[] =>
  elementsOf(root, 'rect')
    .filter(({ attributes }) => (attributes['class'] ?? '').startsWith('stake'))
    .map((one) => ({
      x: numberOf(one, 'x') + 5,
      y: numberOf(one, 'y') + 5,
      isOut: one.attributes['class'] === 'stake solid',
    }));

const heightOf = (root: Element): number => {
  const [line] = elementsOf(root, 'line').filter(
    ({ attributes }) => attributes['class'] === 'string',
  );
  if (line === undefined) expect.unreachable('no line');
  return numberOf(line, 'y1');
};

describe('a row of a plan', () => {
  test.each(lines)('$name: figures and places', ({ line }) => {
    const root = drawn(line);
    const words = wordsOf(root);
    const stakes = stakesOf(root);
    const zero = heightOf(root);
    const factor = Number(/drawn ([\d.]+) times/.exec(words.join(' '))?.[1] ?? 1);
    const [first, last] = [stakes[0], stakes.at(-1)];
    const [from, to] = [line.stakes[0], line.stakes.at(-1)];
    const scale =
      ((last?.x ?? 0) - (first?.x ?? 0)) /
      ((to?.station.toNumber('m') ?? 0) - (from?.station.toNumber('m') ?? 0));
    expect(stakes).toHaveLength(line.stakes.length);
    line.stakes.forEach(({ id, station, offset, inTolerance }, k) => {
      const along = station.minus(from?.station ?? station).toNumber('m');
      expect((stakes[k]?.x ?? 0) - (first?.x ?? 0)).toBeCloseTo(along * scale, 1);
      expect(zero - (stakes[k]?.y ?? 0)).toBeCloseTo(offset.toNumber('m') * scale * factor, 1);
      expect(stakes[k]?.isOut).toBe(!inTolerance);
      const at = formatLength(station, { as: 'ft-in', nearest: '1/8 in' });
      const off = inches(offset.abs());
      const side = offset.isNegative() ? 'right' : 'left';
      const told = off === '0 in' ? 'on the line' : `${off} ${side}`;
      expect(words).toContain(`${id} at ${at}: ${told}${inTolerance ? '' : ' OUT'}`);
    });
    const facing = { from: from?.id ?? '', to: to?.id ?? '' };
    for (const move of line.moves)
      expect(words).toContain(describeMove(move, { system: 'us', facing }));
    expect(words.join(' ')).toContain(line.note);
  });

  test('has an arrow for each move, from the stake to the line', () => {
    const line = lines.find(({ line: { moves } }) => moves.length > 0)?.line;
    if (line === undefined) expect.unreachable();
    const root = drawn(line);
    const arrows = elementsOf(root, 'line').filter(
      ({ attributes, ...one }) =>
        attributes['class'] === 'fall' &&
        numberOf({ attributes, ...one }, 'x1') === numberOf({ attributes, ...one }, 'x2'),
    );
    expect(arrows).toHaveLength(line.moves.length);
    const [arrow] = arrows;
    const out = stakesOf(root).find(({ isOut }) => isOut);
    if (arrow === undefined || out === undefined) expect.unreachable();
    expect(numberOf(arrow, 'y1')).toBeCloseTo(out.y, 1);
    expect(numberOf(arrow, 'y2')).toBeCloseTo(heightOf(root), 1);
  });

  test('has its tolerance on both sides of the line', () => {
    const [first] = lines;
    if (first === undefined) expect.unreachable();
    const root = drawn(first.line);
    const limits = elementsOf(root, 'line').filter(
      ({ attributes }) => attributes['class'] === 'lift' && Number(attributes['x2']) > 400,
    );
    const [up, down] = limits.map((one) => numberOf(one, 'y1'));
    expect(limits).toHaveLength(2);
    expect(heightOf(root) - (up ?? 0)).toBeCloseTo((down ?? 0) - heightOf(root), 1);
    expect(wordsOf(root).join(' ')).toContain(`In line within ${inches(first.line.tolerance)}.`);
  });
});

const row = (offsets: readonly number[], reference: 'ends' | 'best-fit' = 'ends'): StakeLine =>
  checkStakeLine({
    stakes: offsets.map((offset, k) => ({ id: `P${k}`, x: `${k * 2} m`, y: `${offset} mm` })),
    tolerance: '5 mm',
    reference,
  });

describe('a row by itself', () => {
  test('has no string and tells its moves', () => {
    const words = wordsOf(drawn(row([0, 14, 0, 0]), { system: 'metric' }));
    expect(words).toContain('A row of stakes, seen from above');
    expect(words).toContain('facing from P0 to P3, move P1 14 mm right');
    expect(words).toContain('P1: 14 mm left OUT');
  });

  test('moves that are alternatives are told as such', () => {
    const moves = row([0, 20, 0], 'best-fit');
    expect(moves.ambiguous).toBe(true);
    const words = wordsOf(drawn(moves, { system: 'metric' }));
    expect(words.join(' ')).toContain('move to make: one of them, not all');
    expect(words.join(' ')).toContain(moves.note);
  });

  test('in any shape lies apart and inside', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -3000, max: 3000 }), { minLength: 2, maxLength: 40 }),
        fc.constantFrom('ends' as const, 'best-fit' as const),
        (offsets, reference) => {
          const checked = row(offsets, reference);
          for (const style of STYLES)
            expect(layoutFaults(drawStakeRow(checked, style))).toEqual([]);
        },
      ),
      runs(60),
    );
  });
});

describe('the layout of a row', () => {
  test.each(lines)('$name', ({ line }) => {
    for (const style of STYLES) expect(layoutFaults(drawStakeRow(line, style))).toEqual([]);
  });

  test('of made-up sites', () => {
    fc.assert(
      fc.property(site, fc.constantFrom('us' as const, 'metric' as const), (of, system) => {
        for (const line of planJob(jobOf(of, system)).stringLines) {
          for (const style of STYLES) expect(layoutFaults(drawStakeRow(line, style))).toEqual([]);
        }
      }),
      runs(60),
    );
  });

  test('hostile names stay text and inside', () => {
    for (const name of ['<b>&"\'</b>', '\u05d0\u05d1 12', 'W'.repeat(60)]) {
      const hostile = checkStakeLine({
        stakes: [
          { id: name, x: '0 m', y: '0 m' },
          { id: 'B', x: '3 m', y: '30 mm' },
          { id: 'C', x: '6 m', y: '0 m' },
        ],
        tolerance: '5 mm',
      });
      for (const style of STYLES) {
        const svg = drawStakeRow(hostile, style);
        expect(layoutFaults(svg)).toEqual([]);
        expect(svg).not.toContain('<b>');
      }
    }
  });
});

test('what is no row is refused', () => {
  const checked = row([0, 14, 0]);
  const wrong = (value: unknown) => () => drawStakeRow(value as StakeLine, { system: 'us' });
  for (const value of [null, 7, {}, [], { ...checked, offsets: [] }, { ...checked, moves: [{}] }]) {
    expectFault(wrong(value), 'WRONG_TYPE');
  }
  // a move the other way is not drawn, and not told
  const moves = [{ id: 'P1', distance: length('-100 mm'), direction: 'right' }];
  expectFault(wrong({ ...checked, moves }), 'WRONG_TYPE');
  expectFault(
    () => drawStakeRow(checked, { system: 'us', string: 'kerb' } as never),
    'UNKNOWN_FIELD',
  );
});
