// The outlines of a dig on the way up are outlines widened.
import type { WidenedOutline } from '../outline/widen-outline.js';
import { sum } from '../units/aggregate.js';
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
  /** Areas at even steps from the bottom to the top: three, or two a slice and one. */
  readonly areas: readonly Area[];
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
  const areaAt = (height: Length): Area => at(height).area;
  const areas = [bottom, areaAt(depth.dividedBy(2)), top.area];
  const whole = inSlices(areas, depth);
  const sliced = (slices: number): Area[] => areasOf(slices, { bottom, depth, areaAt });
  const isExact = !top.closesUp && (!hasArcs || isSame(whole, inSlices(sliced(2), depth)));
  if (isExact) return { volume: whole, top, areas, isExact };
  const many = sliced(SLICES);
  return { volume: inSlices(many, depth), top, areas: many, isExact };
}

/** An even number. The only error is in the one slice where two sides meet. */
const SLICES = 32;

/** Areas with arcs are kept to 40 digits, and their moved corners are joined within a millimetre. */
const isSame = (a: Volume, b: Volume): boolean => a.minus(b).abs().compare(a.times('1e-9')) <= 0;

/** Area of the bottom, then of the middle and the top of each slice. */
function areasOf(
  slices: number,
  dig: {
    readonly bottom: Area;
    readonly depth: Length;
    readonly areaAt: (height: Length) => Area;
  },
): Area[] {
  const steps = 2 * slices;
  const above = Array.from({ length: steps }, (_, k) =>
    dig.areaAt(dig.depth.times(k + 1).dividedBy(steps)),
  );
  return [dig.bottom, ...above];
}

/** Each slice counts its bottom and its top once and its middle four times, over six. */
function inSlices(areas: readonly Area[], depth: Length): Volume {
  const last = areas.length - 1;
  const weighed = areas.map((area, k) => {
    const ends = k === 0 || k === last ? 1 : 2;
    return area.times(k % 2 === 1 ? 4 : ends);
  });
  return sum(weighed)
    .times(depth)
    .dividedBy(3 * last);
}
