import { fault } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { fromNumber, length, type LengthInput } from '../units/construct.js';
import { fromSI, type Angle, type Length } from '../units/quantity.js';
import { ratioToNumber } from '../units/ratio.js';
import { between, isZero, pointFrom, type PlanPoint, type Vector } from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { FLAT_TURN } from './arc-from-chord.js';
import { circleOfAll, circleOfThree, type ExactCircle } from './exact-circle.js';
import { fitCircle } from '../geometry/circle/fit-circle.js';
import { areInLine, lineSums } from './line-of-stakes.js';
import { readPlace, TOLERANCE } from './read-stakes.js';

/** A point of a curved edge; its id, if it has one, comes back with its move. */
export interface CurvePointInput {
  readonly id?: string;
  readonly x: LengthInput;
  readonly y: LengthInput;
}

/** How to bring a point onto the circle. */
export interface CurveMove {
  /** The id of the point, or its number from 1. */
  readonly id: string;
  readonly distance: Length;
  /** Toward the centre or away from it. */
  readonly direction: 'inward' | 'outward';
}

/** A circle through points or as close to them as may be. */
export interface CircleThrough extends Worked {
  readonly centre: PlanPoint;
  readonly radius: Length;
  /** Distance of each point from the circle, + outside, in the order given. */
  readonly residuals: readonly Length[];
  /** True where the circle goes through every point exactly. */
  readonly exact: boolean;
  /** The arc that the points span, seen from the centre. */
  readonly turn: Angle;
  /** True where that is so little that the radius is not to be trusted. */
  readonly flat: boolean;
  /** How far the radius moves for a unit of the middle ordinate of that arc. */
  readonly radiusPerOrdinate: number;
  /** Standard uncertainty of the radius from the residuals; null where they show none. */
  readonly radiusUncertainty: Length | null;
  /** Whether every point lies within tolerance; null without one, or where there is no doubt to judge. */
  readonly ok: boolean | null;
  readonly moves: readonly CurveMove[];
  readonly note: string;
}

