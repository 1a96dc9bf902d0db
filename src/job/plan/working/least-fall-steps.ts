import { PAVER_TOLERANCES } from '../../../sources/surface-tolerances.js';
import { formulaStep, given, published } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { place, type PlacedStep } from '../placed.js';
import { PUBLISHED_LEAST_FALL } from '../plan-slopes.js';

/** The published minimum fall, where the job gives none. Internal. */
export function leastFallSteps({ minimumFall }: ReadJob): PlacedStep[] {
  if (minimumFall !== undefined) return [];
  const { source } = PAVER_TOLERANCES.minimumSlope;
  const step = formulaStep({
    title: 'Minimum fall',
    formula: 'f0 = f',
    given: [published('f', 'published minimum fall', PUBLISHED_LEAST_FALL, source)],
    result: given('f0', 'minimum fall', PUBLISHED_LEAST_FALL),
    source,
  });
  return [place(step, [['minimumFall']])];
}
