import { known } from '../../invariant.js';
import { isWithin, missAt } from '../../levelling/benchmark-checks.js';
import { heightOf, levelUnder } from '../../levelling/instrument-height.js';
import { reduceLevels, type LevelBook } from '../../levelling/reduce-levels.js';
import type { Length } from '../../units/quantity.js';
import { withoutGaps } from './without-gaps.js';
import { inField } from '../read/in-field.js';
import type { LevellingPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

type Levelling = NonNullable<ReadJob['levelling']>;

/** The reduced level book of a job; null if it has none. Internal. */
export function planLevelBook({ levelBook }: ReadJob): LevelBook | null {
  if (levelBook === undefined) return null;
  const { start, rows, known, allowable, rule, adjustBy } = levelBook;
  const greatest =
    allowable ?? (rule === undefined ? undefined : { k: rule.k, per: rule.per ?? SET_UP });
  return inField(
    () =>
      reduceLevels({
        start,
        rows: rows.map((row) => withoutGaps(row)),
        ...withoutGaps({ known, allowable: greatest, adjustBy }),
      }),
    (path) => ['levelBook', ...path],
  );
}

const SET_UP = 'set-up';

/** Finds the level for a part of a job: its own, or one from the level book. Internal. */
export type LevelOf = (at: {
  readonly elevation?: Length | undefined;
  readonly levelled?: string | undefined;
}) => Length;

/** Makes the look-up of levels. Names have been checked. Internal. */
export function levelsFrom(book: LevelBook | null): LevelOf {
  // in a loop the first row counts, because its level is the given one
  const rows = [...(book?.rows ?? [])].reverse();
  const byName = new Map(rows.map(({ point, adjusted }) => [point, adjusted]));
  return ({ elevation, levelled }) =>
    elevation ?? known(byName.get(known(levelled, 'name of a level')), 'level of that name');
}

/** Height of instrument, and the check on the benchmark at the end of the day. Internal. */
export function planLevelling({ levelling }: ReadJob, levelOf: LevelOf): LevellingPlan | null {
  if (levelling === undefined) return null;
  const { benchmark, backsight } = levelling;
  const elevation = levelOf(benchmark);
  const instrumentHeight = heightOf({ benchmark: elevation, back: backsight });
  return {
    benchmark: benchmark.name ?? benchmark.levelled ?? 'benchmark',
    elevation,
    backsight,
    instrumentHeight,
    closing: closingCheck(levelling, { elevation, instrumentHeight }),
  };
}

function closingCheck(
  { closing }: Levelling,
  morning: Pick<LevellingPlan, 'elevation' | 'instrumentHeight'>,
): LevellingPlan['closing'] {
  if (closing === undefined) return null;
  const { reading, tolerance } = closing;
  const misclosure = missAt(levelUnder(morning.instrumentHeight, reading), morning.elevation);
  const verdict = isWithin(misclosure, tolerance) ? 'pass' : 'fail';
  // a longer reading on the same mark gives a lower level
  return { ...closing, drift: misclosure.negated(), verdict };
}
