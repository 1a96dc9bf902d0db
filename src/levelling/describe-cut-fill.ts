import { fault } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { formatLength, type FormatLengthOptions } from '../units/format-length.js';
import { isQuantity } from '../units/quantity.js';
import type { CutFill } from './cut-fill.js';

/**
 *
 * The instruction for a cut or fill, as text.
 *
 * @param cutFill - the result of `cutFill`, or a surface and its cut [length, cut positive]
 * @param options - how the length is printed, as for `formatLength`. Default: as it was written
 * @returns for instance `cut 45 mm to subgrade`, `fill 3/4 in to base top`; `subgrade: on grade` if the
 *   cut rounds to nothing
 * @throws `WRONG_TYPE`, `INCREMENT_UNSUITABLE`, `UNIT_UNKNOWN` and the other codes of `formatLength`
 * @example
 * const cut = length('-18 mm');
 * describeCutFill({ surface: 'base top', cut }) //=> 'fill 18 mm to base top'
 * describeCutFill({ surface: 'base top', cut }, { as: 'mm', nearest: '50 mm' }) //=> 'base top: on grade'
 */
export function describeCutFill(
  cutFill: Pick<CutFill, 'surface' | 'cut'>,
  options: FormatLengthOptions = {},
): string {
  if (!isCutFill(cutFill)) throw fault('WRONG_TYPE', 'pass the result of cutFill()');
  if (!isPlain(options)) throw fault('WRONG_TYPE', 'expected an object { ... }', {}, ['options']);
  const { surface, cut } = cutFill;
  const text = formatLength(cut.abs(), options);
  if (text === formatLength(cut.minus(cut), options)) return `${surface}: on grade`;
  return `${cut.isNegative() ? 'fill' : 'cut'} ${text} to ${surface}`;
}

function isCutFill(value: unknown): value is Pick<CutFill, 'surface' | 'cut'> {
  if (typeof value !== 'object' || value === null) return false;
  const { surface, cut } = value as Partial<CutFill>;
  return typeof surface === 'string' && isQuantity(cut) && cut.dimension === 'length';
}
