// The outlines of a dig on the way up are outlines widened.
import type { WidenedOutline } from '../outline/widen-outline.js';
import type { Area, Length, Volume } from '../units/quantity.js';

/** A dig with sloped sides. Internal. */
export interface SlopedDig {
  readonly bottom: Area;
  readonly depth: Length;
  /** Outline at a height above the bottom. */
  readonly at: (height: Length) => WidenedOutline;
  readonly hasArcs: boolean;
}

/** The volume of a dig with sloped sides, and its outline at the top. Internal. */
export interface SlopedVolume {
  readonly volume: Volume;
  readonly top: WidenedOutline;
  /** Area half way up. */
  readonly middle: Area;
  /** False if the volume is summed in slices. */
  readonly isExact: boolean;
}

/**
 * Volume of a dig with sloped sides: `V = d / 6 (A0 + 4 Am + A1)`, exact unless sides run into each
 * other on the way up or an arc is cut where it meets its neighbour. The volume is then summed in
 * slices. Internal.
 */
export function slopedVolume({ bottom, depth, at, hasArcs }: SlopedDig): SlopedVolume {
  const top = at(depth);
  const middle = at(depth.dividedBy(2)).area;
  const areaAt = (height: Length): Area => at(height).area;
  const whole = simpson(bottom, middle, top.area, depth);
  const isExact = !top.closesUp && (!hasArcs || isSame(whole, inSlices(bottom, areaAt, depth, 2)));
  const volume = isExact ? whole : inSlices(bottom, areaAt, depth, SLICES);
  return { volume, top, middle, isExact };
}

const simpson = (first: Area, middle: Area, last: Area, height: Length): Volume =>
  first.plus(middle.times(4)).plus(last).times(height).dividedBy(6);

/** An even number. The only error is in the one slice where two sides meet. Internal. */
export const SLICES = 32;

/** Areas with arcs are kept to 40 digits, and their moved corners are joined within a millimetre. */
const isSame = (a: Volume, b: Volume): boolean => a.minus(b).abs().compare(a.times('1e-9')) <= 0;

function inSlices(
  bottom: Area,
  areaAt: (height: Length) => Area,
  depth: Length,
  slices: number,
): Volume {
  const height = (k: number): Length => depth.times(k).dividedBy(2 * slices);
  const slice = height(2);
  let below = bottom;
  let total = bottom.times(0).times(depth);
  for (let k = 1; k < 2 * slices; k += 2) {
    const above = areaAt(height(k + 1));
    total = total.plus(simpson(below, areaAt(height(k)), above, slice));
    below = above;
  }
  return total;
}
