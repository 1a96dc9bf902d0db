import { fault } from '../errors.js';
import { DIMENSIONS, type Dimension, type UnitOf } from './catalogue.js';
import { skipSpaces } from './characters.js';
import { isFlag, isOneOf } from './check-options.js';
import { refuseGrouping } from './grouping.js';
import { measureWord } from './measure-words.js';
import { fromUnit, type Quantity } from './quantity.js';
import { negateRatio } from './ratio.js';
import { readingFault, unitMissing, unitUnknown } from './reading-fault.js';
import { scanAmount } from './scan-amount.js';
import { startOfNumber, startOfText } from './start-of-text.js';
import { shownText } from '../shown-text.js';
import { aOrAn, shown } from './shown.js';

/** Ways to write a number beyond the default. */
export interface ParseMeasureOptions {
  /** True to read `1,5 t` as 1.5 t; a decimal point is then refused. Default: false. */
  readonly decimalComma?: boolean;
}

/** The options of the readers of measures and slopes. Internal. */
export const MEASURE_CHECKS = { decimalComma: isFlag };

/** The kinds of quantity that are written as one number and one unit. */
export type MeasureDimension = Exclude<Dimension, 'length' | 'slope'>;

const FINEST_DENOMINATOR = 128;

/**
 *
 * Reads a measure other than a length or a slope from text: one number and one unit
 * (`'3700 lb/yd3'`, `'81 sq ft'`, `'13 t'`, `'250 kPa'`), exactly.
 *
 * @param dimension - the kind of quantity that is needed
 * @param text - up to 120 characters, with its unit
 * @param options - see {@link ParseMeasureOptions}
 * @throws `TEXT_UNREADABLE` with `params.reason`, one of {@link READING_REASONS}; `UNIT_AMBIGUOUS`
 * for   a bare ton or gallon; `UNIT_MISSING`, `UNIT_UNKNOWN`, `UNKNOWN_CHOICE` if this is not a
 * dimension,   `UNKNOWN_FIELD`, `WRONG_TYPE`
 * @example
 * parseMeasure('area', '81 sq ft').to('yd2').toString() //=> '9'
 */
export function parseMeasure<D extends MeasureDimension>(
  dimension: D,
  text: string,
  options: ParseMeasureOptions = {},
): Quantity<D> {
  checkDimension(dimension);
  const start = startOfText(text, { what: aOrAn(dimension), options, checks: MEASURE_CHECKS });
  const { isNegative, from } = startOfNumber(text, start, options.decimalComma);
  const amount = scanAmount(text, from, { ...options, finest: FINEST_DENOMINATOR });
  const { value } = amount;
  const unit = readUnit(dimension, text, skipSpaces(text, amount.end));
  if (options.decimalComma === true) refuseGrouping(text, amount, unit);
  return fromUnit(dimension, isNegative ? negateRatio(value) : value, unit);
}

function checkDimension(dimension: unknown): void {
  const choices = DIMENSIONS.filter((one) => one !== 'length' && one !== 'slope');
  const found = isOneOf(choices)(dimension);
  if (found !== undefined) throw fault(found.code, found.message, found.params);
}

function readUnit<D extends MeasureDimension>(dimension: D, text: string, at: number): UnitOf<D> {
  const name = text.slice(at).trim().replace(/\s+/g, ' ');
  if (name === '') throw unitMissing(dimension, text, at);
  const word = measureWord(dimension, name);
  switch (word.kind) {
    case 'unit':
      return word.unit as UnitOf<D>;
    case 'ambiguous':
      throw fault(
        'UNIT_AMBIGUOUS',
        `${shown(name)} could be several units. Write ${word.choices}`,
        {
          text: shownText(text),
          position: at,
        },
      );
    case 'wrong-case':
      throw readingFault('CASE', text, at);
    default:
      throw unitUnknown(dimension, name, at);
  }
}
