import { attempt } from '../attempt.js';
import { fault } from '../errors.js';
import { list, object, optional, quantity, text } from '../input/field.js';
import { TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { entry } from '../invariant.js';
import { fromNumber, type LengthInput } from '../units/construct.js';
import { fromSI, type Angle, type Length } from '../units/quantity.js';
import { ratioToNumber } from '../units/ratio.js';
import { between, isZero, pointFrom, type PlanPoint, type Vector } from '../units/vector.js';
import { NO_LENGTH } from '../units/zero.js';
import { withWorking, type Worked } from '../working.js';
import { FLAT_TURN } from './arc-from-chord.js';
import { circleSteps } from './circle-steps.js';
import { circleOfAll, circleOfThree, type ExactCircle } from './exact-circle.js';
import { fitCircle } from '../geometry/circle/fit-circle.js';
import { areInLine, lineSums } from './line-of-stakes.js';
import { GRID_ORIGIN, PLAN_PLACE, type PlanPlaceInput } from './plan-stake.js';

/** A point of a curved edge. */
export interface CurvePointInput extends PlanPlaceInput {
  /** Id, each used once; moves refer to it. Default: the number of the point, from 1. */
  readonly id?: string;
}

/** Points of a curved edge. */
export interface CircleThroughOptions {
  /** At least 3 points, in any order. */
  readonly points: readonly CurvePointInput[];
  /**
   * Tolerance: distance from the circle that still passes [length], 0 to 10 m. Default: not judged.
   */
  readonly tolerance?: LengthInput;
}

const CURVE_POINT = shapeOf<CurvePointInput>()({ id: optional(text()), ...PLAN_PLACE });

const OPTIONS = shapeOf<CircleThroughOptions>()({
  points: list(object(CURVE_POINT), { of: 'points', least: 3, unique: 'id' }),
  tolerance: optional(quantity(TOLERANCE)),
});

/** The move that brings a point onto the circle. */
export interface CurveMove {
  /** The id of the point, or its number from 1. */
  readonly id: string;
  /** Distance to move [length]. */
  readonly distance: Length;
  /** Toward the centre or away from it. */
  readonly direction: 'inward' | 'outward';
}

/** A circle through points, or the best fit. */
export interface CircleThrough extends Worked {
  /** Its centre in plan. */
  readonly centre: PlanPoint;
  /** Its radius [length]. */
  readonly radius: Length;
  /** Distance of each point from the circle [length], + outside, in the order given. */
  readonly residuals: readonly Length[];
  /** True if the circle goes through every point exactly. */
  readonly isExact: boolean;
  /** Angle at the centre that the points span [angle]. */
  readonly turn: Angle;
  /** True if that angle is too small for a reliable radius. */
  readonly isFlat: boolean;
  /** Change of the radius per unit of the middle ordinate of that arc. */
  readonly radiusPerOrdinate: number;
  /** Standard uncertainty of the radius from the residuals [length]; null for a circle that is exact. */
  readonly radiusUncertainty: Length | null;
  /** True if every point is in tolerance; null without a tolerance, or for three points. */
  readonly ok: boolean | null;
  /** A move for each point that is out of tolerance. */
  readonly moves: readonly CurveMove[];
  /** What to do, in words. */
  readonly note: string;
}

/**
 *
 * The circle through three points of a curved edge, or the best fit to more: geometric least
 * squares, with the smallest sum of squared distances from the circle. Three points give centre and
 * radius exactly (but for one root), and so do more points that are all on one circle. Otherwise
 * the fit is made in floats, from coordinates relative to the first point, and is good to a
 * nanometre or as far as the points decide it.
 *
 * Formula: for three points `|P - C|^2 = R^2` for each; for more, `sum (|P - C| - R)^2` is
 * smallest.
 *
 * @param options - see {@link CircleThroughOptions}
 * @returns centre and radius [length], residuals [length, + outside], turn of the arc, flags, moves
 * @throws `EMPTY_LIST`, `TOO_FEW`, `DUPLICATE_ID`, `POINTS_COINCIDE`, `POINTS_COLLINEAR` and the
 *   reading codes
 * @source derived
 * @example
 * const kerb = circleThrough({
 *   points: [
 *     { x: '0 m', y: '5 m' },
 *     { x: '3 m', y: '4 m' },
 *     { x: '5 m', y: '0 m' },
 *     { x: '4.05 m', y: '3 m' },
 *   ],
 *   tolerance: '15 mm',
 * });
 * kerb.radius.to('m').toFixed(2) //=> '4.95'
 * kerb.moves.map(({ id, direction }) => `${id} ${direction}`) //=> ['2 outward', '4 inward']
 */
export function circleThrough(options: CircleThroughOptions): CircleThrough {
  const { points: read, tolerance } = readOptions(options, OPTIONS);
  const points = read.map(({ id, x, y }, index) => ({ id: id ?? `${index + 1}`, at: { x, y } }));
  const origin = entry(points, 0).at;
  const local = points.map(({ at }) => between(origin, at));
  const { centre, radius, residuals, isExact, radiusUncertainty } = findCircle(local);
  const turn = turnOf(local, centre, radius);
  const isFlat = turn.compare(FLAT_TURN) < 0;
  const out = tolerance === undefined ? [] : outOf(points, residuals, tolerance);
  const isJudged = tolerance !== undefined && points.length > 3;
  return withWorking(
    {
      centre: pointFrom(origin, centre),
      radius,
      residuals,
      isExact,
      turn,
      isFlat,
      radiusPerOrdinate: perOrdinate(turn.toNumber('rad')),
      radiusUncertainty,
      ok: isJudged ? out.length === 0 : null,
      moves: out,
      note: noteOf({ isFlat, count: points.length, isOff: out.length > 0 }),
    },
    () =>
      circleSteps(points, {
        centre: pointFrom(origin, centre),
        radius,
        residuals,
      }),
  );
}

interface ReadPoint {
  readonly id: string;
  readonly at: PlanPoint;
}

interface FoundCircle {
  readonly centre: Vector;
  readonly radius: Length;
  readonly residuals: readonly Length[];
  readonly isExact: boolean;
  readonly radiusUncertainty: Length | null;
}

function findCircle(local: readonly Vector[]): FoundCircle {
  const [a, b, c] = local;
  const isThree = local.length === 3 && a !== undefined && b !== undefined && c !== undefined;
  const circle = isThree ? circleOfThree([a, b, c]) : circleOfAll(local);
  if (circle !== undefined) return exactly(circle, local.length);
  if (local.every(isZero)) {
    throw fault('POINTS_COINCIDE', 'all points are the same point', {}, ['points']);
  }
  if (areInLine(lineSums(local))) throw inLine();
  return nearest(local);
}

const inLine = () =>
  fault('POINTS_COLLINEAR', 'the points are in line, so no circle fits them', {}, ['points']);

const exactly = ({ centre, radius }: ExactCircle, count: number): FoundCircle => ({
  centre,
  radius: fromSI('length', radius),
  residuals: Array.from({ length: count }, () => NO_LENGTH),
  isExact: true,
  radiusUncertainty: null,
});

function nearest(local: readonly Vector[]): FoundCircle {
  const flat = local.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
  const fitted = attempt(() => fitCircle(new Float64Array(flat)));
  // in floats the points are in line, even if not quite
  if (!fitted.ok) throw inLine();
  const fit = fitted.value;
  const metres = (value: number): Length => fromNumber(value, 'm');
  const [x, y] = fit.centre;
  return {
    centre: between(GRID_ORIGIN, { x: metres(x), y: metres(y) }),
    radius: metres(fit.radius),
    residuals: Array.from(fit.residuals, metres),
    isExact: false,
    radiusUncertainty: metres(fit.radiusUncertainty),
  };
}

/**
 * A full circle less the widest gap between neighbours, seen from the centre. If the arc is so flat
 * that floats see no gap: the farthest point over the radius.
 */
function turnOf(local: readonly Vector[], centre: Vector, radius: Length): Angle {
  const places = local.map(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)] as const);
  const [cx, cy] = [ratioToNumber(centre.x), ratioToNumber(centre.y)];
  const around = places.map(([x, y]) => Math.atan2(y - cy, x - cx)).sort((p, q) => p - q);
  const gaps = around.map((one, i) => (around[i + 1] ?? entry(around, 0) + 2 * Math.PI) - one);
  const far = Math.max(...places.map(([x, y]) => Math.hypot(x, y)));
  const least = far / radius.toNumber('m');
  return fromNumber(Math.max(2 * Math.PI - Math.max(...gaps), least), 'rad');
}

