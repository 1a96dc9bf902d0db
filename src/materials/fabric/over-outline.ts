// Fabric is laid over an outline, which `outline` reads and measures.
import { fault } from '../../errors.js';
import { entry, known } from '../../invariant.js';
import { measureOutline } from '../../outline/outline-area.js';
import type { Outline } from '../../outline/ring.js';
import { angle } from '../../units/construct.js';
import { fromSI, exactOf, type Angle, type Area, type Length } from '../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import {
  cross,
  dot,
  minus,
  norm,
  opposite,
  squared,
  turnedLeft,
  type Vector,
} from '../../units/vector.js';
import { NO_ANGLE } from '../../units/zero.js';
import { stripsAcross } from '../strips.js';
import { stretchesIn } from './band-stretches.js';
import { sidesAlong, type OutlineSide } from './outline-sides.js';
import { cutsOf, cutStrip, type Roll, type RollCuts } from './roll-cuts.js';

/** Which way strips lie. */
export interface FabricDirection {
  /** Edge of the outline that they follow, counted from 1: edge 1 runs from the first point to the second. */
  readonly edge: number;
  /** True where they lie square to that edge. */
  readonly isSquare: boolean;
  /** Direction of the strips, clockwise from +y, from 0 to below 180 degrees. */
  readonly azimuth: Angle;
  /** On which side the first strip lies, looking along the azimuth. */
  readonly firstOn: 'left' | 'right';
}

/** A strip, or a part of one where the outline has a gap in its way. */
export interface FabricStrip {
  /** Which strip, counted from 1 from the side of the first. */
  readonly strip: number;
  /** Length on the ground, upturns included. */
  readonly length: Length;
  /** Pieces that it is made of: more than 1 where it is longer than the roll. */
  readonly pieces: number;
  /** Length of fabric to cut for it, end laps included. */
  readonly cutLength: Length;
}

/** Strips over an outline in one direction. Internal. */
export interface OutlineLaying extends RollCuts {
  readonly strips: number;
  readonly direction: FabricDirection;
  readonly laid: readonly FabricStrip[];
}

/** Directions to try, of the longest edges; each with its square, and from either side. */
const MOST_EDGES = 6;
/** Strips that are laid out one by one. */
const MOST_STRIPS = 2000;

/** The best way to lay strips over an outline, and the best square to it. Internal. */
export function layOver(
  outline: Outline,
  roll: Roll,
  upturn: Length,
): { readonly best: OutlineLaying; readonly across: OutlineLaying } {
  const lay = (edge: number, along: Vector, isSquare: boolean) =>
    [along, opposite(along)]
      .map((direction) => layAlong(outline, { roll, upturn, way: { edge, isSquare, direction } }))
      .reduce(better);
  const pairs = directionsOf(outline).map(({ edge, along: direction }) => {
    const along = lay(edge, direction, false);
    const square = lay(edge, turnedLeft(direction), true);
    return better(along, square) === along
      ? { best: along, across: square }
      : { best: square, across: along };
  });
  return pairs.reduce((one, other) => (better(one.best, other.best) === one.best ? one : other));
}

/** The laying with fewer rolls, where they are known, else with less fabric; of equals the first. */
function better(a: OutlineLaying, b: OutlineLaying): OutlineLaying {
  const rolls = (a.rolls ?? 0) - (b.rolls ?? 0);
  return (rolls === 0 ? a.totalLength.compare(b.totalLength) : rolls) <= 0 ? a : b;
}

interface EdgeWay {
  readonly edge: number;
  readonly along: Vector;
}

/** The longest straight edges, of edges along or square to each other one; chords where all are arcs. */
function directionsOf({ points, bulges }: Outline): EdgeWay[] {
  const edges = points.map((from, k): EdgeWay & { readonly isStraight: boolean } => ({
    edge: k + 1,
    along: minus(entry(points, (k + 1) % points.length), from),
    isStraight: bulges?.[k] === undefined,
  }));
  const straight = edges.filter(({ isStraight }) => isStraight);
  const sorted = [...(straight.length > 0 ? straight : edges)].sort((a, b) =>
    compareRatios(squared(b.along), squared(a.along)),
  );
  const found: EdgeWay[] = [];
  for (const one of sorted) {
    const isNew = found.every(
      ({ along }) =>
        signOfRatio(cross(along, one.along)) !== 0 && signOfRatio(dot(along, one.along)) !== 0,
    );
    if (isNew) found.push(one);
    if (found.length === MOST_EDGES) break;
  }
  return found;
}

