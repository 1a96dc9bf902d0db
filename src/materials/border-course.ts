// A border is the outline moved inward; `outline` reads, moves and measures outlines.
import { areaOf } from '../outline/outline-area.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { ringsOf, type Outline } from '../outline/ring.js';
import { arcsOf, placesOf, type WidenedArc, type WidenedHole } from '../outline/widen-outline.js';
import { makeReader, type Reader } from '../input/reader.js';
import { sum } from '../units/aggregate.js';
import { angle, type AngleInput, type LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Length } from '../units/quantity.js';
import type { PlanPoint } from '../units/vector.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { moveIn, sidesOf, type BorderSide } from './border-geometry.js';
import { COURSES, courseSize, type Course } from './course.js';
import { JOINT, NO_LENGTH } from './limits.js';
import { edgesOf, type OutlineEdge } from './outline-edges.js';
import { readUnit, type UnitInput } from './read-unit.js';
import { wholeUp } from './whole-number.js';

/** How two sides of a border meet. */
export type BorderCorner = 'butt' | 'mitre';

/** A border course, and the field that it leaves. */
export interface BorderCourse extends Worked {
  /** Depth of the course, without a joint to the field. */
  readonly depth: Length;
  /** What one unit takes of the centre line: its size along the edge and one joint. */
  readonly pitch: Length;
  /** Along the middle of the course, over all sides. */
  readonly centreLine: Length;
  /** Units of the border. */
  readonly units: number;
  readonly corner: BorderCorner;
  readonly sides: readonly BorderSide[];
  /** Area of the course, joints included. */
  readonly area: Area;
  /** What is left inside, and the edges along which its units are cut. */
  readonly field: {
    readonly area: Area;
    /** Its points, arcs and holes, as an outline takes them. */
    readonly outline: readonly PlanPoint[];
    readonly arcs: readonly WidenedArc[];
    readonly holes: readonly WidenedHole[];
    readonly edges: readonly OutlineEdge[];
  };
}

/**
 * A border course along the edges of an outline: the outline is moved inward by half the depth to find
 * the centre line, and by the whole depth to find the field that is left.
 *
 * Corner rule. `butt`: one course runs through and the other stops against it; at right angles the
 * courses together are as long as the centre line whichever runs through, so
 * `n = ceil(centre line / pitch)`, rounded up once. `mitre`: both courses are cut along the line that
 * halves the corner and the off-cuts fit nowhere else, so each side takes whole units along its longer
 * side, `n = sum(ceil(long side / pitch))`. Corners that are not square are cut either way. Along an
 * arc the joint is that of the centre line: it opens toward the longer side (`soldierCurve`), and an
 * arc must run on smoothly into its neighbours.
 *
 * @param options.outline - edge of the paving, where the border stands; see `outlineArea`; arcs and
 *   holes may be given
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.joint - between the units of the course [length], 0 to 100 mm
 * @param options.course - `soldier`, `sailor` or `header`
 * @param options.corner - default `butt`
 * @param options.edges - for each edge whether it has a border, those of the holes after those of the
 *   outer ring; default all
 * @param options.axis - of the pattern of the field, counter-clockwise from the x axis [angle], for the
 *   angles of `field.edges`; default 0
 * @returns depth, pitch, centre line, units, the sides, the area of the course, and the field left
 * @throws `BORDER_TOO_DEEP`, `ARC_MEETS_CORNER`, `EDGE_COUNT`, `EMPTY_LIST`, the codes of
 *   `outlineArea` and the reading codes
 * @source derived
 * @example
 * const border = borderCourse({
 *   outline: { unit: 'm', points: [[0, 0], [12, 0], [12, 5], [0, 5]] },
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   course: 'soldier',
 * });
 * border.centreLine.to('m').toString() //=> '33.2'
 * border.units //=> 323
 * border.field.area.to('m2').toString() //=> '53.36'
 */
