import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/set-outs.js';
import { along } from '../frame/box.js';
import { dimensionLine } from '../frame/dimension.js';
import { BUILDING, hatched, SLAB } from '../frame/hatches.js';
import { line, type Point } from '../svg/shapes.js';
import { joined, type PlanLabel, type PlanPart, type PlanPen, type Segment } from './parts.js';
import type { PlanScene, ScenePavement } from './plan-scene.js';
import { middleOf, type EdgeInMetres } from './rings-in-metres.js';

/** How deep what lies along an edge is drawn, in pixels. */
const STRIP = 13;
const SHORTEST = 34;
const PAST = 15;
const SHORTEST_SET_OUT = 90;
const LEAST_ACROSS = 5;

/** An edge as it lies in the picture. */
interface DrawnEdge {
  readonly plan: EdgePlan;
  readonly name: string;
  readonly isArc: boolean;
  readonly isHole: boolean;
  readonly points: readonly Point[];
  readonly ends: Segment;
  readonly long: number;
  /** What stands along it. */
  readonly wall: 'building' | 'slab' | null;
  /** Out of the paving from a point. */
  readonly out: (from: Point, by: number) => Point;
  /** The place at a share of the chord. */
  readonly at: (share: number) => Point;
  /** Labels stand out of the paving, and read upward along an edge that runs up more than across. */
  readonly facing: Pick<PlanLabel, 'toward' | 'isTurned' | 'isSpare'> & { readonly toward: number };
  /** How far off its dimension line is, clear of the dig and of walls; null where it has none. */
  readonly off: number | null;
}

/** Names, lengths and set-outs along the edges of a pavement, and what lies along them. Internal. */
export function edgePart(pavement: ScenePavement, scene: PlanScene, pen: PlanPen): PlanPart {
  const all = pavement.paving.flatMap(({ edges }, ring) =>
    edges.map((edge) => ({ edge, isHole: ring > 0 })),
  );
  return joined(
    all.flatMap(({ edge, isHole }, index) => {
      const plan = pavement.plan.edges[index];
      if (plan === undefined) return [];
      const one = drawn(edge, { plan, name: pavement.edges[index] ?? '', isHole, pen });
      return [
        stripPart(one, pen),
        dimensionPart(one),
        namePart(one, scene, pen),
        setOutPart(one, scene, pen),
      ];
    }),
  );
}

function drawn(
  { points: places, outward: [x, y], isArc }: EdgeInMetres,
  { pen, ...given }: Pick<DrawnEdge, 'plan' | 'name' | 'isHole'> & { readonly pen: PlanPen },
): DrawnEdge {
  const { view, style } = pen;
  const { kind, top } = given.plan;
  const points = places.map(view.to);
  const [a = NOWHERE, b = a] = [points[0], points.at(-1)];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const wall = kind === 'building' || kind === 'slab' ? kind : null;
  const hasNoLine =
    style.isNarrow || isArc || given.isHole || kind === 'adjoining' || long < SHORTEST;
  const dug = Math.max(top.toNumber('m') * view.pixelsPerMetre, wall === null ? 0 : STRIP);
  return {
    ...given,
    ...{ isArc, points, long, wall },
    ends: [a, b],
    out: (from, by) => [from[0] + x * by, from[1] - y * by],
    at: (share) => (isArc ? middleOf(points) : along(a, b, share)),
    facing: {
      toward: Math.atan2(y, x),
      isTurned: !isArc && Math.abs(x) > 1.7 * Math.abs(y),
      isSpare: true,
    },
    off: hasNoLine ? null : dug + PAST,
  };
}

const NOWHERE: Point = [0, 0];

/** A line along an edge, so far out of the paving. */
const beside = ({ ends: [a, b], out }: DrawnEdge, by: number): Segment => [out(a, by), out(b, by)];

/** A building or a slab along an edge. */
function stripPart(edge: DrawnEdge, { style: { label, small: size } }: PlanPen): PlanPart {
  const { wall, points, out, facing } = edge;
  if (wall === null) return {};
  const far = points.map((point) => out(point, STRIP)).reverse();
  const at = out(edge.at(0.72), STRIP);
  const text = label(`along-${wall}`);
  return {
    marks: [hatched('dimension', [...points, ...far], wall === 'slab' ? SLAB : BUILDING)],
    labels: [{ text, size, at, ...facing, clearance: 4, rings: 3, rank: 7 }],
    lines: edge.isArc ? [] : [beside(edge, STRIP)],
  };
}

function dimensionPart(edge: DrawnEdge): PlanPart {
  const { ends, out, off } = edge;
  if (off === null) return {};
  const own = beside(edge, off);
  const reach = (from: Point) => line('dimension', out(from, 3), out(from, off + 5));
  return { marks: [...ends.map(reach), ...dimensionLine(...own)], lines: [own] };
}

/**
 * The name of an edge, with its length where there is room. On a phone the only pavement has them, round
 * its outside; the rows below have all.
 */
function namePart(edge: DrawnEdge, scene: PlanScene, { style }: PlanPen): PlanPart {
  const { plan, name, isHole, facing, wall } = edge;
  const { isNarrow, small: size, label, units } = style;
  const isInside = plan.kind === 'adjoining';
  if (isNarrow && (isHole || isInside || scene.pavements.length > 1)) return {};
  const length = units.long(plan.length);
  const off = edge.off ?? (wall === null ? 0 : STRIP);
  return {
    labels: [
      {
        ...facing,
        ...(isInside ? { toward: facing.toward + Math.PI } : {}),
        ...(isNarrow ? { isTurned: false } : {}),
        ...(isHole || isInside ? { rings: 2 } : {}),
        text: isNarrow || isHole ? name : label('edge-with-length', { edge: name, length }),
        size,
        style: 'edge-name',
        at: edge.out(middleOf(edge.points), off),
        rank: 3,
      },
    ],
  };
}

/** The set-out of the dig, across from the paving to the edge of the dig. */
function setOutPart(edge: DrawnEdge, { job }: PlanScene, { view, style }: PlanPen): PlanPart {
  const { units, system, small: size, label, isNarrow } = style;
  const { dig, base } = edge.plan;
  const across = dig.toNumber('m') * view.pixelsPerMetre;
  const isShort = across < LEAST_ACROSS || edge.long < SHORTEST_SET_OUT;
  if (isNarrow || isShort || edge.isArc || edge.isHole) return {};
  const from = edge.at(0.24);
  const at = edge.out(from, across);
  const distance = `${setOutText(dig, { job, system, units })} ${units.depthUnit}`;
  const text = label(base.equals(dig) ? 'base-and-dig-set-out' : 'dig-set-out', { distance });
  return {
    marks: dimensionLine(from, at),
    labels: [
      {
        ...edge.facing,
        isTurned: false,
        text,
        size,
        style: 'set-out',
        at,
        clearance: 5,
        rings: 2,
        rank: 8,
      },
    ],
  };
}
