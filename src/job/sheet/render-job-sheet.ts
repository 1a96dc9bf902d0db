import type { JobPlan, PavementPlan } from '../plan/plan.js';
import { readWholeJob } from '../read/read-job.js';
import { requirePlan } from '../require-plan.js';
import { betweenLines } from './between-lines.js';
import { describeWarning } from './describe.js';
import { withEdgeName } from './edge-in-warning.js';
import { groupWarnings, subjectsText, type WarningGroup } from './group-warnings.js';
import { heading, wrap } from './layout.js';
import { levelsSection } from './levels-section.js';
import { pavementSection } from './pavement-section.js';
import { stepsSection } from './steps-section.js';
import { stringSection } from './string-section.js';
import type { Sheet } from './sheet-context.js';
import { depthsBelowGrade } from './string-depths.js';
import { totalsSection } from './totals-section.js';
import { readSheetOptions, type JobSheetOptions } from './sheet-options.js';
import { unitsOfSheet } from './units-of-sheet.js';

/**
 * Writes a plan as the sheet a crew works from: plain text, narrow, in the order of the job:
 * each pavement, then its strings. Depths are rounded to 1/16 in or 1 mm, here and nowhere before;
 * thicknesses, digs and remainders are worked out from the rounded depths, so each printed row adds up.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `PLAN_INVALID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `UNKNOWN_FIELD`
 * @example
 * renderJobSheet(planJob(job), { system: 'us' }).includes('CHECK BEFORE YOU START') //=> true
 */
export function renderJobSheet(plan: JobPlan, options: JobSheetOptions): string {
  requirePlan(plan);
  const { system, width } = readSheetOptions(options);
  const sheet: Sheet = { system, width, units: unitsOfSheet(system), job: readWholeJob(plan.job) };
  const lines = [
    ...opening(plan, sheet),
    ...levelsSection(plan, sheet.units, width),
    ...plan.pavements.flatMap((pavement) => pavementWithStrings(pavement, plan, sheet)),
    ...totalsSection(plan, sheet),
    ...stepsSection(plan, sheet.units, width),
    ...closing(plan, width),
  ];
  return `${lines.join('\n')}\n`;
}

/** A pavement, and the strings that serve it. */
function pavementWithStrings(
  pavement: PavementPlan,
  { pavements, stringLines }: JobPlan,
  sheet: Sheet,
): string[] {
  const own = stringLines.filter((line) => line.pavement === pavement.id);
  return [
    ...pavementSection(pavement, pavements.slice(0, pavements.indexOf(pavement)), sheet),
    ...(own.length === 0 ? depthsBelowGrade(pavement, sheet) : []),
    ...own.flatMap((line) => stringSection(line, pavement, sheet)),
    ...betweenLines(pavement, sheet),
  ];
}

function opening(plan: JobPlan, sheet: Sheet): string[] {
  const { units, width } = sheet;
  const groups = groupWarnings(plan.warnings.map((one) => withEdgeName(one, sheet.job)));
  return [
    ...wrap(plan.name, width),
    '='.repeat(Math.min(width, plan.name.length)),
    ...wrap(`${units.title}. ${heightText(plan, units)}`, width),
    ...wrap(
      `Depths are rounded to ${units.tapeStep}. Thicknesses and digs are worked out from the depths printed, so their rows add up. Thicknesses are compacted unless the sheet says loose.`,
      width,
    ),
    ...heading('CHECK BEFORE YOU START', width),
    ...(groups.length === 0 ? ['No warnings.'] : []),
    ...groups.flatMap((group) => wrap(warningText(group, sheet), width, '! ', '  ')),
    ...(groups.some(({ warning }) => warning.values['direction'] !== undefined)
      ? wrap('Left and right: stand at the first stake of the string and face the last.', width)
      : []),
  ];
}

/** How high the strings stand: said once where it is the same for all. */
function heightText({ stringLines }: JobPlan, units: Sheet['units']): string {
  const from = 'Measure depths below a string straight down from it.';
  const [first] = stringLines;
  if (first === undefined) return from;
  return stringLines.every(({ stringHeight }) => stringHeight.equals(first.stringHeight))
    ? `${from} Every string is ${units.depthWithUnit(first.stringHeight)} above finished grade.`
    : `${from} Each string has its own height above finished grade: use the table of the string you measure from.`;
}

function warningText({ warning, others }: WarningGroup, { system }: Sheet): string {
  const text = describeWarning(warning, { system });
  return others.length === 0 ? text : `${text} The same holds for ${subjectsText(others)}.`;
}

function closing(plan: JobPlan, width: number): string[] {
  return [
    ...heading('BEFORE YOU DIG', width),
    ...plan.cautions.flatMap(({ text }) => wrap(text, width, '* ', '  ')),
    ...heading('WHERE THE FIGURES COME FROM', width),
    ...plan.sources.flatMap(({ title, section, status }) =>
      wrap(
        `${title}: ${section}${status === 'read' || status === 'derived' ? '' : ` [${status}]`}`,
        width,
        '- ',
        '  ',
      ),
    ),
  ];
}