/** `dR / dM = 1 / 2 - C^2 / (8 M^2)` of an arc with this turn: `C / M = 2 / tan(turn / 4)`. */
function perOrdinate(turn: number): number {
  const tan = Math.tan(turn / 4);
  const change = 0.5 - 0.5 / (tan * tan);
  // an arc so flat that no float holds it is a line
  if (!Number.isFinite(change)) throw inLine();
  return change;
}

function outOf(
  points: readonly ReadPoint[],
  residuals: readonly Length[],
  tolerance: Length,
): CurveMove[] {
  return residuals.flatMap((residual, i) =>
    residual.abs().compare(tolerance) <= 0
      ? []
      : [
          {
            id: entry(points, i).id,
            distance: residual.abs(),
            direction: residual.isNegative() ? 'outward' : 'inward',
          } as const,
        ],
  );
}

function noteOf(of: {
  readonly isFlat: boolean;
  readonly count: number;
  readonly isOff: boolean;
}): string {
  if (of.isFlat) return NOTES.flat;
  if (of.count === 3) return NOTES.three;
  return of.isOff ? NOTES.off : NOTES.good;
}

const NOTES = {
  flat: 'The arc is flat, so its radius and centre are uncertain. Set it out by ordinates from a chord.',
  three: 'Three points are always on a circle. Add a fourth to check them.',
  off: 'Move the points listed.',
  good: 'The residuals show how well the points fit.',
} as const;
