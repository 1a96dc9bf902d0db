import { present } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { heightStep } from '../../../levelling/instrument-height.js';
import type { LevelBook } from '../../../levelling/reduce-levels.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { placeBy, take, worked, type PlacedStep } from '../placed.js';
import type { LevellingPlan } from '../plan.js';

/** The working of the height of instrument and of its check. Internal. */
export function levellingSteps(
  { levelling: asked }: ReadJob,
  levelling: LevellingPlan | null,
  book: LevelBook | null,
): PlacedStep[] {
  if (levelling === null || asked === undefined) return [];
  const { elevation, backsight, closing } = levelling;
  const { benchmark } = asked;
  const from: FieldPath =
    benchmark.elevation === undefined
      ? ['plan', 'levelBook', 'rows', rowOf(present(book, 'level book'), benchmark), 'adjusted']
      : ['job', 'levelling', 'benchmark', 'elevation'];
  const height = placeBy(
    [
      heightStep(
        { benchmark: elevation, back: backsight },
        { benchmark: levelling.benchmark, back: 'backsight' },
      ),
    ],
    { HI: [['instrumentHeight']] },
    { BM: [from], BS: [['job', 'levelling', 'backsight']] },
  );
  if (closing === null) return height;
  const check = worked({
    title: 'Check on the benchmark at the end of the day',
    formula: 'd = R - BS',
    takes: [
      take('R', 'last reading', closing.reading, ['job', 'levelling', 'closing', 'reading']),
      take('BS', 'backsight', backsight, ['job', 'levelling', 'backsight']),
    ],
    result: given('d', `drift: ${closing.verdict}`, closing.drift),
    gives: [['closing', 'drift']],
  });
  return [...height, check];
}

const rowOf = (
  { rows }: LevelBook,
  { levelled }: { readonly levelled?: string | undefined },
): number => rows.findIndex(({ point }) => point === levelled);
