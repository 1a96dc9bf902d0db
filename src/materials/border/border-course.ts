// A border is the outline moved inward; `outline` reads, moves and measures outlines.
import { areaOf } from '../../outline/outline-area.js';
import { readOutline, type OutlineInput } from '../../outline/read-outline.js';
import { edgeCount, type Outline } from '../../outline/ring.js';
import {
  arcsOf,
  holesOf,
  placesOf,
  type WidenedArc,
  type WidenedHole,
} from '../../outline/widen-outline.js';
import { choice, custom, flag, list, optional, quantity } from '../../input/field.js';
import { AZIMUTH, JOINT } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { sum } from '../../units/aggregate.js';
import type { AngleInput, LengthInput } from '../../units/construct.js';
import type { Area, Length } from '../../units/quantity.js';
import type { PlanPoint } from '../../units/vector.js';
import { NO_ANGLE, NO_LENGTH } from '../../units/zero.js';
import {
  derivedStep,
  given,
  procedureStep,
  type Step,
  withWorking,
  type Worked,
} from '../../working.js';
import { edgesOf, type OutlineEdge } from '../pavers/outline-edges.js';
import { unit, type UnitInput } from '../pavers/unit.js';
import { countOf } from '../whole-number.js';
import { moveIn, sidesOf, type BorderSide } from './border-geometry.js';
import { runsOf, type BorderRun } from './border-runs.js';
import { COURSES, courseSize, type Course } from './course.js';

/** Corners of a border. */
export type BorderCorner = 'butt' | 'mitre';

/** A paving, and the course along its edges. */
export interface BorderCourseOptions {
  /** Edge of the paving, which is the outer edge of the border; see `outlineArea`. */
  readonly outline: OutlineInput;
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Joint between the pavers of the course [length], 0 to 100 mm. */
  readonly joint: LengthInput;
  /** Direction of the pavers to the edge. */
  readonly course: Course;
  /** Corner of two sides. Default: `butt`. */
  readonly corner?: BorderCorner;
  /** True for each edge with a border, edges of holes last. Default: every edge has one. */
  readonly edges?: readonly boolean[];
  /**
   * Axis of the pattern in the field, for the angles of `field.edges`, counter-clockwise from the x
   * axis [angle], up to ten turns either way. Default: 0.
   */
  readonly axis?: AngleInput;
}

const OPTIONS = shapeOf<BorderCourseOptions>()({
  outline: custom(readOutline),
  unit,
  joint: quantity(JOINT),
  course: choice(COURSES),
  corner: optional(choice(['butt', 'mitre']), 'butt'),
  edges: optional(list(flag, { of: 'edges', most: 20_000 })),
  axis: optional(quantity(AZIMUTH), NO_ANGLE),
});

/** The field inside a border. */
export interface BorderField {
  /** Area of the field. */
  readonly area: Area;
  /** Its points, as an outline takes them. */
  readonly outline: readonly PlanPoint[];
  /** Its edges that are arcs. */
  readonly arcs: readonly WidenedArc[];
  /** Its holes. */
  readonly holes: readonly WidenedHole[];
  /** The edges along which its pavers are cut. */
  readonly edges: readonly OutlineEdge[];
}

/** A border course, and the field inside it. */
export interface BorderCourse extends Worked {
  /** Depth of the course, without a joint to the field. */
  readonly depth: Length;
  /** Length of the centre line per paver: its size along the edge and one joint. */
  readonly pitch: Length;
  /** Length along the middle of the course, all sides. */
  readonly centreLine: Length;
  /** Pavers of the border: those of its runs together. */
  readonly units: number;
  /** Corner of two sides. */
  readonly corner: BorderCorner;
  /** Each edge that has a border. */
  readonly sides: readonly BorderSide[];
  /** Stretches from corner to corner, each with its whole pavers. */
  readonly runs: readonly BorderRun[];
  /** Area of the course, joints included. */
  readonly area: Area;
  /** The field inside the border. */
  readonly field: BorderField;
}

