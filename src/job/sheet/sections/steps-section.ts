import type { JobPlan } from '../../plan/plan.js';
import { requirePlan } from '../../require-plan.js';
import type { WorkCondition, WorkStep } from '../../steps/work-step.js';
import { workSteps } from '../../steps/work-steps.js';
import { figuresNote } from '../words/figures-note.js';
import {
  entry,
  heading,
  paragraph,
  subheading,
  sheetTitle,
  type SheetLine,
} from '../layout/sheet-lines.js';
import { readSheetOptions, type JobSheetOptions } from '../layout/sheet-options.js';
import { sheetText } from '../layout/sheet-text.js';
import { unitsOfSheet, type SheetUnits } from '../layout/units-of-sheet.js';
import {
  amountText,
  figureTexts,
  heightTexts,
  hoursText,
  signText,
} from '../words/work-step-words.js';

/**
 * Writes the steps of work as a sheet of their own: plain text, narrow, numbered in the order of the
 * work. A box is there to be ticked, a line to be signed.
 *
 * @param plan - from `planJob`, `planFromJSON` or `readPlan`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `PLAN_INVALID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `UNKNOWN_FIELD`
 * @example
 * renderWorkSteps(planJob(job), { system: 'us' }).includes('1. Locate and mark buried lines') //=> true
 */
export function renderWorkSteps(plan: JobPlan, options: JobSheetOptions): string {
  requirePlan(plan);
  const { system, width } = readSheetOptions(options);
  const lines = [
    ...sheetTitle(plan.name),
    ...figuresNote(plan).flatMap((note) => paragraph(note, '!! ', '   ')),
    ...stepsSection(plan, unitsOfSheet(system)),
  ];
  return sheetText(lines, width);
}

/** The part of the sheet with the steps of work. Internal. */
export function stepsSection(plan: JobPlan, units: SheetUnits): SheetLine[] {
  const steps = workSteps(plan);
  const numbers = new Map(steps.map(({ id }, index) => [id, index + 1]));
  const warned = new Map<string, number>();
  return [
    ...heading('STEPS OF WORK'),
    ...paragraph(
      'Tick each box before you start the step. Go on when it is signed. Amounts are rounded: order from the order list.',
    ),
    ...steps.flatMap((step, index) => [
      ...subheading(`${index + 1}. ${step.title}`, '   '),
      ...step.before.flatMap((one) => paragraph(conditionText(one, numbers), '  [ ] ', '      ')),
      ...stepLines(step, units),
      ...step.holdPoints.flatMap((hold) => paragraph(signText(hold), '  ____ ', '       ')),
      ...cautionLines(step, { number: index + 1, warned }),
    ]),
  ];
}

/** A step that must be done is named by its number. */
function conditionText(
  { code, step, note }: WorkCondition,
  numbers: ReadonlyMap<string, number>,
): string {
  const number = step === null ? undefined : numbers.get(step);
  if (number === undefined) return note;
  return `step ${number} is done${code === 'SIGNED' ? ' and signed' : ''}`;
}

function stepLines(step: WorkStep, units: SheetUnits): SheetLine[] {
  const hours = hoursText(step.hours);
  return [
    ...heightTexts(step, units).flatMap((text) => paragraph(text, '  ', '    ')),
    ...figureTexts(step, units).flatMap(({ name, text }) => entry(name, text)),
    ...step.amounts.flatMap((one) => paragraph(`${amountText(one, units)}.`, '  > ', '    ')),
    ...(hours === null ? [] : paragraph(`Time: ${hours}.`, '  ', '    ')),
    ...step.notes.flatMap((note) => paragraph(note, '  - ', '    ')),
  ];
}

interface Warned {
  readonly number: number;
  /** The step that printed a caution first. */
  readonly warned: Map<string, number>;
}

/** Each caution in full where it comes first, then by the number of that step. */
function cautionLines({ cautions }: WorkStep, { number, warned }: Warned): SheetLine[] {
  return cautions.flatMap(({ id, text }) => {
    const first = warned.get(id);
    if (first === undefined) warned.set(id, number);
    const words = first === undefined ? text : `${id}, see step ${first}.`;
    return paragraph(words, '  ! ', '    ');
  });
}