/**
 * The circle through three points of a curved edge, or the best one through more: geometric least
 * squares, the squared distances from the circle least. Three points give centre and radius exactly
 * (but for one root), and so do more points that lie on one circle exactly. Otherwise the fit is made
 * in floats, from coordinates counted from the first point, and holds to a nanometre or to what the
 * points can tell.
 *
 * Formula: for three points `|P - C|^2 = R^2` for each; for more `sum (|P - C| - R)^2` least.
 *
 * @param options.points - at least 3, in any order: `x` and `y` [length], `id` if wanted
 * @param options.tolerance - largest distance from the circle that passes [length], if it is to be
 *   judged
 * @returns centre and radius [length], residuals [length, + outside], turn of the arc, flags, moves
 * @throws `TOO_FEW_POINTS`, `POINTS_COINCIDE`, `POINTS_COLLINEAR` and the reading codes
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
export function circleThrough(options: {
  readonly points: readonly CurvePointInput[];
  readonly tolerance?: LengthInput;
}): CircleThrough {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const points = readPoints(reader, fields['points']);
  const tolerance =
    fields['tolerance'] === undefined
      ? undefined
      : reader.quantity('length', fields['tolerance'], ['tolerance'], TOLERANCE);
  reader.finish();
  const origin = points[0]?.at ?? ORIGIN;
  const local = points.map(({ at }) => between(origin, at));
  const found = findCircle(local);
  const { centre, radius, residuals } = found;
  const turn = turnOf(local, centre, radius);
  const flat = turn.compare(FLAT_TURN) < 0;
  const out = tolerance === undefined ? [] : outOf(points, residuals, tolerance);
  const isJudged = tolerance !== undefined && points.length > 3;
  return withWorking(
    {
      centre: pointFrom(origin, centre),
      radius,
      residuals,
      exact: found.exact,
      turn,
      flat,
      radiusPerOrdinate: perOrdinate(turn.toNumber('rad')),
      radiusUncertainty: found.radiusUncertainty,
      ok: isJudged ? out.length === 0 : null,
      moves: out,
      note: noteOf({ flat, count: points.length, isOff: out.length > 0 }),
    },
    () => [
      {
        title: `Circle ${points.length === 3 ? 'through' : 'nearest to'} ${points.length} points`,
        formula: points.length === 3 ? '|P - C| = R' : 'sum (|P - C| - R)^2 least',
        given: residuals.map((one, i) =>
          given(`d${i + 1}`, `point ${points[i]?.id ?? ''} off the circle`, one),
        ),
        result: given('R', 'radius', radius),
        source: 'derived',
      },
    ],
  );
}

const ORIGIN: PlanPoint = Object.freeze({ x: length(0, 'm'), y: length(0, 'm') });

interface ReadPoint {
  readonly id: string;
  readonly at: PlanPoint;
}

function readPoints(reader: Reader, value: unknown): ReadPoint[] {
  const points = reader.list(value, ['points']).map((item, index) => {
    const path = ['points', index];
    const fields = reader.object(item, path);
    const id = fields['id'] === undefined ? undefined : reader.text(fields['id'], [...path, 'id']);
    return { id: id ?? `${index + 1}`, at: readPlace(reader, fields, path) };
  });
  if (points.length > 0 && points.length < 3) {
    reader.fail('TOO_FEW_POINTS', ['points'], 'a circle needs three points or more');
  }
  return points;
}

interface FoundCircle {
  readonly centre: Vector;
  readonly radius: Length;
  readonly residuals: readonly Length[];
  readonly exact: boolean;
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
  if (areInLine(lineSums(local))) {
    const message = 'the points lie in line: no circle goes through them';
    throw fault('POINTS_COLLINEAR', message, {}, ['points']);
  }
  return nearest(local);
}

const exactly = ({ centre, radius }: ExactCircle, count: number): FoundCircle => ({
  centre,
  radius: fromSI('length', radius),
  residuals: Array.from({ length: count }, () => length(0, 'm')),
  exact: true,
  radiusUncertainty: null,
});

function nearest(local: readonly Vector[]): FoundCircle {
  const flat = local.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
  const fit = fitCircle(new Float64Array(flat));
  const metres = (value: number): Length => fromNumber(value, 'm');
  const [x, y] = fit.centre;
  return {
    centre: between(ORIGIN, { x: metres(x), y: metres(y) }),
    radius: metres(fit.radius),
    residuals: Array.from(fit.residuals, metres),
    exact: false,
    radiusUncertainty: metres(fit.radiusUncertainty),
  };
}

/**
 * A full circle less the widest gap between neighbours, seen from the centre; on an arc so flat that
 * floats see no gap, the furthest point over the radius.
 */
function turnOf(local: readonly Vector[], centre: Vector, radius: Length): Angle {
  const places = local.map(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)] as const);
  const [cx, cy] = [ratioToNumber(centre.x), ratioToNumber(centre.y)];
  const around = places.map(([x, y]) => Math.atan2(y - cy, x - cx)).sort((p, q) => p - q);
  const gaps = around.map((one, i) => (around[i + 1] ?? (around[0] ?? one) + 2 * Math.PI) - one);
  const far = Math.max(...places.map(([x, y]) => Math.hypot(x, y)));
  const least = far / radius.toNumber('m');
  return fromNumber(Math.max(2 * Math.PI - Math.max(...gaps), least), 'rad');
}

/** `dR / dM = 1 / 2 - C^2 / (8 M^2)` of an arc that turns so far: `C / M = 2 / tan(turn / 4)`. */
function perOrdinate(turn: number): number {
  const tan = Math.tan(turn / 4);
  return 0.5 - 0.5 / (tan * tan);
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
            id: points[i]?.id ?? '',
            distance: residual.abs(),
            direction: residual.isNegative() ? 'outward' : 'inward',
          } as const,
        ],
  );
}

function noteOf(of: {
  readonly flat: boolean;
  readonly count: number;
  readonly isOff: boolean;
}): string {
  if (of.flat) {
    return 'A flat arc: its radius and centre are uncertain. Set it out by ordinates from a chord.';
  }
  if (of.count === 3) return 'Three points always lie on a circle: add a fourth to check them.';
  return of.isOff ? 'Move the points listed.' : 'The residuals show how well the points fit.';
}
