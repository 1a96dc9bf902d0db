import { entry, lastOf } from '../../invariant.js';
import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/set-outs.js';
import { dimensionLine } from '../frame/dimension.js';
import { BUILDING, hatched, SLAB } from '../frame/hatches.js';
import { line, type Point } from '../svg/shapes.js';
import type { PlanLabel, PlanPart, PlanPen, Segment } from './parts.js';
import type { PlanScene, ScenePavement } from './plan-scene.js';
import { middleOf, type EdgeInMetres } from './rings-in-metres.js';

/** How deep what lies along an edge is drawn, in pixels. Internal. */
export const STRIP = 13;
const SHORTEST = 34;
const PAST = 15;
const SHORTEST_SET_OUT = 90;
const LEAST_ACROSS = 5;

interface DrawnEdge {
  readonly plan: EdgePlan;
  readonly name: string;
  readonly points: readonly Point[];
  /** The direction away from the paving in the picture, of length 1. */
  readonly outward: Point;
  readonly isArc: boolean;
  readonly isHole: boolean;
}

/** Names, lengths and set-outs along the edges of a pavement, and what lies along them. Internal. */
export function edgePart(pavement: ScenePavement, scene: PlanScene, pen: PlanPen): PlanPart {
  const edges = edgesIn(pavement, pen);
  const setOuts = pen.style.isNarrow ? [] : edges.flatMap((edge) => setOut(edge, scene, pen));
  return {
    marks: [
      ...edges.flatMap((edge) => strip(edge)),
      ...edges.flatMap((edge) => dimensionMarks(edge, pen)),
      ...setOuts.flatMap(({ marks }) => marks),
    ],
    labels: [
      ...edges.filter((edge) => isNamed(edge, pen)).map((edge) => edgeLabel(edge, pen)),
      ...edges.flatMap((edge) => stripLabel(edge, pen)),
      ...setOuts.map(({ label }) => label),
    ],
    taken: [],
    lines: edges.flatMap((edge) => edgeLines(edge, pen)),
  };
}

/** The dimension line, and the far side of a wall. */
function edgeLines(edge: DrawnEdge, pen: PlanPen): Segment[] {
  const [a, b] = ends(edge);
  const along = (off: number): Segment => [
    moved(a, edge.outward, off),
    moved(b, edge.outward, off),
  ];
  return [
    ...(hasDimension(edge, pen) ? [along(lineOff(edge, pen))] : []),
    ...(isWalled(edge) && !edge.isArc ? [along(STRIP)] : []),
  ];
}

function edgesIn({ plan, paving, edges: names }: ScenePavement, { view }: PlanPen): DrawnEdge[] {
  const all = paving.flatMap(({ edges }, ring) => edges.map((edge) => ({ edge, ring })));
  return all.flatMap(({ edge, ring }, index) => {
    const planned = plan.edges[index];
    return planned === undefined
      ? []
      : [drawn(edge, { plan: planned, name: entry(names, index), isHole: ring > 0, to: view.to })];
  });
}

const drawn = (
  { points, outward: [x, y], isArc }: EdgeInMetres,
  {
    to,
    ...rest
  }: Pick<DrawnEdge, 'plan' | 'name' | 'isHole'> & { readonly to: PlanPen['view']['to'] },
): DrawnEdge => ({ ...rest, isArc, points: points.map(to), outward: [x, -y] });

const isWalled = ({ plan: { kind } }: DrawnEdge): boolean => kind === 'building' || kind === 'slab';

const moved = ([x, y]: Point, [dx, dy]: Point, by: number): Point => [x + dx * by, y + dy * by];

/** A building or a slab along an edge. */
function strip(edge: DrawnEdge): string[] {
  const { kind } = edge.plan;
  if (kind !== 'building' && kind !== 'slab') return [];
  const far = edge.points.map((point) => moved(point, edge.outward, STRIP)).reverse();
  return [hatched('dimension', [...edge.points, ...far], kind === 'slab' ? SLAB : BUILDING)];
}

function stripLabel(edge: DrawnEdge, { style }: PlanPen): PlanLabel[] {
  const { kind } = edge.plan;
  if (kind !== 'building' && kind !== 'slab') return [];
  const at = moved(pointAlong(edge, 0.72), edge.outward, STRIP);
  const text = style.label(`along-${kind}`);
  return [
    {
      text,
      size: style.small,
      at,
      ...facing(edge),
      isTurned: isSteep(edge),
      clearance: 4,
      rings: 3,
      rank: 7,
      isSpare: true,
    },
  ];
}

