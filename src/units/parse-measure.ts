import { fault } from '../errors.js';
import { unitsOf, type Dimension, type UnitOf } from './catalogue.js';
import { isHyphen, isSpace, skipSpaces } from './characters.js';
import { measureWord } from './measure-words.js';
import { fromUnit, type Quantity } from './quantity.js';
import { negateRatio } from './ratio.js';
import { readingFault } from './reading-fault.js';
import { scanAmount, startsAmount } from './scan-amount.js';

/** How a number may be written beyond the default. */
export interface ParseMeasureOptions {
  /** Read `1,5 t` as 1.5 t; a point is then refused. Default false. */
  readonly decimalComma?: boolean;
}

const LONGEST_TEXT = 120;
const FINEST_DENOMINATOR = 128;

/**
 * Reads a measure other than a length or a slope from text: one number and one unit
 * (`'3700 lb/yd3'`, `'81 sq ft'`, `'13 t'`, `'250 kPa'`), exactly.
 *
 * @param dimension - the kind of quantity that is needed
 * @param text - up to 120 characters, with its unit
 * @throws reading codes as for lengths; `UNIT_AMBIGUOUS` for a bare ton or gallon; `UNIT_UNKNOWN`
 * @example
 * parseMeasure('area', '81 sq ft').to('yd2').toString() //=> '9'
 */
export function parseMeasure<D extends Exclude<Dimension, 'length' | 'slope'>>(
  dimension: D,
  text: string,
  options: ParseMeasureOptions = {},
): Quantity<D> {
  if (text.length > LONGEST_TEXT) throw readingFault('TOO_LONG', text, LONGEST_TEXT);
  const start = skipSpaces(text, 0);
  if (start === text.length) throw readingFault('EMPTY', text, 0);
  const isNegative = isHyphen(text, start);
  const numberAt = isNegative || text[start] === '+' ? start + 1 : start;
  if (isSpace(text, numberAt)) throw readingFault('SIGN_SPACE', text, numberAt);
  if (!startsAmount(text, numberAt, options.decimalComma)) {
    throw readingFault('NO_NUMBER', text, numberAt);
  }
  const { value, end } = scanAmount(text, numberAt, { ...options, finest: FINEST_DENOMINATOR });
  const unit = readUnit(dimension, text, skipSpaces(text, end));
  return fromUnit(dimension, isNegative ? negateRatio(value) : value, unit);
}

function readUnit<D extends Exclude<Dimension, 'length' | 'slope'>>(
  dimension: D,
  text: string,
  at: number,
): UnitOf<D> {
  const name = text.slice(at).trim().replace(/\s+/g, ' ');
  if (name === '') throw readingFault('NO_UNIT', text, at);
  const word = measureWord(dimension, name);
  switch (word.kind) {
    case 'unit':
      return word.unit as UnitOf<D>;
    case 'ambiguous':
      throw fault('UNIT_AMBIGUOUS', `${JSON.stringify(name)} is ambiguous: write ${word.choices}`, {
        text,
        position: at,
      });
    case 'wrong-case':
      throw readingFault('CASE', text, at);
    default:
      throw fault(
        'UNIT_UNKNOWN',
        `${JSON.stringify(name)} is no unit of ${dimension}; use one of ${unitsOf(dimension).join(', ')}`,
        { text, position: at },
      );
  }
}
