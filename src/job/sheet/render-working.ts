import { fault } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { isQuantity } from '../../units/quantity.js';
import { SOURCES } from '../../sources/catalogue.js';
import { formulaText } from '../../formulas/formula-text.js';
import type { NameNode } from '../../formulas/formula-node.js';
import { putIn } from '../../formulas/put-in.js';
import { readFormula } from '../../formulas/read-formula.js';
import { formatFor } from '../../units/format-for.js';
import type { FormulaStep, StepItem, StepValue } from '../../working.js';
import { isSteps, type SubjectStep } from './is-steps.js';
import { paragraph, space, type SheetLine } from './layout/sheet-lines.js';
import { sheetText } from './layout/sheet-text.js';
import { measureWithExact } from './measure-with-exact.js';
import { readSheetOptions } from './layout/sheet-options.js';
import { inWords } from './words/in-words.js';
import type { SheetSystem } from './layout/lengths-of-sheet.js';

/** How working is written. */
export interface RenderWorkingOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** Characters in a line, 40 to 120. Default 72. */
  readonly width?: number;
}

/**
 * Writes steps of working as text: title, formula, the same with the values put in, the result, each
 * value with its name, and the source.
 * Values are in the marks of the sheet; where rounding shows, the value before rounding is beside it.
 *
 * @param steps - the `working` of a result or of a plan
 * @param options - see {@link RenderWorkingOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` if it is not a result with working, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`,
 *   `UNKNOWN_FIELD`
 * @example
 * const total = buildUp({ layers: [{ name: 'base', thickness: '8 in' }] });
 * renderWorking(total.working, { system: 'us' }).includes('D = sum(8 in)') //=> true
 */
export function renderWorking(
  steps: readonly SubjectStep[],
  options: RenderWorkingOptions,
): string {
  if (!isSteps(steps)) {
    throw fault('WRONG_TYPE', `pass the working of a result or of a plan, got ${shown(steps)}`);
  }
  const { system, width } = readSheetOptions(options, 72);
  const lines = steps.flatMap((step) => stepLines(step, system));
  return sheetText(lines, width);
}

function stepLines(step: SubjectStep, system: SheetSystem): SheetLine[] {
  const title = step.subject === undefined ? step.title : `${step.subject}: ${step.title}`;
  const source = SOURCES[step.source];
  const { symbol, name, value } = step.result;
  return [
    ...paragraph(title),
    ...(step.kind === 'formula' ? formulaLines(step, system) : paragraph(step.method, '  ')),
    ...paragraph(`${symbol} = ${valueText(value, system)} (${name})`, '  ', '    '),
    ...step.given.flatMap((input) =>
      paragraph(
        `${input.symbol} = ${valueText(input.value, system)} (${input.name})`,
        '    ',
        '      ',
      ),
    ),
    ...paragraph(`[${source.title}; ${source.section}]`, '  ', '   '),
    ...space(),
  ];
}

/** The formula, and the same with the values put in, in the marks of the sheet. */
function formulaLines(step: FormulaStep, system: SheetSystem): SheetLine[] {
  const formula = readFormula(step.formula);
  const symbols = formulaText(formula.expression, nameText);
  const values = putIn(formula, step.given, (item) => markText(item, system));
  const lines = paragraph(`${formula.result} = ${symbols}`, '  ', '    ');
  if (values === null || values === symbols) return lines;
  return [...lines, ...paragraph(`${formula.result} = ${values}`, '  ', '    ')];
}

const nameText = ({ name, index }: NameNode): string =>
  index === null ? name : `${name}[${formulaText(index, nameText)}]`;

const valueText = (value: StepValue, system: SheetSystem): string =>
  isList(value) ? value.map((item) => itemText(item, system)).join('; ') : itemText(value, system);

const isList = (value: StepValue): value is readonly StepItem[] => Array.isArray(value);

const itemText = (item: StepItem, system: SheetSystem): string =>
  isQuantity(item) ? measureWithExact(item, system) : plainText(item);

const markText = (item: StepItem, system: SheetSystem): string =>
  isQuantity(item) ? inWords(formatFor(item, system)) : plainText(item);

const plainText = (item: string | number): string =>
  typeof item === 'string' || Number.isInteger(item)
    ? String(item)
    : String(Number(item.toPrecision(8)));
