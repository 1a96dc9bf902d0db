import { areaOf } from '../../../outline/outline-area.js';
import type { Outline } from '../../../outline/ring.js';
import type { Area } from '../../../units/quantity.js';
import { area } from '../../../units/construct.js';
import { NO_AREA } from '../../../units/zero.js';
import { commonArea } from './common-area.js';

/** Areas up to this come from the rounding of arcs. */
const NOTHING = area('1', 'mm2');

/** An outline to add or to deduct. Internal. */
export interface SignedOutline {
  readonly outline: Outline;
  readonly sign: 1 | -1;
}

/**
 * An outline less some others, as outlines to add and to deduct. An area inside several of the others
 * is deducted with the last of them. Internal.
 */
export function without(outline: Outline, others: readonly Outline[]): readonly SignedOutline[] {
  const taken = others.flatMap((other, index) =>
    commonArea(outline, other).flatMap((part) => without(part, others.slice(index + 1))),
  );
  return [{ outline, sign: 1 }, ...taken.map(turned)];
}

const turned = ({ outline, sign }: SignedOutline): SignedOutline => ({
  outline,
  sign: sign === 1 ? -1 : 1,
});

/** The parts of signed outlines inside another outline. Internal. */
export const within = (
  regions: readonly SignedOutline[],
  other: Outline,
): readonly SignedOutline[] =>
  regions.flatMap(({ outline, sign }) =>
    commonArea(outline, other).map((part) => ({ outline: part, sign })),
  );

/** The area of signed outlines, zero or more. Internal. */
export function areaOfRegions(regions: readonly SignedOutline[]): Area {
  const all = regions.reduce((total, { outline, sign }) => {
    const one = areaOf(outline);
    return sign === 1 ? total.plus(one) : total.minus(one);
  }, NO_AREA);
  return all.compare(NOTHING) <= 0 ? NO_AREA : all;
}
