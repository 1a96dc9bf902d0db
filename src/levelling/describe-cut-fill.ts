import { formatLength, type FormatLengthOptions } from '../units/format-length.js';
import type { Length } from '../units/quantity.js';

/**
 * The instruction for a cut or fill, rounded as it is printed.
 *
 * @param cutFill - from `cutFill`, or a surface and its cut [length, cut positive]
 * @param options - how the length is printed, as for `formatLength`
 * @returns for instance `cut 45 mm to subgrade`, `fill 3/4 in to base top`; `subgrade: on grade` where
 *   nothing is left to the step of the print
 * @throws `INCREMENT_UNSUITABLE`, `UNIT_UNKNOWN` and the other codes of `formatLength`
 * @example
 * const cut = length('-18 mm');
 * describeCutFill({ surface: 'base top', cut }, { as: 'mm' }) //=> 'fill 18 mm to base top'
 * describeCutFill({ surface: 'base top', cut }, { as: 'mm', nearest: '50 mm' }) //=> 'base top: on grade'
 */
export function describeCutFill(
  cutFill: { readonly surface: string; readonly cut: Length },
  options: FormatLengthOptions,
): string {
  const { surface, cut } = cutFill;
  const text = formatLength(cut.abs(), options);
  if (text === formatLength(cut.minus(cut), options)) return `${surface}: on grade`;
  return `${cut.isNegative() ? 'fill' : 'cut'} ${text} to ${surface}`;
}