interface Way {
  readonly edge: number;
  readonly isSquare: boolean;
  readonly direction: Vector;
}

/** Strips along a direction, the first on its right-hand side. */
function layAlong(
  outline: Outline,
  { roll, upturn, way }: { readonly roll: Roll; readonly upturn: Length; readonly way: Way },
): OutlineLaying {
  const sides = sidesAlong(outline, way.direction);
  const size = norm(way.direction);
  const inScale = (length: Length): Ratio => multiplyRatios(exactOf(length), size);
  const outOfScale = (value: Ratio): Length => fromSI('length', divideRatios(value, size));
  const [low, high] = spanOf(sides);
  const turned = inScale(upturn);
  const width = outOfScale(subtractRatios(high, low)).plus(upturn.times(2));
  const strips = stripsAcross(width, roll.width, roll.overlap);
  if (strips > MOST_STRIPS) throw tooMany(strips);
  const pitch = inScale(roll.width.minus(roll.overlap));
  const rollWidth = inScale(roll.width);
  const start = subtractRatios(low, turned);
  const laid = Array.from({ length: strips }, (_, k) => k).flatMap((k) => {
    const from = addRatios(start, multiplyRatios(pitch, wholeRatio(k)));
    // the upturn of what lies beside the strip reaches into it
    const beside = [
      subtractRatios(from, turned),
      addRatios(addRatios(from, rollWidth), turned),
    ] as const;
    return stretchesIn(sides, beside, turned).map(([a, b]) => {
      const length = outOfScale(subtractRatios(b, a));
      return { strip: k + 1, length, ...cutStrip(length, roll) };
    });
  });
  return { strips, laid, direction: directionOf(way), ...cutsOf(laid, roll) };
}

function spanOf(sides: readonly OutlineSide[]): readonly [Ratio, Ratio] {
  const [one, ...rest] = sides;
  const first = known(one, 'side of an outline');
  let [low, high] = [first.low, first.high];
  for (const side of rest) {
    if (compareRatios(side.low, low) < 0) low = side.low;
    if (compareRatios(side.high, high) > 0) high = side.high;
  }
  return [low, high];
}

const tooMany = (strips: number) =>
  fault(
    'CAPACITY_EXCEEDED',
    `${strips} strips, more than ${MOST_STRIPS} are not laid out one by one. Check the digits and the unit`,
    { strips },
    ['rollWidth'],
  );

function directionOf({ edge, isSquare, direction }: Way): FabricDirection {
  const { x, y } = direction;
  // along the azimuth, below 180 degrees, x is positive, or y where x is none
  const isForward = signOfRatio(x) > 0 || (signOfRatio(x) === 0 && signOfRatio(y) > 0);
  const azimuth = azimuthOf(isForward ? direction : opposite(direction));
  return { edge, isSquare, azimuth, firstOn: isForward ? 'right' : 'left' };
}

/** Clockwise from +y, of a direction toward +x: exact for the main directions, else in floats. */
function azimuthOf({ x, y }: Vector): Angle {
  if (signOfRatio(x) === 0) return NO_ANGLE;
  if (signOfRatio(y) === 0) return angle(90, 'deg');
  if (compareRatios(x, y) === 0) return angle(45, 'deg');
  if (compareRatios(x, negateRatio(y)) === 0) return angle(135, 'deg');
  return angle(Math.atan2(ratioToNumber(x), ratioToNumber(y)), 'rad');
}

/**
 * The outline with its upturns, holes covered: `A + P u + 4 u^2`, exact for square corners. Internal.
 */
export function coveredBy(outline: Outline, upturn: Length): Area {
  const { area, perimeter } = measureOutline({ ...outline, holes: [] });
  return area.plus(perimeter.times(upturn)).plus(upturn.times(upturn).times(4));
}
