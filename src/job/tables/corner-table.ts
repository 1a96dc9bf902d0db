import { entry } from '../../invariant.js';
import { fault } from '../../errors.js';
import { custom, object, optional, quantity, text } from '../../input/field.js';
import { PLACE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Field } from '../../input/shape.js';
import type { DigRing } from '../plan/plan-of-site.js';
import type { JobPlan, PavementPlan } from '../plan/plan.js';
import { jobOfPlan } from '../saved/job-of-plan.js';
import { requirePlan } from '../require-plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { ringsOf, type Outline } from '../../outline/ring.js';
import { arcsOf, placesOf, widen } from '../../outline/widen-outline.js';
import type { LengthInput } from '../../units/construct.js';
import { fromSI, type Length } from '../../units/quantity.js';
import { divideRatios, signOfRatio } from '../../units/ratio.js';
import { between, cross, dot, norm, type PlanPoint } from '../../units/vector.js';
import { cornerName } from './corner-name.js';

/** A place that offsets are measured from. */
export interface OffsetPointInput {
  /** What it is called. Default: `P` and `Q`. */
  readonly name?: string;
  /** Plan coordinate [length]. */
  readonly x: LengthInput;
  /** Plan coordinate [length]. */
  readonly y: LengthInput;
}

/** Where the offsets of corners are measured from. */
export interface CornerTableOptions {
  /** Two places that can be found on the ground. Default: the first two stakes of the job. */
  readonly fixed?: readonly OffsetPointInput[];
}

/** A corner of a line that is marked on the ground. */
export interface CornerRow {
  /** Id of the pavement. */
  readonly pavement: string;
  /** Which line: edge of the paving, of the base, of the dig at the bottom, or at the top of sloped sides. */
  readonly line: 'paving' | 'base' | 'dig' | 'dig-top';
  /** Letters of the corner along its line: those of the outer ring first, then those of holes. */
  readonly corner: string;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** From the first fixed point along the line to the second; negative behind it. */
  readonly along: Length;
  /** Square to that line, + to the left as you face the second point. */
  readonly left: Length;
  /** If the edge that starts here is an arc: its height over the middle of the chord, + outward; else null. */
  readonly arc: Length | null;
}

/** The corners of all lines of a plan. */
export interface CornerTable {
  /** The two fixed points, with their names. */
  readonly fixed: readonly [OffsetPoint, OffsetPoint];
  /** The corners. */
  readonly rows: readonly CornerRow[];
}

/** A place that offsets are measured from. */
export interface OffsetPoint {
  /** What it is called: a stake by its id. */
  readonly name: string;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
}

const POINT = object(
  shapeOf<OffsetPointInput>()({
    name: optional(text()),
    x: quantity(PLACE),
    y: quantity(PLACE),
  }),
);

const TWO: Field<readonly OffsetPoint[]> = custom((reader, value, path) => {
  const list = reader.list(value, path);
  if (list.length > 0 && list.length !== 2) {
    const words = `${list.length === 1 ? '1 fixed point' : `${list.length} fixed points`}. Offsets are measured from two`;
    reader.fail(list.length < 2 ? 'TOO_FEW' : 'TOO_MANY', path, words, { got: list.length });
  }
  return list.map((point, index) => {
    const read = POINT.read(reader, point, [...path, index]);
    return { ...read, name: read.name ?? (index === 0 ? 'P' : 'Q') };
  });
});

const OPTIONS = shapeOf<CornerTableOptions>()({ fixed: optional(TWO) });

/**
 * Corners of the paving, of the base line and of the dig at bottom and top as rows: plan coordinates,
 * and offsets from two fixed points (`along = v . u`, `left = u x v`, with `u` the direction from the
 * first point to the second and `v` the way from the first point to the corner). {@link tableText}
 * writes them as text.
 *
 * @param plan - from `planJob`
 * @param options - see {@link CornerTableOptions}
 * @throws `PLAN_INVALID`, `POINTS_COINCIDE`, `TOO_FEW`, `TOO_MANY` and the reading codes
 * @source derived
 * @example
 * const { fixed, rows } = cornerTable(planJob(job));
 * fixed.map(({ name }) => name) //=> ['K1', 'K2']
 * rows[0]?.line //=> 'paving'
 * rows[0]?.corner //=> 'A'
 */
export function cornerTable(plan: JobPlan, options: CornerTableOptions = {}): CornerTable {
  requirePlan(plan);
  const { fixed: given } = readOptions(options, OPTIONS);
  const job = jobOfPlan(plan);
  const [first, second] = given ?? job.stakes.map(({ id, x, y }) => ({ name: id, x, y }));
  if (first === undefined || second === undefined) {
    throw fault('TOO_FEW', 'offsets are measured from two fixed points', {}, ['fixed']);
  }
  const offsets = offsetsFrom(first, second);
  const rows = plan.pavements.flatMap((pavement, index) =>
    linesOf(job, pavement, index).flatMap(({ line, rings }) =>
      cornersOf(rings).map(({ arc, ...corner }): CornerRow => {
        const place = { ...corner, ...offsets(corner), arc };
        return Object.freeze({ pavement: pavement.id, line, ...place });
      }),
    ),
  );
  const fixed = [Object.freeze(first), Object.freeze(second)] as const;
  return Object.freeze({ fixed, rows: Object.freeze(rows) });
}

/** Distance along the line through two points, and square to it. */
function offsetsFrom(first: PlanPoint, second: PlanPoint) {
  const way = between(first, second);
  const size = norm(way);
  if (signOfRatio(size) === 0) {
    const words = 'the two fixed points are at the same place. Give two that are well apart';
    throw fault('POINTS_COINCIDE', words, {}, ['fixed']);
  }
  return ({ x, y }: PlanPoint) => {
    const to = between(first, { x, y });
    return {
      along: fromSI('length', divideRatios(dot(way, to), size)),
      left: fromSI('length', divideRatios(cross(way, to), size)),
    };
  };
}

type Line = Pick<CornerRow, 'line'> & { readonly rings: readonly DigRing[] };

function linesOf(job: ReadJob, plan: PavementPlan, index: number): Line[] {
  const { outline } = entry(job.pavements, index);
  const widths = plan.edges.map(({ base }) => base);
  const base = widen(outline, widths, ['pavements', index, 'outline']);
  const { digOutline, digArcs, digHoles, top } = plan;
  return [
    { line: 'paving', rings: ringsIn(outline) },
    { line: 'base', rings: [{ points: base.outline, arcs: base.arcs }, ...base.holes] },
    { line: 'dig', rings: [{ points: digOutline, arcs: digArcs }, ...digHoles] },
    ...(top === null ? [] : [{ line: 'dig-top' as const, rings: [top, ...top.holes] }]),
  ];
}

const ringsIn = (outline: Outline): DigRing[] =>
  ringsOf(outline).map((ring) => ({ points: placesOf(outline, ring), arcs: arcsOf(ring) }));

function cornersOf(rings: readonly DigRing[]) {
  const corners = rings.flatMap(({ points, arcs }) =>
    points.map(({ x, y }, edge) => {
      const arc = arcs.find((one) => one.edge === edge);
      return { x, y, arc: arc?.bulgeMiddleOrdinate ?? null };
    }),
  );
  return corners.map((corner, index) => ({ corner: cornerName(index), ...corner }));
}
