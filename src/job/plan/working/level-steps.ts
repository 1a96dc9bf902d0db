import { entry, lastOf, present } from '../../../invariant.js';
import type { LevelBook, LevelRow } from '../../../levelling/reduce-levels.js';
import { given } from '../../../working.js';
import type { FieldPath } from '../../../errors.js';
import type { Length } from '../../../units/quantity.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { take, worked, type PlacedStep, type Taken } from '../placed.js';
import { closingSteps } from './closing-steps.js';

/** The working of a level book, row by row, and of its checks. Internal. */
export function bookSteps({ levelBook }: ReadJob, book: LevelBook | null): PlacedStep[] {
  if (book === null || levelBook === undefined) return [];
  const rows = book.rows.flatMap((row, index) => rowSteps(book.rows, row, index));
  return [
    ...rows,
    ...setUpSteps(book),
    ...sumSteps(book),
    ...checkSteps(book),
    ...closingSteps(levelBook, book),
  ];
}

type Column = 'back' | 'intermediate' | 'fore' | 'rise' | 'fall';

/** A reading of the book, as the job gives it. */
const reading = (index: number, column: Column): FieldPath => [
  'job',
  'levelBook',
  'rows',
  index,
  column,
];

/** The reading that closes a row: its foresight, else its intermediate sight. */
const endOf = ({ fore }: LevelRow): 'fore' | 'intermediate' =>
  fore === null ? 'intermediate' : 'fore';

function rowSteps(rows: readonly LevelRow[], row: LevelRow, index: number): PlacedStep[] {
  const { point, back, elevation, instrumentHeight } = row;
  const height =
    back === null || instrumentHeight === null
      ? []
      : [
          worked({
            title: `Height of instrument over ${point}`,
            formula: 'HI = z + BS',
            takes: [
              take('z', `elevation of ${point}`, elevation, ['rows', index, 'elevation']),
              take('BS', 'backsight', back, reading(index, 'back')),
            ],
            result: given('HI', 'height of instrument', instrumentHeight),
            gives: [['rows', index, 'instrumentHeight']],
            source: 'level-booking',
          }),
        ];
  return [
    ...elevationSteps(rows, row, index),
    ...height,
    ...riseSteps(rows, row, index),
    ...adjustedSteps(row, index),
  ];
}

/** A row without a reading stands on the row before, or on the start. */
function elevationSteps(rows: readonly LevelRow[], row: LevelRow, index: number): PlacedStep[] {
  const { point, elevation } = row;
  const result = given('z', `elevation of ${point}`, elevation);
  const gives = [['rows', index, 'elevation']];
  const sights = rows.flatMap((one, k) => (k < index && one.instrumentHeight !== null ? [k] : []));
  const sight = sights.at(-1) ?? -1;
  const end = row[endOf(row)];
  const height = rows[sight]?.instrumentHeight ?? null;
  if (height === null || end === null) {
    const from = index === 0 ? ['job', 'levelBook', 'start'] : ['rows', index - 1, 'elevation'];
    return [
      worked({
        title: `Level of ${point}`,
        formula: 'z = z0',
        takes: [take('z0', 'known level', elevation, from)],
        result,
        gives,
        source: 'level-booking',
      }),
    ];
  }
  return [
    worked({
      title: `Level of ${point}`,
      formula: 'z = HI - r',
      takes: [
        take('HI', 'height of instrument', height, ['rows', sight, 'instrumentHeight']),
        take('r', 'reading', end, reading(index, endOf(row))),
      ],
      result,
      gives,
      source: 'level-booking',
    }),
  ];
}

/** The set-ups before each row: a backsight each. */
const setUpSteps = ({ rows }: LevelBook): PlacedStep[] =>
  rows.flatMap((row, index) => {
    const sights = rows
      .slice(0, index)
      .flatMap(({ back }, k) => (back === null ? [] : { back, k }));
    if (sights.length === 0) return [];
    return [
      worked({
        title: `Set-ups to ${row.point}`,
        formula: 'n = count(b)',
        takes: [
          take(
            'b',
            'backsights before',
            sights.map(({ back }) => back),
            ...sights.map(({ k }) => reading(k, 'back')),
          ),
        ],
        result: given('n', 'set-ups', row.setUp),
        gives: [['rows', index, 'setUp']],
        source: 'level-booking',
      }),
    ];
  });

