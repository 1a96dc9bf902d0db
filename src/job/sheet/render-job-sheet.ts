import type { JobPlan } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import { jobSheetSections } from './sections/job-sheet-sections.js';
import { readSheetOptions, type JobSheetOptions } from './layout/sheet-options.js';
import { sheetText } from './layout/sheet-text.js';

/**
 * Writes a plan as the sheet a crew works from: plain text, narrow, in the order of the job:
 * each pavement, then its strings. Depths are rounded to 1/16 in or 1 mm, here and nowhere before;
 * thicknesses, digs and remainders are worked out from the rounded depths, so each printed row adds up.
 * If the figures of a plan were not worked out from its job, the top of the sheet says so.
 *
 * @param plan - from `planJob`, `planFromJSON` or `readPlan`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `PLAN_INVALID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `UNKNOWN_FIELD`
 * @example
 * renderJobSheet(planJob(job), { system: 'us' }).includes('CHECK BEFORE YOU START') //=> true
 */
export function renderJobSheet(plan: JobPlan, options: JobSheetOptions): string {
  requirePlan(plan);
  const { system, width } = readSheetOptions(options);
  const sections = jobSheetSections(plan, system);
  return sheetText(
    sections.flatMap(({ lines }) => lines),
    width,
  );
}