export function borderCourse(options: {
  readonly outline: OutlineInput;
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  readonly course: Course;
  readonly corner?: BorderCorner;
  readonly edges?: readonly boolean[];
  readonly axis?: AngleInput;
}): BorderCourse {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const outline = readOutline(reader, fields['outline'], ['outline']);
  const unit = readUnit(reader, fields['unit']);
  const joint = reader.quantity('length', fields['joint'], ['joint'], JOINT);
  const course = reader.choice(fields['course'], ['course'], COURSES);
  const corner = reader.choice(fields['corner'] ?? 'butt', ['corner'], CORNERS);
  const hasBorder = readEdges(reader, fields['edges'], countEdges(outline));
  const axis = reader.quantity('angle', fields['axis'] ?? ALONG_X, ['axis'], FULL_TURN);
  reader.finish();

  const { depth, along } = courseSize(course, unit);
  const pitch = along.plus(joint);
  const inner = moveIn(
    outline,
    hasBorder.map((has) => (has ? depth : NO_LENGTH)),
  );
  const middle = moveIn(
    outline,
    hasBorder.map((has) => (has ? depth.dividedBy(2) : NO_LENGTH)),
  );
  const sides = sidesOf(outline, middle, inner).filter(({ edge }) => hasBorder[edge] === true);
  const centreLine = sum(sides.map((side) => side.centreLine));
  const units = countUnits(sides, corner, pitch);
  const paving = areaOf(outline);
  const left = areaOf(inner.outline);
  const border = {
    depth,
    pitch,
    centreLine,
    units,
    corner,
    sides,
    area: paving.minus(left),
    field: { area: left, ...placesOfField(inner.outline), edges: edgesOf(inner.outline, axis) },
  };
  return withWorking(border, () => [
    ...areaSteps(paving, border),
    {
      title: 'Units of the border',
      formula: corner === 'butt' ? 'n = ceil(C / p)' : 'n = sum(ceil(s(k) / p))',
      given: [
        ...(corner === 'butt'
          ? [given('C', 'centre line', centreLine)]
          : sides.map(({ edge, longSide }) => given(`s${edge}`, `side ${edge}`, longSide))),
        given('p', 'pitch: unit and joint', pitch),
      ],
      result: given('n', 'units', units),
      source: 'derived',
    },
  ]);
}

const CORNERS = ['butt', 'mitre'] as const;
const ALONG_X = angle(0, 'deg');
const FULL_TURN = Object.freeze({ sign: 'any', most: angle(360, 'deg') } as const);

const countEdges = (outline: Outline): number =>
  ringsOf(outline).reduce((count, { points }) => count + points.length, 0);

const placesOfField = (field: Outline) => ({
  outline: placesOf(field, field),
  arcs: arcsOf(field),
  holes: field.holes.map((hole) => ({ points: placesOf(field, hole), arcs: arcsOf(hole) })),
});

function readEdges(reader: Reader, value: unknown, count: number): boolean[] {
  if (value === undefined) return Array.from({ length: count }, () => true);
  const flags = reader
    .list(value, ['edges'])
    .map((flag, index) => reader.flag(flag, ['edges', index]));
  if (flags.length > 0 && count > 0 && flags.length !== count) {
    reader.fail('EDGE_COUNT', ['edges'], `${flags.length} edges given, the outline has ${count}`, {
      edges: count,
      got: flags.length,
    });
  } else if (flags.length > 0 && !flags.includes(true)) {
    reader.fail('EMPTY_LIST', ['edges'], 'no edge has a border');
  }
  return flags;
}

function countUnits(sides: readonly BorderSide[], corner: BorderCorner, pitch: Length): number {
  const unitsIn = (run: Length) => wholeUp(exactOf(run), exactOf(pitch));
  if (corner === 'butt') return unitsIn(sum(sides.map(({ centreLine }) => centreLine)));
  return sides.reduce((count, { longSide }) => count + unitsIn(longSide), 0);
}

function areaSteps(
  paving: Area,
  {
    depth,
    centreLine,
    sides,
    field,
  }: Pick<BorderCourse, 'depth' | 'centreLine' | 'sides' | 'field'>,
): Step[] {
  return [
    {
      title: 'Centre line of the border',
      formula: 'C = length of the outline moved in by d / 2',
      given: [
        given('d', 'depth of the course', depth),
        ...sides.map((side) => given(`c${side.edge}`, `side ${side.edge}`, side.centreLine)),
      ],
      result: given('C', 'centre line', centreLine),
      source: 'derived',
    },
    {
      title: 'Field inside the border',
      formula: "A' = area of the outline moved in by d",
      given: [given('A', 'area of the paving', paving), given('d', 'depth of the course', depth)],
      result: given("A'", 'field', field.area),
      source: 'derived',
    },
  ];
}
