import { heightOf, heightStep } from '../../levelling/instrument-height.js';
import { reduceLevels, type LevelBook } from '../../levelling/reduce-levels.js';
import type { Length } from '../../units/quantity.js';
import { given, type Step } from '../../working.js';
import { withoutGaps } from './without-gaps.js';
import { inField } from '../read/in-field.js';
import type { LevellingPlan } from './plan.js';
import { jobInvalid } from '../read/read-job.js';
import type { ReadJob } from '../schema/job-shape.js';

type Levelling = NonNullable<ReadJob['levelling']>;

/** The level book of a job, reduced; null where it has none. Internal. */
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
    ([first, ...rest]) => [
      'levelBook',
      ...(first === 'allowable' && rule !== undefined ? ['rule'] : [first ?? 'rows']),
      ...rest,
    ],
  );
}

const SET_UP = 'set-up';

/** Levels that parts of a job refer to: their own, or those of the level book. Internal. */
export type LevelOf = (at: {
  readonly elevation?: Length | undefined;
  readonly levelled?: string | undefined;
}) => Length;

/** Looks levels up. Names have been checked. Internal. */
export function levelsFrom(book: LevelBook | null): LevelOf {
  // of a loop the first row counts: its level is the one that was given
  const rows = [...(book?.rows ?? [])].reverse();
  const byName = new Map(rows.map(({ point, adjusted }) => [point, adjusted]));
  return ({ elevation, levelled }) => {
    const found = elevation ?? byName.get(levelled ?? '');
    if (found === undefined) throw jobInvalid([]);
    return found;
  };
}

/** Height of instrument, and the check on the benchmark at the end of the day. Internal. */
export function planLevelling({ levelling }: ReadJob, levelOf: LevelOf): LevellingPlan | null {
  if (levelling === undefined) return null;
  const { benchmark, backsight } = levelling;
  const elevation = levelOf(benchmark);
  return {
    benchmark: benchmark.name ?? benchmark.levelled ?? 'benchmark',
    elevation,
    backsight,
    instrumentHeight: heightOf({ benchmark: elevation, back: backsight }),
    closing: closingCheck(levelling),
  };
}

function closingCheck({ backsight, closing }: Levelling): LevellingPlan['closing'] {
  if (closing === undefined) return null;
  const drift = closing.reading.minus(backsight);
  const isKept = drift.abs().compare(closing.tolerance) <= 0;
  return { ...closing, drift, verdict: isKept ? 'pass' : 'fail' };
}

/** The working of the height of instrument and of its check. Internal. */
export function levellingSteps(levelling: LevellingPlan | null): Step[] {
  if (levelling === null) return [];
  const { elevation, backsight, closing } = levelling;
  const setUp = { benchmark: elevation, back: backsight };
  const height = heightStep(setUp, { benchmark: levelling.benchmark, back: 'backsight' });
  if (closing === null) return [height];
  const check: Step = {
    title: 'The benchmark read again at the end of the day',
    formula: 'd = R - BS',
    given: [given('R', 'last reading', closing.reading), given('BS', 'backsight', backsight)],
    result: given('d', `drift: ${closing.verdict}`, closing.drift),
    source: 'derived',
  };
  return [height, check];
}
