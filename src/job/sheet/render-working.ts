import { fault } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { isQuantity } from '../../units/quantity.js';
import { SOURCES } from '../../sources/catalogue.js';
import type { StepValue } from '../../working.js';
import { isSteps, type SubjectStep } from './is-steps.js';
import { wrap } from './layout.js';
import { measureWithExact } from './measure-with-exact.js';
import { readSheetOptions } from './sheet-options.js';
import type { SheetSystem } from './units-of-sheet.js';

/** How working is written. */
export interface RenderWorkingOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** Characters in a line, 40 to 120. Default 72. */
  readonly width?: number;
}

/**
 * Writes steps of working as text: title, formula, the values put in, the result and the source.
 * Values are in the marks of the sheet; where rounding shows, the value before rounding is beside it.
 *
 * @param steps - the `working` of a result or of a plan
 * @param options - see {@link RenderWorkingOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` for what is no working, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`,
 *   `UNKNOWN_FIELD`
 * @example
 * const total = buildUp({ layers: [{ name: 'base', thickness: '8 in' }] });
 * renderWorking(total.working, { system: 'us' }).includes('D = t1') //=> true
 */
export function renderWorking(
  steps: readonly SubjectStep[],
  options: RenderWorkingOptions,
): string {
  if (!isSteps(steps)) {
    throw fault('WRONG_TYPE', `pass the working of a result or of a plan, got ${shown(steps)}`);
  }
  const { system, width } = readSheetOptions(options, 72);
  const lines = steps.flatMap((step) => stepLines(step, system, width));
  return `${lines.join('\n')}\n`;
}

function stepLines(step: SubjectStep, system: SheetSystem, width: number): string[] {
  const title = step.subject === undefined ? step.title : `${step.subject}: ${step.title}`;
  const source = SOURCES[step.source];
  return [
    ...wrap(title, width),
    ...wrap(step.formula, width, '  ', '    '),
    ...step.given.flatMap(({ symbol, name, value }) =>
      wrap(`${symbol} = ${valueText(value, system)} (${name})`, width, '    ', '      '),
    ),
    ...wrap(
      `${step.result.symbol} = ${valueText(step.result.value, system)} (${step.result.name})`,
      width,
      '  ',
      '    ',
    ),
    ...wrap(`[${source.title}; ${source.section}]`, width, '  ', '   '),
    '',
  ];
}

function valueText(value: StepValue, system: SheetSystem): string {
  if (isQuantity(value)) return measureWithExact(value, system);
  if (typeof value === 'string' || Number.isInteger(value)) return String(value);
  return String(Number(value.toPrecision(8)));
}
