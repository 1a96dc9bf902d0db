import { isOutwardRight } from '../outline/chords.js';
import { ringsOf, type Outline } from '../outline/ring.js';
import { fromNumber } from '../units/construct.js';
import { entryOf } from '../units/find-unit.js';
import { exactOf, fromSI, type Area, type Length, type Volume } from '../units/quantity.js';
import {
  divideRatios,
  isSmall,
  quotientToNumber,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { chordsIn } from './bows.js';
import type { Spot } from './read-spots.js';

/**
 * The border between quantities and the floats of a surface: what the floats are measured from, and
 * in which unit. Internal.
 */
export interface SiteFrame {
  readonly origin: Spot;
  readonly unit: 'm' | 'ft';
  toLength(value: number): Length;
  toArea(value: number): Area;
  toVolume(value: number): Volume;
}

/** Digits that a float sum is good for. */
const DIGITS = 12;

const rounded = (value: number): number => Number(value.toPrecision(DIGITS));

/** Units whose whole numbers stay whole in feet and inches. */
const IMPERIAL = new Set(['ft', 'in', 'yd']);

/**
 * Makes a frame: floats are feet where the data are in feet, so whole feet stay whole. Internal.
 */
export function makeFrame(origin: Spot, unit: string | undefined): SiteFrame {
  const isImperial = unit !== undefined && IMPERIAL.has(unit);
  const [length, area, volume] = isImperial
    ? (['ft', 'ft2', 'ft3'] as const)
    : (['m', 'm2', 'm3'] as const);
  return {
    origin,
    unit: length,
    toLength: (value) => fromNumber(rounded(value), length),
    toArea: (value) => fromNumber(rounded(value), area),
    toVolume: (value) => fromNumber(rounded(value), volume),
  };
}

/** So many heights show what a site was measured in. */
const MOST_JUDGED = 16;
/** More digits than a tape or a level gives: what is measured in metres never ends in inches. */
const MOST_PLACES = 15;

/**
 * The unit that heights were measured in, where it is not given: feet where they are inches and
 * decimals of inches, else metres. However a height is written, the answer is the same. Internal.
 */
export const unitMeasured = (spots: readonly Spot[]): 'ft' | 'm' =>
  spots.slice(0, MOST_JUDGED).every(({ x, y, z }) => [x, y, z].every(isInInches)) ? 'ft' : 'm';

/** True for inches and decimals of inches; a small ratio has no more places than that. */
function isInInches(one: Length): boolean {
  const inches = divideRatios(exactOf(one), entryOf('length', 'in').exact);
  return isSmall(inches) || (inches.places >= 0 && inches.places <= MOST_PLACES);
}

/** From one length to another, as a float in a unit. Internal. */
export const floatFrom = (from: Length, to: Length, unit: SiteFrame['unit']): number =>
  quotientToNumber(subtractRatios(exactOf(to), exactOf(from)), entryOf('length', unit).exact);

/** Spot heights as floats: interleaved, x0, y0, z0, x1. Internal. */
export function floatsOf(spots: readonly Spot[], { origin, unit }: SiteFrame): Float64Array {
  const floats = new Float64Array(3 * spots.length);
  spots.forEach(({ x, y, z }, k) => {
    floats[3 * k] = floatFrom(origin.x, x, unit);
    floats[3 * k + 1] = floatFrom(origin.y, y, unit);
    floats[3 * k + 2] = floatFrom(origin.z, z, unit);
  });
  return floats;
}

/** The rings of an outline as floats, chords for its arcs, and what lies between the two. Internal. */
export function outlineIn(
  outline: Outline,
  { origin, unit }: SiteFrame,
): { readonly rings: readonly Float64Array[]; readonly bows: Float64Array } {
  const [dx, dy] = [outline.origin.x.minus(origin.x), outline.origin.y.minus(origin.y)];
  const toUnit = (value: Ratio): number => fromSI('length', value).toNumber(unit);
  const chains = ringsOf(outline).map((ring, index) => {
    const isRight = isOutwardRight(ring, index > 0);
    const points = ring.points.map(({ x, y }): [number, number] => [
      dx.plus(fromSI('length', x)).toNumber(unit),
      dy.plus(fromSI('length', y)).toNumber(unit),
    ]);
    const bulges = ring.bulges?.map((bulge) => (bulge === undefined ? 0 : toUnit(bulge)));
    return bulges === undefined
      ? { xy: points.flat(), bows: [] }
      : chordsIn(points, bulges, isRight);
  });
  return {
    rings: chains.map(({ xy }) => Float64Array.from(xy)),
    bows: Float64Array.from(chains.flatMap(({ bows }) => bows)),
  };
}
