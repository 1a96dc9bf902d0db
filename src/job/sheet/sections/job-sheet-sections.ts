import { entry } from '../../../invariant.js';
import type { JobPlan, PavementPlan, PlanWarning } from '../../plan/plan.js';
import { requirePlan } from '../../require-plan.js';
import { jobOfPlan } from '../../saved/job-of-plan.js';
import { betweenLines } from './between-lines.js';
import { describeWarning } from '../words/describe.js';
import { withEdgeName } from '../words/edge-in-warning.js';
import { figureSources } from './figure-sources.js';
import { figuresNote } from '../words/figures-note.js';
import { groupWarnings, subjectsText, type WarningGroup } from '../words/group-warnings.js';
import { levelsSection } from './levels-section.js';
import { pavementSection } from './pavement-section.js';
import { stepsSection } from './steps-section.js';
import { stringSection } from './string-section.js';
import type { Sheet } from '../layout/sheet-context.js';
import { depthsBelowGrade } from './string-depths.js';
import { totalsSection } from './totals-section.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';
import { unitsOfSheet } from '../layout/units-of-sheet.js';
import { heading, paragraph, sheetTitle, type SheetLine } from '../layout/sheet-lines.js';

/** A part of the sheet, and what it is about. Internal. */
export interface SheetSection {
  readonly kind:
    'opening' | 'levels' | 'pavement' | 'string' | 'between' | 'totals' | 'steps' | 'closing';
  /** Id of the pavement or the string; null where it is about the whole job. */
  readonly id: string | null;
  readonly lines: readonly SheetLine[];
}

/** The sheet of a job, part by part, in the order of the job. Internal. */
export function jobSheetSections(plan: JobPlan, system: SheetSystem): SheetSection[] {
  requirePlan(plan);
  const sheet: Sheet = { system, units: unitsOfSheet(system), job: jobOfPlan(plan) };
  const of = (kind: SheetSection['kind'], lines: readonly SheetLine[]): SheetSection => ({
    kind,
    id: null,
    lines,
  });
  return [
    of('opening', opening(plan, sheet)),
    of('levels', levelsSection(plan, sheet.units)),
    ...plan.pavements.flatMap((pavement) => pavementWithStrings(pavement, plan, sheet)),
    of('totals', totalsSection(plan, sheet)),
    of('steps', stepsSection(plan, sheet.units)),
    of('closing', closing(plan, system)),
  ].filter(({ lines }) => lines.length > 0);
}

/** A pavement, and the strings that serve it. */
function pavementWithStrings(
  pavement: PavementPlan,
  { pavements, stringLines }: JobPlan,
  sheet: Sheet,
): SheetSection[] {
  const { id } = pavement;
  const own = stringLines.filter((line) => line.pavement === id);
  const earlier = pavements.slice(0, pavements.indexOf(pavement));
  const lines = [
    ...pavementSection(pavement, earlier, sheet),
    ...(own.length === 0 ? depthsBelowGrade(pavement, sheet) : []),
  ];
  return [
    { kind: 'pavement', id, lines },
    ...own.map((line): SheetSection => ({
      kind: 'string',
      id: line.id,
      lines: stringSection(line, pavement, sheet),
    })),
    { kind: 'between', id, lines: betweenLines(pavement, sheet) },
  ];
}

function opening(plan: JobPlan, sheet: Sheet): SheetLine[] {
  const { units } = sheet;
  const groups = groupWarnings(
    plan.warnings.map((one) => withEdgeName(withoutFacing(one), sheet.job)),
  );
  return [
    ...sheetTitle(plan.name),
    ...figuresNote(plan).flatMap((note) => paragraph(note, '!! ', '   ')),
    ...paragraph(`${units.title}. ${heightText(plan, units)}`),
    ...paragraph(
      `Depths are rounded to ${units.tapeStep}. Thicknesses and digs are worked out from the depths printed, so their rows add up. Thicknesses are compacted unless the sheet says loose.`,
    ),
    ...heading('CHECK BEFORE YOU START'),
    ...(groups.length === 0 ? paragraph('No warnings.') : []),
    ...groups.flatMap((group) => paragraph(warningText(group, sheet), '! ', '  ')),
    ...(groups.some(({ warning }) => warning.values['direction'] !== undefined)
      ? paragraph('Left and right: stand at the first stake of the string and face the last.')
      : []),
  ];
}

/** A warning without which way to face: the sheet says it once for all of them. */
function withoutFacing(warning: PlanWarning): PlanWarning {
  if (warning.values['direction'] === undefined) return warning;
  const values = Object.entries(warning.values).filter(
    ([name]) => name !== 'from' && name !== 'to',
  );
  return { ...warning, values: Object.fromEntries(values) };
}

/** How high the strings stand: said once where it is the same for all. */
function heightText({ stringLines }: JobPlan, units: Sheet['units']): string {
  const from = 'Measure depths below a string straight down from it.';
  const first = entry(stringLines, 0);
  return stringLines.every(({ stringHeight }) => stringHeight.equals(first.stringHeight))
    ? `${from} Every string is ${units.depthWithUnit(first.stringHeight)} above finished grade.`
    : `${from} Each string has its own height above finished grade: use the table of the string you measure from.`;
}

function warningText({ warning, others }: WarningGroup, { system }: Sheet): string {
  const text = describeWarning(warning, { system });
  return others.length === 0 ? text : `${text} The same holds for ${subjectsText(others)}.`;
}

function closing(plan: JobPlan, system: SheetSystem): SheetLine[] {
  return [
    ...heading('BEFORE YOU DIG'),
    ...plan.cautions.flatMap(({ text }) => paragraph(text, '* ', '  ')),
    ...figureSources(plan, system),
  ];
}
