import type { JobPlan } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import { describeWarning } from './describe.js';
import { heading, wrap } from './layout.js';
import { levelsSection } from './levels-section.js';
import { pavementSection } from './pavement-section.js';
import { stringSection } from './string-section.js';
import { totalsSection } from './totals-section.js';
import { readSheetOptions, type JobSheetOptions } from './sheet-options.js';
import { unitsOfSheet, type SheetSystem } from './units-of-sheet.js';

/**
 * Writes a plan as the sheet a crew works from: plain text, narrow, in the order of the work. Depths
 * are rounded to 1/16 in or 1 mm, here and nowhere before.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `PLAN_INVALID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `UNKNOWN_FIELD`
 * @example
 * renderJobSheet(planJob(job), { system: 'us' }).includes('subgrade: dig to') //=> true
 */
export function renderJobSheet(plan: JobPlan, options: JobSheetOptions): string {
  requirePlan(plan);
  const { system, width } = readSheetOptions(options);
  const units = unitsOfSheet(system);
  const pavements = new Map(plan.pavements.map((pavement) => [pavement.id, pavement]));
  const lines = [
    ...opening(plan, system, width),
    ...levelsSection(plan, units, width),
    ...plan.pavements.flatMap((pavement) => pavementSection(pavement, units, width)),
    ...plan.stringLines.flatMap((line) =>
      stringSection(line, pavements.get(line.pavement), system, width),
    ),
    ...totalsSection(plan, units, width),
    ...closing(plan, width),
  ];
  return `${lines.join('\n')}\n`;
}

function opening(plan: JobPlan, system: SheetSystem, width: number): string[] {
  const units = unitsOfSheet(system);
  const height = units.depthWithUnit(plan.stringHeight);
  const warnings = plan.warnings.map((warning) => describeWarning(warning, { system }));
  return [
    ...wrap(plan.name, width),
    '='.repeat(Math.min(width, plan.name.length)),
    ...wrap(
      `${units.title}. Every depth is measured straight down from the string, which stands ${height} above finished grade unless a string says otherwise. Thicknesses are compacted.`,
      width,
    ),
    ...heading('LOOK AT THIS FIRST', width),
    ...(warnings.length === 0 ? ['Nothing stands out.'] : []),
    ...warnings.flatMap((text) => wrap(text, width, '! ', '  ')),
  ];
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
