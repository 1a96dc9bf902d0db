import type { FieldPath } from '../errors.js';
import { boundsOf, type Box } from '../geometry/bounds.js';
import type { Reader } from '../input/reader.js';
import { entry } from '../invariant.js';
import { roughNumber, signOfRatio } from '../units/ratio.js';
import { cross, isZero, minus, type Vector } from '../units/vector.js';
import { chordsOf, isOutwardRight } from './chords.js';
import { contains } from './contains.js';
import { crossedCorner } from './crossed-corner.js';
import { crossingEdges } from './crossing-edges.js';
import { doubleArea } from './double-area.js';
import { forEachEdge, ringsOf, type Outline, type Ring } from './ring.js';
import type { Crossing } from '../geometry/ring/sweep-for-crossing.js';

/** Where the rings of an outline are, and how messages count their parts. Internal. */
export interface OutlinePlace {
  /** The fields of the rings, the outer one first. */
  readonly paths: readonly FieldPath[];
  /** The number of the first edge, point and hole. */
  readonly first: 0 | 1;
}

/** Checks the shape of an outline. Internal. */
export function checkOutline(reader: Reader, outline: Outline, place: OutlinePlace): void {
  const rings = ringsOf(outline);
  const pathOf = (ring: number): FieldPath => entry(place.paths, ring);
  const isSound = rings.map((ring, index) =>
    checkRing(reader, ring, { path: pathOf(index), from: place.first }),
  );
  if (!isSound.every(Boolean)) return;
  const corners = rings.map((ring, index) => crossedCorner(ring, index > 0));
  const crossed = corners.findIndex((corner) => corner >= 0);
  if (crossed >= 0) {
    const second = entry(corners, crossed);
    const first = (second === 0 ? entry(rings, crossed).points.length : second) - 1;
    failEdges(reader, { first, second, ring: crossed, otherRing: crossed }, place);
    return;
  }
  const chords = rings.map((ring, index) => chordsOf(ring, index > 0));
  const crossing = crossingEdges(chords.map(({ points }) => points));
  if (crossing !== undefined) {
    failCrossing(reader, crossing, chords, place);
    return;
  }
  const isEnclosing = rings.map((ring, index) =>
    checkArea(
      reader,
      { ring, isHole: index > 0, chords: entry(chords, index).points },
      pathOf(index),
    ),
  );
  if (!isEnclosing.every(Boolean)) return;
  checkHoles(
    reader,
    chords.map(({ points }) => points),
    place,
  );
}

/** True for a ring with enough points, no two the same. */
function checkRing(
  reader: Reader,
  { points, bulges }: Ring,
  { path, from }: { readonly path: FieldPath; readonly from: 0 | 1 },
): boolean {
  const least = bulges === undefined ? 3 : 2;
  if (points.length < least) {
    const words = bulges === undefined ? 'three points' : 'two points joined by arcs';
    const message = `an outline needs ${words} or more, got ${points.length}`;
    reader.fail('TOO_FEW', path, message);
    return false;
  }
  let same = -1;
  forEachEdge(points, (a, b, edge) => {
    if (same < 0 && isZero(minus(b, a))) same = edge;
  });
  if (same >= 0) {
    const [first, second] = [same + from, ((same + 1) % points.length) + from];
    const words = `points ${first} and ${second} are the same point (the first point is point ${from}). Remove one of them`;
    reader.fail('POINTS_COINCIDE', path, words, { first, second });
    return false;
  }
  if (bulges === undefined && areInLine(points)) {
    reader.fail(
      'ZERO_AREA',
      path,
      'all points are on one line, so the outline has no area. Check the points',
    );
    return false;
  }
  return true;
}

/** True if every point is on the line of the first two. */
function areInLine(points: readonly Vector[]): boolean {
  const [first, second] = [entry(points, 0), entry(points, 1)];
  const along = minus(second, first);
  return points.every((point) => signOfRatio(cross(along, minus(point, first))) === 0);
}