function riseSteps(rows: readonly LevelRow[], row: LevelRow, index: number): PlacedStep[] {
  const before = rows[index - 1];
  const first = before?.back ?? before?.intermediate ?? null;
  const second = row[endOf(row)];
  if (before === undefined || first === null || second === null) return [];
  const takes: Taken[] = [
    take(
      'a',
      'reading before',
      first,
      reading(index - 1, before.back === null ? 'intermediate' : 'back'),
    ),
    take('b', 'reading', second, reading(index, endOf(row))),
  ];
  const isRise = row.rise !== null;
  return [
    worked({
      title: `${isRise ? 'Rise' : 'Fall'} to ${row.point}`,
      formula: isRise ? 'R = a - b' : 'F = b - a',
      takes,
      result: isRise ? given('R', 'rise', row.rise) : given('F', 'fall', present(row.fall, 'fall')),
      gives: [['rows', index, isRise ? 'rise' : 'fall']],
      source: 'level-booking',
    }),
  ];
}

const adjustedSteps = ({ point, elevation, correction, adjusted }: LevelRow, index: number) => [
  worked({
    title: `Adjusted level of ${point}`,
    formula: 'Z = z + c',
    takes: [
      take('z', `elevation of ${point}`, elevation, ['rows', index, 'elevation']),
      take('c', 'correction', correction, ['rows', index, 'correction']),
    ],
    result: given('Z', `adjusted level of ${point}`, adjusted),
    gives: [['rows', index, 'adjusted']],
    source: 'level-booking',
  }),
];

/** The sums of the columns; the last reading of the book counts as a foresight. */
function sumSteps({ rows, check }: LevelBook): PlacedStep[] {
  const column = (name: string, pick: (row: LevelRow, index: number) => Column | null) => {
    const found = rows.flatMap((row, index): { value: Length; from: FieldPath }[] => {
      const key = pick(row, index);
      const value = key === null ? null : row[key];
      if (key === null || value === null) return [];
      const isRead = key !== 'rise' && key !== 'fall';
      return [{ value, from: isRead ? reading(index, key) : ['rows', index, key] }];
    });
    return take(
      'v',
      name,
      found.map(({ value }) => value),
      ...found.map(({ from }) => from),
    );
  };
  const last = rows.length - 1;
  const sums = [
    ['sumBack', 'backsights', column('backsights', () => 'back')],
    [
      'sumFore',
      'foresights',
      column('foresights, the last reading among them', (row, index) =>
        index === last ? endOf(row) : 'fore',
      ),
    ],
    ['sumRise', 'rises', column('rises', () => 'rise')],
    ['sumFall', 'falls', column('falls', () => 'fall')],
  ] as const;
  return sums
    .filter(([, , { from }]) => from.length > 0)
    .map(([field, name, values]) =>
      worked({
        title: `Sum of the ${name}`,
        formula: 'S = sum(v)',
        takes: [values],
        result: given('S', `sum of the ${name}`, check[field]),
        gives: [['check', field]],
        source: 'level-booking',
      }),
    );
}

function checkSteps({ rows, check }: LevelBook): PlacedStep[] {
  const [first, last] = [entry(rows, 0), lastOf(rows)];
  const less = (
    title: string,
    [a, nameA, fromA]: readonly [Length, string, FieldPath],
    [b, nameB, fromB]: readonly [Length, string, FieldPath],
    field: 'backLessFore' | 'riseLessFall' | 'lastLessFirst',
  ) =>
    worked({
      title,
      formula: 'dz = a - b',
      takes: [take('a', nameA, a, fromA), take('b', nameB, b, fromB)],
      result: given('dz', 'last level less first', check[field]),
      gives: [['check', field]],
      source: 'level-booking',
    });
  return [
    less(
      'Check by height of instrument',
      [check.sumBack, 'sum of the backsights', ['check', 'sumBack']],
      [check.sumFore, 'sum of the foresights', ['check', 'sumFore']],
      'backLessFore',
    ),
    less(
      'Check by rise and fall',
      [check.sumRise, 'sum of the rises', ['check', 'sumRise']],
      [check.sumFall, 'sum of the falls', ['check', 'sumFall']],
      'riseLessFall',
    ),
    less(
      'Last level less first',
      [last.elevation, 'last level', ['rows', rows.length - 1, 'elevation']],
      [first.elevation, 'first level', ['rows', 0, 'elevation']],
      'lastLessFirst',
    ),
  ];
}
