import { areaOf } from '../../../outline/outline-area.js';
import type { Outline } from '../../../outline/ring.js';
import type { Area } from '../../../units/quantity.js';
import { NO_AREA } from '../../../units/zero.js';
import { commonArea } from './common-area.js';

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

/** The area of signed outlines. Internal. */
export const areaOfRegions = (regions: readonly SignedOutline[]): Area =>
  regions.reduce((total, { outline, sign }) => {
    const area = areaOf(outline);
    return sign === 1 ? total.plus(area) : total.minus(area);
  }, NO_AREA);
