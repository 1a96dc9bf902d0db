import type { JobPlan } from '../plan/plan.js';
import { requirePlan } from '../require-plan.js';
import type { WorkCondition, WorkStep } from '../steps/work-step.js';
import { workSteps } from '../steps/work-steps.js';
import { entry, heading, wrap } from './layout.js';
import { readSheetOptions, type JobSheetOptions } from './sheet-options.js';
import { unitsOfSheet, type SheetUnits } from './units-of-sheet.js';
import { amountText, figureTexts, heightTexts, hoursText, signText } from './work-step-words.js';

/**
 * Writes the steps of work as a sheet of their own: plain text, narrow, numbered in the order of the
 * work. A box is there to be ticked, a line to be signed.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
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
    ...wrap(plan.name, width),
    '='.repeat(Math.min(width, plan.name.length)),
    ...stepsSection(plan, unitsOfSheet(system), width),
  ];
  return `${lines.join('\n')}\n`;
}

/** The part of the sheet with the steps of work. Internal. */
export function stepsSection(plan: JobPlan, units: SheetUnits, width: number): string[] {
  const steps = workSteps(plan);
  const numbers = new Map(steps.map(({ id }, index) => [id, index + 1]));
  const warned = new Map<string, number>();
  return [
    ...heading('STEPS OF WORK', width),
    ...wrap(
      'Tick each box before you start the step. Go on when it is signed. Amounts are rounded: order from the order list.',
      width,
    ),
    ...steps.flatMap((step, index) => [
      '',
      ...wrap(`${index + 1}. ${step.title}`, width, '', '   '),
      ...step.before.flatMap((one) => wrap(conditionText(one, numbers), width, '  [ ] ', '      ')),
      ...stepLines(step, units, width),
      ...step.holdPoints.flatMap((hold) => wrap(signText(hold), width, '  ____ ', '       ')),
      ...cautionLines(step, { number: index + 1, warned, width }),
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

function stepLines(step: WorkStep, units: SheetUnits, width: number): string[] {
  const hours = hoursText(step.hours);
  return [
    ...heightTexts(step, units).flatMap((text) => wrap(text, width, '  ', '    ')),
    ...figureTexts(step, units).flatMap(({ name, text }) => entry(name, text, width)),
    ...step.amounts.flatMap((one) => wrap(`${amountText(one, units)}.`, width, '  > ', '    ')),
    ...(hours === null ? [] : wrap(`Time: ${hours}.`, width, '  ', '    ')),
    ...step.notes.flatMap((note) => wrap(note, width, '  - ', '    ')),
  ];
}

interface Warned {
  readonly number: number;
  /** The step that printed a caution first. */
  readonly warned: Map<string, number>;
  readonly width: number;
}

/** Each caution in full where it comes first, then by the number of that step. */
function cautionLines({ cautions }: WorkStep, { number, warned, width }: Warned): string[] {
  return cautions.flatMap(({ id, text }) => {
    const first = warned.get(id);
    if (first === undefined) warned.set(id, number);
    const words = first === undefined ? text : `${id}, see step ${first}.`;
    return wrap(words, width, '  ! ', '    ');
  });
}