/**
 *
 * A border course along the edges of an outline: the outline is moved inward by half the depth to find
 * the centre line, and by the whole depth to find the field inside.
 *
 * Pavers are counted by runs and rounded up for each: a run is a straight side, an arc, or sides and arcs
 * that go on into each other (to 0.3 degrees), from corner to corner. What is cut off at one corner is
 * not laid at the next.
 *
 * Corner rule. `butt`: each course runs through at one end and stops against its neighbour at the other,
 * so at right angles it is as long as its centre line, `n = sum(ceil(centre line / pitch))`. `mitre`:
 * both courses are cut along the line that halves the corner, so each run takes whole pavers along its
 * longer side, `n = sum(ceil(long side / pitch))`. Corners that are not square are cut either way. Along
 * an arc the joint is that of the centre line: it opens toward the longer side (`soldierCurve`), and an
 * arc must run on smoothly into its neighbours.
 *
 * @param options - see {@link BorderCourseOptions}
 * @returns depth, pitch, centre line, pavers, the sides and runs, the area of the course, and the field inside
 * @throws `BORDER_TOO_DEEP`, `ARC_MEETS_CORNER`, `COUNT_MISMATCH`, `TOO_FEW` where no edge has a border,
 *   `EMPTY_LIST`, `UNKNOWN_CHOICE`, the codes of `outlineArea` and the reading codes
 * @source derived
 * @example
 * const border = borderCourse({
 *   outline: { unit: 'm', points: [[0, 0], [12, 0], [12, 5], [0, 5]] },
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   course: 'soldier',
 * });
 * border.centreLine.to('m').toString() //=> '33.2'
 * border.runs.map(({ units }) => units) //=> [115, 47, 115, 47]
 * border.units //=> 324
 * border.field.area.to('m2').toString() //=> '53.36'
 */
export function borderCourse(options: BorderCourseOptions): BorderCourse {
  return borderFrom(0, options);
}

/** The same, with the edges in faults and working counted from a given number. Internal. */
export function borderFrom(first: 0 | 1, options: BorderCourseOptions): BorderCourse {
  const { outline, corner, joint, axis, ...read } = readOptions(options, OPTIONS, checkEdges);
  const { depth, along } = courseSize(read.course, read.unit);
  const pitch = along.plus(joint);
  const hasBorder = read.edges ?? Array.from({ length: edgeCount(outline) }, () => true);
  const movedIn = (by: Length) =>
    moveIn(
      outline,
      hasBorder.map((has) => (has ? by : NO_LENGTH)),
      first,
    );
  const [inner, middle] = [movedIn(depth), movedIn(depth.dividedBy(2))];
  const sides = sidesOf(outline, middle, inner).filter(({ edge }) => hasBorder[edge] === true);
  const lengthOf = (side: BorderSide) => (corner === 'butt' ? side.centreLine : side.longSide);
  const runs = runsOf(outline, { sides, moved: middle }, { pitch, lengthOf });
  const paving = areaOf(outline);
  const field = fieldOf(inner.outline, edgesOf(inner.outline, axis));
  const border = {
    depth,
    pitch,
    centreLine: sum(sides.map((side) => side.centreLine)),
    units: countOf(runs.reduce((count, { units }) => count + units, 0)),
    corner,
    sides,
    runs,
    area: paving.minus(field.area),
    field,
  };
  return withWorking(border, () => stepsOf(border, paving, first));
}

const checkEdges: Check<typeof OPTIONS> = (reader, { outline, edges }, path) => {
  if (outline === undefined || edges === undefined) return;
  const [count, got] = [edgeCount(outline), edges.length];
  if (got !== count) {
    const message = `${got} ${got === 1 ? 'edge' : 'edges'} given, ${count} needed. Write true or false for each edge of the outline`;
    reader.fail('COUNT_MISMATCH', [...path, 'edges'], message, { edges: count, got });
  } else if (!edges.includes(true)) {
    reader.fail('TOO_FEW', [...path, 'edges'], 'no edge has a border. Write true for at least one');
  }
};

const fieldOf = (field: Outline, edges: readonly OutlineEdge[]): BorderField => ({
  area: areaOf(field),
  outline: placesOf(field, field),
  arcs: arcsOf(field),
  holes: holesOf(field),
  edges,
});

function stepsOf(
  { depth, pitch, centreLine, units, sides, runs, field }: Omit<BorderCourse, 'working'>,
  paving: Area,
  first: 0 | 1,
): Step[] {
  const named = (parts: readonly (readonly number[])[]) =>
    `side ${parts.map((edges) => edges.map((edge) => edge + first).join(' and ')).join(', ')} (counted from ${first})`;
  return [
    derivedStep({
      title: 'Centre line of the border',
      formula: 'C = sum(c)',
      given: [
        given(
          'c',
          `centre line of ${named(sides.map(({ edge }) => [edge]))}, half the depth of the course in`,
          sides.map((side) => side.centreLine),
        ),
      ],
      result: given('C', 'centre line', centreLine),
    }),
    procedureStep({
      title: 'Field inside the border',
      procedure: 'borderCourse',
      method:
        'Moves each edge of the outline that has a border in by the depth of the course, and returns the area that is left.',
      given: [given('A', 'area of the paving', paving), given('d', 'depth of the course', depth)],
      result: given('Af', 'field', field.area),
      source: 'derived',
    }),
    derivedStep({
      title: 'Pavers of the border',
      formula: 'n = sum(ceil(r[i] / p))',
      given: [
        given(
          'r',
          `run of ${named(runs.map(({ edges }) => edges))}`,
          runs.map(({ length }) => length),
        ),
        given('p', 'pitch: paver and joint', pitch),
      ],
      result: given('n', 'pavers', units),
    }),
  ];
}
