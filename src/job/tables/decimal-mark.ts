import { fault } from '../../errors.js';
import type { TableDelimiter } from './split-table.js';

/** What stands before the decimals of a number. */
export type DecimalMark = '.' | ',';

/** A number with decimals, by either mark. */
const WITH_DECIMALS = /^[+-]?\d*[.,]\d+$/;
/** What could as well be thousands. */
const LIKE_THOUSANDS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/**
 * Which mark the numbers of a table have before their decimals: a point between commas, else what all
 * of them show. Internal.
 *
 * @throws `TABLE_UNCLEAR` where numbers show both, or commas that could part thousands
 */
export function decimalMarkOf(cells: readonly string[], delimiter: TableDelimiter): DecimalMark {
  if (delimiter === ',') return '.';
  const numbers = cells.filter((cell) => WITH_DECIMALS.test(cell));
  const withComma = numbers.filter((cell) => cell.includes(','));
  const [first] = withComma;
  if (first === undefined) return '.';
  const point = numbers.find((cell) => cell.includes('.'));
  if (point !== undefined) {
    throw unclear(`${first} has a decimal comma and ${point} a decimal point`);
  }
  if (withComma.every((cell) => LIKE_THOUSANDS.test(cell))) {
    throw unclear(`${first} could have a decimal comma, or a comma between thousands`);
  }
  return ',';
}

const unclear = (words: string) =>
  fault('TABLE_UNCLEAR', `${words}. Say which decimalMark the table has`, {}, ['decimalMark']);
