// Fabric is laid over an outline, which `outline` reads and measures.
import { entry } from '../../invariant.js';
import { makeArc, otherLeg } from '../../outline/arc.js';
import { isOutwardRight } from '../../outline/chords.js';
import { forEachEdge, type Ring } from '../../outline/ring.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  roughNumber,
  signOfRatio,
  subtractRatios,
  HALF_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import {
  cross,
  dot,
  minus,
  norm,
  plus,
  scaled,
  share,
  turnedRight,
  type Vector,
} from '../../units/vector.js';

/** A part of an outline that never turns back across a direction: x along it, y to its left. Internal. */
export interface OutlineSide {
  readonly low: Ratio;
  readonly high: Ratio;
  /** x at a y from low to high. */
  readonly at: (y: Ratio) => Ratio;
  /** Least and greatest x between two y. */
  readonly range: (from: Ratio, to: Ratio) => readonly [Ratio, Ratio];
}

/**
 * The sides of a ring as seen along a direction, scaled by the length of that direction. Straight edges
 * stay exact; arcs are taken to 40 digits, and to an end that they leave or reach square to the
 * direction within a billionth of a metre. Internal.
 */
export function sidesAlong(ring: Ring, direction: Vector): OutlineSide[] {
  const seen = ring.points.map((point) => ({
    x: dot(direction, point),
    y: cross(direction, point),
  }));
  const scale = norm(direction);
  const isRight = isOutwardRight(ring, false);
  const sides: OutlineSide[] = [];
  forEachEdge(seen, (a, b, edge) => {
    const bulge = ring.bulges?.[edge];
    if (bulge === undefined) {
      sides.push(straight(a, b));
      return;
    }
    const right = multiplyRatios(isRight ? bulge : negateRatio(bulge), scale);
    sides.push(...arcSides(a, b, right, roughNumber(scale) * SAME));
  });
  return sides;
}

/** Metres within which an arc is taken to run out square to the direction. */
const SAME = 1e-9;

function straight(a: Vector, b: Vector): OutlineSide {
  const [low, high] = ordered(a.y, b.y);
  const at = (y: Ratio): Ratio => {
    const rise = subtractRatios(b.y, a.y);
    if (signOfRatio(rise) === 0) return a.x;
    const part = multiplyRatios(subtractRatios(b.x, a.x), subtractRatios(y, a.y));
    return addRatios(a.x, divideRatios(part, rise));
  };
  const isLevel = compareRatios(low, high) === 0;
  return {
    low,
    high,
    at,
    range: (from, to) => (isLevel ? ordered(a.x, b.x) : ordered(at(from), at(to))),
  };
}

/** The parts of an arc on the left and on the right half of its circle. */
function arcSides(a: Vector, b: Vector, bulgeRight: Ratio, same: number): OutlineSide[] {
  const chord = norm(minus(b, a));
  const { radius, height } = makeArc(chord, bulgeRight);
  const along = minus(b, a);
  const right = turnedRight(along);
  const toRight = signOfRatio(bulgeRight) > 0;
  // from the middle of the chord against the bulge
  const back = subtractRatios(height, radius);
  const middle = scaled(plus(a, b), HALF_RATIO);
  const centre = plus(middle, share(right, toRight ? back : negateRatio(back), chord));
  const near = (value: Ratio, ...ends: readonly Ratio[]): Ratio =>
    ends.find((end) => Math.abs(roughNumber(subtractRatios(end, value))) < same) ?? value;
  const bottom = near(subtractRatios(centre.y, radius), a.y, b.y);
  const top = near(addRatios(centre.y, radius), a.y, b.y);
  const isOn = (point: Vector) =>
    signOfRatio(cross(along, minus(point, a))) * (toRight ? 1 : -1) < 0;
  return [-1, 1].flatMap((hand): OutlineSide[] => {
    const extreme = near(
      hand < 0 ? subtractRatios(centre.x, radius) : addRatios(centre.x, radius),
      a.x,
      b.x,
    );
    const at = (y: Ratio): Ratio => {
      const end = [a, b].find(
        (point) => compareRatios(point.y, y) === 0 && sideOf(point, centre) === hand,
      );
      return end === undefined ? onCircle({ centre, radius, hand }, y) : end.x;
    };
    const cuts = [a, b]
      .filter((point) => sideOf(point, centre) === hand)
      .map(({ y }) => y)
      .filter((y) => compareRatios(y, bottom) > 0 && compareRatios(y, top) < 0)
      .sort(compareRatios);
    const levels = [bottom, ...cuts, top];
    return levels.slice(1).flatMap((high, k): OutlineSide[] => {
      const low = entry(levels, k);
      const mid = multiplyRatios(addRatios(low, high), HALF_RATIO);
      if (compareRatios(low, high) >= 0 || !isOn({ x: at(mid), y: mid })) return [];
      const range = (from: Ratio, to: Ratio): readonly [Ratio, Ratio] => {
        const [least, most] = ordered(at(from), at(to));
        const isPast = compareRatios(from, centre.y) <= 0 && compareRatios(to, centre.y) >= 0;
        if (!isPast) return [least, most];
        return hand < 0 ? [extreme, most] : [least, extreme];
      };
      return [{ low, high, at, range }];
    });
  });
}

const sideOf = (point: Vector, centre: Vector): -1 | 1 =>
  compareRatios(point.x, centre.x) < 0 ? -1 : 1;

interface HalfCircle {
  readonly centre: Vector;
  readonly radius: Ratio;
  /** -1 for the left half, 1 for the right. */
  readonly hand: number;
}

function onCircle({ centre, radius, hand }: HalfCircle, y: Ratio): Ratio {
  const up = subtractRatios(y, centre.y);
  const half = otherLeg(radius, multiplyRatios(up, up));
  return hand < 0 ? subtractRatios(centre.x, half) : addRatios(centre.x, half);
}

const ordered = (a: Ratio, b: Ratio): readonly [Ratio, Ratio] =>
  compareRatios(a, b) <= 0 ? [a, b] : [b, a];
