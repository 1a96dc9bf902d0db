import { entry, known } from '../invariant.js';
import { once } from '../once.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import {
  absoluteRatio,
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  signOfRatio,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import {
  between,
  cross,
  dot,
  minus,
  norm,
  plus,
  pointFrom,
  scaled,
  share,
  squared,
  turnedLeft,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';

/** A level of a line in plan. Internal. */
export interface LineLevel extends PlanPoint {
  readonly elevation: Length;
}

/** A stretch of a line in plan from level to level. Internal. */
export interface BentLeg {
  readonly from: LineLevel;
  readonly to: LineLevel;
  readonly ahead: Vector;
  /** Square of its length. */
  readonly square: Ratio;
  readonly length: Ratio;
  readonly rise: Length;
  /** Tangents of half the turn at its start and at its end, + to the left; 0 at the ends of the line. */
  readonly half: { readonly start: Ratio; readonly end: Ratio };
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** Where the surface along a line of levels is, for one place. Internal. */
export interface BentAt {
  readonly elevation: Length;
  /** Index of the leg that the place belongs to. */
  readonly leg: number;
  /** From the line, + to its left. */
  readonly offset: Length;
  /** True before the first level and beyond the last. */
  readonly extrapolated: boolean;
  /** True too far inside a bend, where a leg has no length left. */
  readonly isBeyondReach: boolean;
}

/** A line of levels in plan, and the surface along it. Internal. */
export interface BentLine {
  readonly legs: readonly BentLeg[];
  readonly at: (place: PlanPoint) => BentAt;
  /** Where the inside of bends has used legs up; beyond these places the surface has a step. */
  readonly apexes: readonly Apex[];
}

/** The place on the inside of a bend where a leg has no length left. Internal. */
export interface Apex {
  readonly leg: number;
  /** From the line, + to its left. */
  readonly offset: Ratio;
  readonly place: PlanPoint;
}

/**
 * The surface along a line of levels that may bend: the legs are parted by the mitre lines, which halve
 * the bends. At offset w, leg k runs from mitre to mitre, `w tan(a/2)` beyond its start and
 * `w tan(b/2)` before its end; along that length it rises evenly from level to level, and the cross
 * slope comes on top. Levels are apart, and no bend turns straight back. Internal.
 */
export function bentLine(levels: readonly LineLevel[], crossSlope: Slope): BentLine {
  const legs = legsOf(levels);
  // where all levels are alike, there is nothing that could step
  const isLevel = legs.every(({ rise }) => rise.isZero());
  const apexes = isLevel ? [] : legs.flatMap(apexOf);
  const inner = apexes.filter(({ leg }) => leg > 0 && leg < legs.length - 1);
  const isPast = (offset: Ratio) =>
    inner.some(
      (apex) =>
        signOfRatio(apex.offset) === signOfRatio(offset) &&
        compareRatios(absoluteRatio(offset), absoluteRatio(apex.offset)) >= 0,
    );
  return {
    legs,
    apexes,
    at: (place) => {
      const places = legs.map((leg, k) => placeOn(leg, k, place));
      // a line has one leg at least
      const found = nearest(places.filter(({ isHeld }) => isHeld)) ?? known(nearest(places), 'leg');
      const { leg, along, across } = found;
      const one = entry(legs, leg);
      const offset = divideRatios(across, one.length);
      const width = fromSI('length', offset);
      const rise = one.rise.times(fromSI('slope', shareOf(one, along, across)));
      const level = one.from.elevation.plus(rise);
      return {
        elevation: crossSlope.isZero() ? level : level.plus(width.times(crossSlope)),
        leg,
        offset: width,
        extrapolated: isBefore(one, along) || isBeyond(one, along),
        isBeyondReach: !isLevel && (!found.isHeld || isPast(offset)),
      };
    },
  };
}

function legsOf(levels: readonly LineLevel[]): BentLeg[] {
  const aheads = levels.slice(1).map((to, k) => between(entry(levels, k), to));
  const lengths = aheads.map(norm);
  const halfTurn = (k: number): Ratio => {
    const [a, b, la, lb] = [aheads[k - 1], aheads[k], lengths[k - 1], lengths[k]];
    if (a === undefined || b === undefined || la === undefined || lb === undefined) {
      return ZERO_RATIO;
    }
    return divideRatios(cross(a, b), addRatios(multiplyRatios(la, lb), dot(a, b)));
  };
  return levels.slice(1).map((to, k) => {
    const from = entry(levels, k);
    const ahead = entry(aheads, k);
    return {
      from,
      to,
      ahead,
      square: squared(ahead),
      length: entry(lengths, k),
      rise: to.elevation.minus(from.elevation),
      half: { start: halfTurn(k), end: halfTurn(k + 1) },
      isFirst: k === 0,
      isLast: k === aheads.length - 1,
    };
  });
}

/** What the two mitres together take of a leg, for each unit of offset to the left. */
const takenBy = ({ half }: BentLeg): Ratio => addRatios(half.start, half.end);

/** Length of a leg at an offset, + to the left. Internal. */
export const lengthAt = (leg: BentLeg, offset: Ratio): Ratio =>
  subtractRatios(leg.length, multiplyRatios(offset, takenBy(leg)));

interface PlaceOnLeg {
  readonly leg: number;
  /** Ahead from the start, times the length of the leg. */
  readonly along: Ratio;
  /** To the left of the leg, times its length. */
  readonly across: Ratio;
  /** True between the mitres of the leg, where it has some length left. */
  readonly isHeld: boolean;
  /** Square of the distance from the leg, or from the line that it is extended along. */
  readonly away: () => Ratio;
}

function placeOn(leg: BentLeg, index: number, place: PlanPoint): PlaceOnLeg {
  const to = between(leg.from, place);
  const [along, across] = [dot(leg.ahead, to), cross(leg.ahead, to)];
  const start = multiplyRatios(across, leg.half.start);
  const end = subtractRatios(leg.square, multiplyRatios(across, leg.half.end));
  const isHeld =
    compareRatios(start, end) < 0 &&
    (leg.isFirst || compareRatios(along, start) >= 0) &&
    (leg.isLast || compareRatios(along, end) <= 0);
  return {
    leg: index,
    along,
    across,
    isHeld,
    // nearly every place is between the mitres of one leg alone, and nobody asks
    away: once(() => squared(minus(to, scaled(leg.ahead, heldShare(leg, along))))),
  };
}

/** The share of a leg that a place lies ahead by, held to the leg but where it is extended. */
function heldShare(leg: BentLeg, along: Ratio): Ratio {
  const part = divideRatios(along, leg.square);
  const low = signOfRatio(part) < 0 && !leg.isFirst ? ZERO_RATIO : part;
  return compareRatios(part, ONE_RATIO) > 0 && !leg.isLast ? ONE_RATIO : low;
}

const nearest = (places: readonly PlaceOnLeg[]): PlaceOnLeg | undefined =>
  places.reduce<PlaceOnLeg | undefined>(
    (best, one) => (best === undefined || compareRatios(one.away(), best.away()) < 0 ? one : best),
    undefined,
  );

const isBefore = (leg: BentLeg, along: Ratio): boolean => leg.isFirst && signOfRatio(along) < 0;
const isBeyond = (leg: BentLeg, along: Ratio): boolean =>
  leg.isLast && compareRatios(along, leg.square) > 0;

/** How much of its rise a leg has made: between its mitres, or extended at its own grade. */
function shareOf(leg: BentLeg, along: Ratio, across: Ratio): Ratio {
  if (isBefore(leg, along) || isBeyond(leg, along)) return divideRatios(along, leg.square);
  const start = multiplyRatios(across, leg.half.start);
  const left = subtractRatios(leg.square, multiplyRatios(across, takenBy(leg)));
  const made = subtractRatios(along, start);
  // out of reach of every leg: the level at the nearer end
  if (signOfRatio(left) <= 0 || signOfRatio(made) <= 0) {
    return signOfRatio(made) <= 0 ? ZERO_RATIO : ONE_RATIO;
  }
  return compareRatios(made, left) >= 0 ? ONE_RATIO : divideRatios(made, left);
}

function apexOf(leg: BentLeg, index: number): Apex[] {
  const taken = takenBy(leg);
  if (signOfRatio(taken) === 0) return [];
  const offset = divideRatios(leg.length, taken);
  const left = turnedLeft(leg.ahead);
  const place = plus(
    share(leg.ahead, multiplyRatios(offset, leg.half.start), leg.length),
    share(left, offset, leg.length),
  );
  return [{ leg: index, offset, place: pointFrom(leg.from, place) }];
}

/** The level of a line at which it turns straight back; undefined where it never does. Internal. */
export function turnsBackAt(levels: readonly PlanPoint[]): number | undefined {
  const found = levels.findIndex((level, k) => {
    const [before, after] = [levels[k - 1], levels[k + 1]];
    if (before === undefined || after === undefined) return false;
    const [a, b] = [between(before, level), between(level, after)];
    return signOfRatio(cross(a, b)) === 0 && signOfRatio(dot(a, b)) < 0;
  });
  return found < 0 ? undefined : found;
}

/** A slope of a height over a length. Internal. */
export const gradeOver = (rise: Length, run: Ratio): Slope =>
  fromSI('slope', divideRatios(exactOf(rise), run));
