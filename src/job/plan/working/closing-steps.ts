import { entry, lastOf, present } from '../../../invariant.js';
import type { LevelBook } from '../../../levelling/reduce-levels.js';
import { NO_LENGTH } from '../../../units/zero.js';
import { given } from '../../../working.js';
import type { FieldPath } from '../../../errors.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { placeBy, take, worked, type PlacedStep, type Taken } from '../placed.js';

type Book = NonNullable<ReadJob['levelBook']>;

/** The working of the misclosure: what is allowed of it, and how it is spread. Internal. */
export function closingSteps(given: Book, book: LevelBook): PlacedStep[] {
  const last = book.rows.length - 1;
  const closing = placeBy(
    book.working.filter(({ result }) => result.symbol === 'm'),
    { m: [['misclosure']] },
    { z: [['rows', last, 'elevation']], z0: [['job', 'levelBook', 'known']] },
  );
  return [...closing, ...allowableSteps(given, book), ...correctionSteps(book)];
}

function allowableSteps({ rule }: Book, { allowable, rows }: LevelBook): PlacedStep[] {
  if (rule === undefined || allowable === null) return [];
  const { k, per } = rule;
  const { distance: far, setUp } = lastOf(rows);
  const counted: readonly Taken[] =
    per === undefined || far === null
      ? [take('n', 'set-ups', setUp, ['rows', rows.length - 1, 'setUp'])]
      : [
          take('D', 'distance', far.minus(entry(rows, 0).distance ?? NO_LENGTH)),
          take('d', 'distance of the rule', per, ['job', 'levelBook', 'rule', 'per']),
        ];
  return [
    worked({
      title: 'Allowable misclosure',
      formula: counted.length === 1 ? 'a = k * sqrt(n)' : 'a = k * sqrt(D / d)',
      takes: [take('k', 'constant of the rule', k, ['job', 'levelBook', 'rule', 'k']), ...counted],
      result: given('a', 'allowable misclosure', allowable),
      gives: [['allowable']],
      source: 'misclosure-rules',
    }),
  ];
}

function correctionSteps({ rows, misclosure, adjustment }: LevelBook): PlacedStep[] {
  if (misclosure === null || adjustment === 'none') return [];
  const last = lastOf(rows);
  const start = entry(rows, 0).distance ?? NO_LENGTH;
  return rows.flatMap((row, index) => {
    const { point, correction } = row;
    const result = given('c', `correction of ${point}`, correction);
    const gives = [['rows', index, 'correction']];
    const m = take('m', 'misclosure', misclosure, ['misclosure']);
    const title = `Correction of ${point}`;
    if (adjustment !== 'distance') {
      const takes = [
        m,
        take('n', 'set-ups to here', row.setUp, ['rows', index, 'setUp']),
        take('N', 'set-ups', last.setUp, ['rows', rows.length - 1, 'setUp']),
      ];
      return [
        worked({ title, formula: 'c = -m * n / N', takes, result, gives, source: 'level-booking' }),
      ];
    }
    // the first row may leave out its distance
    const run = (k: number): FieldPath[] =>
      entry(rows, k).distance === null ? [] : [['job', 'levelBook', 'rows', k, 'distance']];
    const takes = [
      m,
      take('s', 'distance to here', row.distance ?? start, ...run(index)),
      take('s0', 'distance of the first row', start, ...run(0)),
      take(
        'S',
        'distance of the last row',
        present(last.distance, 'last distance'),
        ...run(rows.length - 1),
      ),
    ];
    return [
      worked({
        title,
        formula: 'c = -m * (s - s0) / (S - s0)',
        takes,
        result,
        gives,
        source: 'level-booking',
      }),
    ];
  });
}
