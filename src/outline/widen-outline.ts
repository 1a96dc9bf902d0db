import { fault, SettlineError, type FieldPath, type Issue } from '../errors.js';
import { makeReader, type Reader } from '../input.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Length } from '../units/quantity.js';
import {
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import {
  cross,
  dot,
  isZero,
  minus,
  norm,
  opposite,
  plus,
  pointFrom,
  scaled,
  share,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { crossingEdges } from './crossing-edges.js';
import { areaOfDouble, doubleArea } from './outline-area.js';
import { readOutline, type Outline, type OutlineInput } from './read-outline.js';

/** An outline that has been moved out, and what it encloses. */
export interface WidenedOutline extends Worked {
  readonly outline: readonly PlanPoint[];
  readonly area: Area;
}

/**
 * Moves the edges of an outline outward, each by its own distance, corners mitred: every edge is
 * shifted square to itself and neighbours are cut where they meet. For one distance d all round,
 * `A' = A + P d + d^2 sum(tan(turn / 2))`. Where two edges in one line move by different distances a
 * step is put in between.
 *
 * @param options.outline - see {@link outlineArea}
 * @param options.by - distance for every edge [length], not negative; or
 * @param options.perEdge - a distance for each edge [length]; edge k runs from point k to the next
 * @returns the moved points and the area they enclose
 * @throws `EDGE_COUNT`, `EDGE_VANISHES` (a short edge in a notch is swallowed), `SELF_INTERSECTION`,
 *   `NEGATIVE` and the codes of {@link outlineArea}
 * @source derived
 * @example
 * const triangle = { unit: 'm', points: [[0, 0], [3, 0], [0, 4]] } as const;
 * widenOutline({ outline: triangle, by: '1 m' }).area.to('m2').toString() //=> '24'
 */
export function widenOutline(options: {
  readonly outline: OutlineInput;
  readonly by?: LengthInput;
  readonly perEdge?: readonly LengthInput[];
}): WidenedOutline {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const outline = readOutline(reader, fields['outline'], ['outline']);
  const distances = readDistances(reader, fields, outline.points.length);
  reader.finish();
  return widen(outline, distances, ['outline']);
}

const DISTANCE = Object.freeze({ sign: 'not-negative', most: length(100, 'm') } as const);

function readDistances(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  count: number,
): Length[] {
  if (fields['perEdge'] === undefined) {
    const by = reader.quantity('length', fields['by'], ['by'], DISTANCE);
    return Array.from({ length: count }, () => by);
  }
  const list = reader.list(fields['perEdge'], ['perEdge']);
  if (list.length !== count) {
    reader.fail('EDGE_COUNT', ['perEdge'], `${list.length} distances for ${count} edges`, {
      edges: count,
      got: list.length,
    });
  }
  return list.map((value, index) => reader.quantity('length', value, ['perEdge', index], DISTANCE));
}

/** Widens an outline that has been read. Internal. */
export function widen(
  outline: Outline,
  distances: readonly Length[],
  path: FieldPath,
): WidenedOutline {
  const { origin, points } = outline;
  const twice = doubleArea(points);
  const edges = shiftEdges(points, distances, signOfRatio(twice) < 0);
  const corners = edges.map((edge, index) => corner(edges.at(index - 1) ?? edge, edge));
  const ring = corners.flat();
  refuseSwallowedEdges(edges, corners, path);
  refuseCrossing(ring, path);
  const area = areaOfDouble(doubleArea(ring));
  const fields = {
    outline: ring.map((point) => pointFrom(origin, point)),
    area,
  };
  return withWorking(fields, () => [
    {
      title: 'Area of the widened outline',
      formula: "A' = area of the outline whose edges are moved out by d(k)",
      given: [
        given('A', 'area before', areaOfDouble(twice)),
        ...distances.map((distance, index) => given(`d${index}`, `edge ${index} out by`, distance)),
      ],
      result: given("A'", 'area after', area),
      source: 'derived',
    },
  ]);
}

interface ShiftedEdge {
  /** The corner the edge starts from, before it is moved. */
  readonly from: Vector;
  readonly along: Vector;
  /** Square to the edge, outward, as long as the edge. */
  readonly outward: Vector;
  readonly size: Ratio;
  readonly distance: Ratio;
}

function shiftEdges(
  points: readonly Vector[],
  distances: readonly Length[],
  isClockwise: boolean,
): ShiftedEdge[] {
  return points.map((from, index) => {
    const along = minus(points[(index + 1) % points.length] ?? from, from);
    const right = { x: along.y, y: negateRatio(along.x) };
    const distance = distances[index];
    return {
      from,
      along,
      outward: isClockwise ? opposite(right) : right,
      size: norm(along),
      distance: distance === undefined ? ZERO_RATIO : exactOf(distance),
    };
  });
}

/**
 * The corner between two moved edges: where they meet, or a step if they run in one line. The corner
 * moves by the vector m with `m . outward(k) = distance(k) x size(k)` for both edges; each coordinate
 * is one division, so that right angles come out exact.
 */
function corner(before: ShiftedEdge, after: ShiftedEdge): Vector[] {
  const { outward: n1 } = before;
  const { outward: n2, from } = after;
  const turn = cross(n1, n2);
  if (signOfRatio(turn) === 0) {
    const [a, b] = [moved(from, before), moved(from, after)];
    return isZero(minus(a, b)) ? [b] : [a, b];
  }
  const k1 = multiplyRatios(before.distance, before.size);
  const k2 = multiplyRatios(after.distance, after.size);
  // (k1 n2 - k2 n1) turned by a right angle, over the turn
  const along = minus(scaled(n2, k1), scaled(n1, k2));
  const shift = { x: divideRatios(along.y, turn), y: divideRatios(negateRatio(along.x), turn) };
  return [plus(from, shift)];
}

const moved = (point: Vector, { outward, distance, size }: ShiftedEdge): Vector =>
  plus(point, share(outward, distance, size));

/** An edge that runs backward once moved has been swallowed by its neighbours. */
function refuseSwallowedEdges(
  edges: readonly ShiftedEdge[],
  corners: readonly (readonly Vector[])[],
  path: FieldPath,
): void {
  const issues = edges.flatMap(({ along }, index): Issue[] => {
    const start = corners[index]?.at(-1);
    const end = corners[(index + 1) % corners.length]?.[0];
    if (start === undefined || end === undefined) return [];
    if (signOfRatio(dot(minus(end, start), along)) > 0) return [];
    const message = `edge ${index} vanishes when the outline is widened: draw the dig round it by hand`;
    return [{ path, code: 'EDGE_VANISHES', message, params: { edge: index } }];
  });
  const [first, ...rest] = issues;
  if (first !== undefined) throw new SettlineError([first, ...rest]);
}

function refuseCrossing(points: readonly Vector[], path: FieldPath): void {
  const crossing = crossingEdges(points);
  if (crossing === undefined) return;
  throw fault(
    'SELF_INTERSECTION',
    'the widened outline runs into itself: draw the dig by hand',
    { first: crossing[0], second: crossing[1] },
    path,
  );
}
