import { describe, expect } from 'vitest';
import {
  allowableMisclosure,
  curvatureRefraction,
  laserReversal,
  reduceLevels,
  spreadMisclosure,
  type LevelBook,
  type LevelRowInput,
} from 'settline/levelling';
import { MISCLOSURE_RULES } from 'settline/sources';
import type { Length, LengthUnit } from 'settline/units';
import { expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

type Reading = string | null;

/** Rows of a printed book: point, backsight, intermediate sight, foresight, all in one unit. */
function rowsOf(
  unit: LengthUnit,
  printed: readonly (readonly [string, Reading, Reading, Reading])[],
): LevelRowInput[] {
  const read = (name: 'back' | 'intermediate' | 'fore', value: Reading) =>
    value === null ? {} : { [name]: { value, unit } };
  return printed.map(([point, back, intermediate, fore]) => ({
    point,
    ...read('back', back),
    ...read('intermediate', intermediate),
    ...read('fore', fore),
  }));
}

const levelsOf = (book: LevelBook, unit: LengthUnit): string[] =>
  book.rows.map(({ elevation }) => elevation.to(unit).toString());

const heightsOf = (book: LevelBook, unit: LengthUnit): string[] =>
  book.rows.flatMap(({ instrumentHeight: height }) =>
    height === null ? [] : [height.to(unit).toString()],
  );

const number = (value: Length | null | undefined, unit: LengthUnit): number =>
  value?.toNumber(unit) ?? Number.NaN;

describe('a book with five set-ups, closed and adjusted', () => {
  const book = reduceLevels({
    start: '29.23 m',
    rows: rowsOf('m', [
      ['OBM1', '1.717', null, null],
      ['A', null, '1.432', null],
      ['B', '2.918', null, '1.716'],
      ['C', null, '2.272', null],
      ['D', '0.816', null, '0.953'],
      ['E', '1.436', null, '3.005'],
      ['CP', '1.246', null, '1.391'],
      ['F', null, '1.353', null],
      ['G', null, '1.462', null],
      ['OBM2', null, null, '0.628'],
    ]),
    known: '29.66 m',
  });

  published(
    { source: 'level-booking', section: 'worked table', kind: 'printed' },
    'planes of collimation and levels',
    () => {
      expectExact(heightsOf(book, 'm'), ['30.947', '32.149', '32.012', '30.443', '30.298']);
      const printed = '29.23 29.515 29.231 29.877 31.196 29.007 29.052 28.945 28.836 29.67'.split(
        ' ',
      );
      expectExact(levelsOf(book, 'm'), printed);
    },
  );

  published(
    { source: 'level-booking', section: 'worked table, steps 1 to 4', kind: 'printed' },
    'sums and misclosure',
    () => {
      expectExact(book.check.sumBack.to('m').toString(), '8.133');
      expectExact(book.check.sumFore.to('m').toString(), '7.693');
      // printed as foresights less backsights, -0.44
      expectExact(book.check.backLessFore.to('m').toString(), '0.44');
      expect(book.check.agrees).toBe(true);
      expectExact(book.misclosure?.to('m').toString(), '0.01');
      expectExact(book.setUps, 5);
    },
  );

  published(
    { source: 'level-booking', section: 'steps 3 and 4', kind: 'printed' },
    'correction by set-ups: an intermediate sight takes that of its own set-up',
    () => {
      expectExact(
        book.rows.map(({ correction }) => correction.toNumber('mm')),
        [0, -2, -2, -4, -4, -6, -8, -10, -10, -10],
      );
      // F comes to 28.935, a tie, which was printed 28.93
      const printed = '29.23 29.51 29.23 29.87 31.19 29.00 29.04 28.93 28.83 29.66'.split(' ');
      book.rows.forEach(({ adjusted }, k) => {
        expectPrinted(number(adjusted, 'm'), printed[k] ?? '');
      });
      expectExact(book.rows.at(-1)?.adjusted.to('m').toString(), '29.66');
    },
  );
});

published(
  { source: 'level-booking-slip', section: 'surveying readings, result table', kind: 'printed' },
  'a book by height of instrument, with a slip in its table',
  () => {
    const book = reduceLevels({
      start: '481.923 m',
      rows: rowsOf('m', [
        ['A', '0.422', null, null],
        ['B', '1.285', null, '0.684'],
        ['C', '1.793', null, '0.506'],
        ['D', null, '4.462', null],
        ['E', '3.12', null, '2.416'],
        ['F', '1.234', null, '1.517'],
        ['G', null, null, '1.232'],
      ]),
    });
    expectExact(
      levelsOf(book, 'm'),
      '481.923 481.661 482.44 479.771 481.817 483.42 483.422'.split(' '),
    );
    expectExact(heightsOf(book, 'm').slice(0, 4), '482.345 482.946 484.233 484.937'.split(' '));
    // the table prints 484.657 at F; its own level of G, 483.422, confirms 484.654
    expectMisprint(number(book.rows[5]?.instrumentHeight, 'm'), '484.657', '484.654');
    expectExact(book.check.sumBack.to('m').toString(), '7.854');
    expectExact(book.check.sumFore.to('m').toString(), '6.355');
    expectExact(book.check.backLessFore.to('m').toString(), '1.499');
  },
);

published(
  { source: 'survey-review', section: 'chapter 8, Leveling, Table 8-1', kind: 'printed' },
  'a run with two turning points',
  () => {
    const book = reduceLevels({
      start: '107.34 ft',
      rows: rowsOf('ft', [
        ['BM1', '7.25', null, null],
        ['TP1', '9.66', null, '1.07'],
        ['TP2', '8.09', null, '0.48'],
        ['BM2', null, null, '10.7'],
      ]),
    });
    expectExact(heightsOf(book, 'ft'), ['114.59', '123.18', '130.79']);
    expectExact(levelsOf(book, 'ft'), ['107.34', '113.52', '122.7', '120.09']);
    expectExact(book.check.lastLessFirst.to('ft').toString(), '12.75');
  },
);

published(
  { source: 'rise-and-fall-example', section: 'booking data', kind: 'derived' },
  'rise and fall beside height of plane of collimation',
  () => {
    const book = reduceLevels({
      start: '50 m',
      rows: rowsOf('m', [
        ['TBM', '1.4', null, null],
        ['A', null, '1.235', null],
        ['B', '1.355', null, '1.87'],
        ['C', null, '3.34', null],
        ['D', '0.585', null, '1.975'],
        ['E', null, null, '0.855'],
      ]),
    });
    expectExact(levelsOf(book, 'm'), '50 50.165 49.53 47.545 48.91 48.64'.split(' '));
    expectExact(heightsOf(book, 'm'), ['51.4', '50.885', '49.495']);
    expectExact(book.check.riseLessFall.to('m').toString(), '-1.36');
    expectExact(
      book.rows.map(({ rise, fall }) => (rise ?? fall)?.toNumber('mm')),
      [undefined, 165, 635, 1985, 1365, 270],
    );
    expect(book.rows[4]?.fall).toBeNull();
  },
);

published(
  { source: 'misclosure-slides', section: 'proportioning example', kind: 'printed' },
  'sharing a misclosure by set-ups',
  () => {
    // The sign of the share of the fourth point is not printed.
    const { misclosure, points } = spreadMisclosure({
      known: '100 ft',
      points: [1, 2, 3, 4, 5].map((along) => ({
        point: `P${along}`,
        elevation: '100.05 ft',
        along,
      })),
    });
    expectPrinted(number(misclosure, 'ft'), '0.05');
    expectPrinted(number(points[0]?.correction, 'ft'), '-0.01');
    expectPrinted(number(points[3]?.correction, 'ft'), '-0.04');
  },
);

published(
  {
    source: 'level-circuit-problem',
    section: 'sample problem 1, data and rule read',
    kind: 'derived',
  },
  'a circuit of 30.5 km, misclosure shared by distance',
  () => {
    const along = ['5.245', '11.271', '17.718', '21.964', '25.247', '30.5'];
    const observed = ['783.213', '891.764', '843.195', '739.708', '702.956', '728.486'];
    const { misclosure, points } = spreadMisclosure({
      known: '728.73 m',
      points: observed.map((level, k) => ({
        point: `P${k + 1}`,
        elevation: `${level} m`,
        along: { value: along[k] ?? '', unit: 'km' },
      })),
    });
    expectPrinted(number(misclosure, 'm'), '-0.244');
    const corrections = ['0.042', '0.0902', '0.1417', '0.1757', '0.202', '0.244'];
    const adjusted = ['783.255', '891.854', '843.337', '739.884', '703.158', '728.730'];
    points.forEach((point, k) => {
      expectPrinted(number(point.correction, 'm'), corrections[k] ?? '');
      expectPrinted(number(point.adjusted, 'm'), adjusted[k] ?? '');
    });
  },
);

published(
  { source: 'benchmark-circuit', section: 'question data', kind: 'derived' },
  'a circuit between two bench marks',
  () => {
    const book = reduceLevels({
      start: '5869.31 ft',
      rows: rowsOf('ft', [
        ['BM1', '2.68', null, null],
        ['TP1', '10.83', null, '5.59'],
        ['TP2', '10.61', null, '6.46'],
        ['TP3', '7.57', null, '8.91'],
        ['TP4', '9.01', null, '5.14'],
        ['BM2', null, null, '3.83'],
      ]),
      known: '5880.03 ft',
    });
    expectExact(levelsOf(book, 'ft'), '5869.31 5866.4 5870.77 5872.47 5874.9 5880.08'.split(' '));
    expectExact(book.misclosure?.to('ft').toString(), '0.05');
    expectExact(
      book.rows.map(({ adjusted }) => adjusted.to('ft').toString()),
      '5869.31 5866.39 5870.75 5872.44 5874.86 5880.03'.split(' '),
    );
  },
);

describe('allowable misclosure', () => {
  published(
    { source: 'misclosure-rules', section: 'rules by distance and by set-ups', kind: 'derived' },
    '12 mm sqrt(K) over 10 km, 5 mm sqrt(n) over 3 set-ups',
    () => {
      const { k, per } = MISCLOSURE_RULES['third-order-loop'];
      const loop = allowableMisclosure({
        rule: { k: `${k.value} mm`, per: `${per === 'set-up' ? '' : per.value} km` },
        distance: '10 km',
      });
      expectPrinted(number(loop.allowable, 'mm'), '37.947');
      const bySetUps = MISCLOSURE_RULES['by-set-ups'];
      const short = allowableMisclosure({
        rule: { k: `${bySetUps.k.value} mm`, per: bySetUps.per },
        setUps: 3,
      });
      expectPrinted(number(short.allowable, 'mm'), '8.66');
    },
  );

  published(
    { source: 'misclosure-rules', section: 'rules by distance', kind: 'printed' },
    'the rules as they were read, each over one kilometre',
    () => {
      const over = (name: keyof typeof MISCLOSURE_RULES): string => MISCLOSURE_RULES[name].k.value;
      expectExact(over('second-order-class-2'), '8.4');
      expectExact(over('third-order-loop'), '12');
      expectExact(over('college-practice'), '20');
    },
  );
});

describe('curvature and refraction', () => {
  published(
    {
      source: 'engineering-surveying-exercise',
      section: 'distance for 3 mm, question text',
      kind: 'derived',
    },
    'the sight with a correction of 3 mm',
    () => {
      // a sphere of 12740 km, refraction 1/7
      const sight = curvatureRefraction({ sight: '100 m', limit: '3 mm' });
      expectPrinted(number(sight.maximumSight, 'm'), '211.16');
    },
  );

  published(
    {
      source: 'engineering-surveying-exercise',
      section: 'reciprocal levels, question text',
      kind: 'derived',
    },
    'curvature over 780 m',
    () => {
      const sight = curvatureRefraction({ sight: '780 m' });
      expectPrinted(number(sight.curvature, 'm'), '0.04776');
      expectPrinted(number(sight.error, 'm'), '0.0409');
    },
  );
});

published(
  { source: 'laser-reversal', section: 'levelling accuracy check, p. 27', kind: 'printed' },
  'half turn of a rotating laser at 30 m',
  () => {
    // marks may differ by 3 mm at 30 m with 0.05 mm/m
    const test = laserReversal({
      distance: '30 m',
      x: { first: '1 m', second: '0.997 m' },
      accuracy: { error: '0.05 mm', over: '1 m' },
    });
    expectExact(test.maximumDifference.to('mm').toString(), '3');
    expect(test.verdict).toBe('pass');
  },
);

published(
  { source: 'earth-curvature', section: 'formulas', kind: 'printed' },
  'curvature, refraction and both over a kilometre',
  () => {
    const sight = curvatureRefraction({ sight: '1 km' });
    const [curvature, error] = [number(sight.curvature, 'm'), number(sight.error, 'm')];
    expectPrinted(curvature, '0.07849');
    expectPrinted(curvature - error, '0.01121');
    expectPrinted(error, '0.06728');
  },
);

published(
  { source: 'curvature-feet', section: 'C + R = 0.021 K^2', kind: 'printed' },
  'both over a thousand feet',
  () => {
    const sight = curvatureRefraction({ sight: '1000 ft' });
    const [curvature, error] = [number(sight.curvature, 'ft'), number(sight.error, 'ft')];
    expectPrinted(error, '0.021');
    expectPrinted((100 * (curvature - error)) / curvature, '14');
  },
);