function failCrossing(
  reader: Reader,
  { first, second, ring, otherRing }: Crossing,
  chords: readonly { readonly edgeOf: readonly number[] }[],
  place: OutlinePlace,
): void {
  const edge = (of: number, index: number) => entry(entry(chords, of).edgeOf, index);
  const named = { first: edge(ring, first), second: edge(otherRing, second), ring, otherRing };
  failEdges(reader, named, place);
}

function failEdges(
  reader: Reader,
  { first, second, ring, otherRing }: Crossing,
  { paths, first: from }: OutlinePlace,
): void {
  const params = { first: first + from, second: second + from };
  const names =
    ring === otherRing
      ? `edge ${params.first} and edge ${params.second}`
      : `edge ${params.first} of ${ringName(ring, from)} and edge ${params.second} of ${ringName(otherRing, from)}`;
  const rings = { ring: ring - 1 + from, otherRing: otherRing - 1 + from };
  reader.fail(
    'SELF_INTERSECTION',
    entry(paths, ring),
    `${names} cross or touch. List the points in order around the outline. Edge ${from} runs from the first point to the second`,
    ring === otherRing ? params : { ...params, ...rings },
  );
}

const ringName = (ring: number, from: 0 | 1): string =>
  ring === 0 ? 'the outline' : holeName(ring - 1, from);

const holeName = (hole: number, from: 0 | 1): string => `hole ${hole + from}`;

/** Arcs that bulge the wrong way can leave no area, or a negative one. */
function checkArea(
  reader: Reader,
  { ring, isHole, chords }: { ring: Ring; isHole: boolean; chords: readonly Vector[] },
  path: FieldPath,
): boolean {
  const isClockwise = isOutwardRight(ring, isHole) === isHole;
  if (signOfRatio(doubleArea(chords)) === (isClockwise ? -1 : 1)) return true;
  const hint =
    ring.bulges === undefined ? '' : ', and the sign of each arc: + bulges outward from the paving';
  reader.fail('ZERO_AREA', path, `the outline has no area. Check the points${hint}`);
  return false;
}

/** No edges cross, so one point of a hole shows where all of it is. */
function checkHoles(
  reader: Reader,
  rings: readonly (readonly Vector[])[],
  { paths, first: from }: OutlinePlace,
): void {
  const boxes = rings.map(boxOf);
  rings.forEach((hole, index) => {
    const [point] = hole;
    const outer = rings[0];
    if (index === 0 || point === undefined || outer === undefined) return;
    if (!contains(outer, point)) {
      const words = `${holeName(index - 1, from)} is outside the outline (the first hole is hole ${from}). Check its points`;
      reader.fail('HOLE_OUTSIDE', entry(paths, index), words, { hole: index - 1 + from });
      return;
    }
    const [x, y] = [roughNumber(point.x), roughNumber(point.y)];
    const round = rings.findIndex((ring, other) => {
      if (other === 0 || other === index) return false;
      const { west, south, east, north } = entry(boxes, other);
      const isNear = west <= x && x <= east && south <= y && y <= north;
      return isNear && contains(ring, point);
    });
    if (round < 0) return;
    const [inner, outerHole] = [holeName(index - 1, from), holeName(round - 1, from)];
    const words = `${inner} is inside ${outerHole} (the first hole is hole ${from}). Remove one of them`;
    const params = { hole: index - 1 + from, round: round - 1 + from };
    reader.fail('HOLE_OUTSIDE', entry(paths, index), words, params);
  });
}

/** A bounding box, slightly too wide, so that rounding leaves nothing out. */
function boxOf(ring: readonly Vector[]): Box {
  const places = Float64Array.from(ring.flatMap(({ x, y }) => [roughNumber(x), roughNumber(y)]));
  const { west, south, east, north } = boundsOf([places]);
  const room = 1e-6 * (east - west + north - south);
  return { west: west - room, south: south - room, east: east + room, north: north + room };
}