/** True for an edge that runs up the picture more than across: words along it read upward. */
const isSteep = ({ outward: [x, y], isArc }: DrawnEdge): boolean =>
  !isArc && Math.abs(x) > 1.7 * Math.abs(y);

/** A direction for labels: out of the paving. */
const facing = ({ outward: [x, y] }: DrawnEdge) => ({ toward: Math.atan2(-y, x) });

/** How far the dimension line stands off the paving: clear of the dig and of walls. */
const lineOff = (edge: DrawnEdge, { view }: PlanPen): number => {
  const dug = edge.plan.top.toNumber('m') * view.pixelsPerMetre;
  return Math.max(dug, isWalled(edge) ? STRIP : 0) + PAST;
};

const hasDimension = (edge: DrawnEdge, { style }: PlanPen): boolean =>
  !style.isNarrow &&
  !edge.isArc &&
  !edge.isHole &&
  edge.plan.kind !== 'adjoining' &&
  longOf(edge) >= SHORTEST;

const ends = ({ points }: DrawnEdge): readonly [Point, Point] => [entry(points, 0), lastOf(points)];

function longOf(edge: DrawnEdge): number {
  const [[ax, ay], [bx, by]] = ends(edge);
  return Math.hypot(bx - ax, by - ay);
}

function dimensionMarks(edge: DrawnEdge, pen: PlanPen): string[] {
  if (!hasDimension(edge, pen)) return [];
  const off = lineOff(edge, pen);
  const [a, b] = ends(edge);
  const reach = (point: Point) =>
    line('dimension', moved(point, edge.outward, 3), moved(point, edge.outward, off + 5));
  return [
    reach(a),
    reach(b),
    ...dimensionLine(moved(a, edge.outward, off), moved(b, edge.outward, off)),
  ];
}

/** On a phone only the edges round the outside are named; the rows below have all. */
const isNamed = ({ plan, isHole }: DrawnEdge, { style }: PlanPen): boolean =>
  !style.isNarrow || (!isHole && plan.kind !== 'adjoining');

function edgeLabel(edge: DrawnEdge, pen: PlanPen): PlanLabel {
  const { units, label, isNarrow, small } = pen.style;
  const isInside = edge.plan.kind === 'adjoining';
  const off = hasDimension(edge, pen) ? lineOff(edge, pen) : isWalled(edge) ? STRIP : 0;
  const { toward } = facing(edge);
  const length = units.long(edge.plan.length);
  return {
    text:
      isNarrow || edge.isHole ? edge.name : label('edge-with-length', { edge: edge.name, length }),
    size: small,
    style: 'edge-name',
    at: moved(middleOf(edge.points), edge.outward, off),
    toward: isInside ? toward + Math.PI : toward,
    isTurned: !isNarrow && isSteep(edge),
    clearance: 6,
    ...(edge.isHole || isInside ? { rings: 2 } : {}),
    rank: 3,
    isSpare: true,
  };
}

/** The place at a share of the chord. */
function pointAlong(edge: DrawnEdge, share: number): Point {
  if (edge.isArc) return middleOf(edge.points);
  const [[ax, ay], [bx, by]] = ends(edge);
  return [ax + (bx - ax) * share, ay + (by - ay) * share];
}

/** The set-out of the dig, across from the paving to the edge of the dig. */
function setOut(
  edge: DrawnEdge,
  { job }: PlanScene,
  { view, style }: PlanPen,
): { readonly marks: readonly string[]; readonly label: PlanLabel }[] {
  const { dig, base } = edge.plan;
  const across = dig.toNumber('m') * view.pixelsPerMetre;
  if (across < LEAST_ACROSS || longOf(edge) < SHORTEST_SET_OUT || edge.isArc || edge.isHole) {
    return [];
  }
  const from = pointAlong(edge, 0.24);
  const to = moved(from, edge.outward, across);
  const { units, system, small, label } = style;
  const distance = `${setOutText(dig, { job, system, units })} ${units.depthUnit}`;
  const key = base.equals(dig) ? 'base-and-dig-set-out' : 'dig-set-out';
  const text = label(key, { distance });
  return [
    {
      marks: dimensionLine(from, to),
      label: {
        text,
        size: small,
        style: 'set-out',
        at: to,
        ...facing(edge),
        clearance: 5,
        rings: 2,
        rank: 8,
        isSpare: true,
      },
    },
  ];
}
