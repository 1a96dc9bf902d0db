import { entry } from '../../invariant.js';
import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/sections/set-outs.js';
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

/** What an edge is drawn from. */
interface EdgeBasis {
  readonly plan: EdgePlan;
  readonly name: string;
  readonly isHole: boolean;
  readonly scene: PlanScene;
  readonly pen: PlanPen;
}

/** Names, lengths and set-outs along the edges of a pavement, and what lies along them. Internal. */
export function edgePart(pavement: ScenePavement, scene: PlanScene, pen: PlanPen): PlanPart {
  const all = pavement.paving.flatMap(({ edges }, ring) =>
    edges.map((edge) => ({ edge, isHole: ring > 0 })),
  );
  return joined(
    all.map(({ edge, isHole }, index) => {
      const [plan, name] = [entry(pavement.plan.edges, index), entry(pavement.edges, index)];
      return onePart(edge, { plan, name, isHole, scene, pen });
    }),
  );
}

function onePart(
  { points: places, outward: [x, y], isArc }: EdgeInMetres,
  { plan, name, isHole, scene, pen: { view, style } }: EdgeBasis,
): PlanPart {
  const { kind, base, dig, top, length } = plan;
  const { isNarrow, label, units, system } = style;
  const points = places.map(view.to);
  const [a = NOWHERE, b = a] = [points[0], points.at(-1)];
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const out = ([px, py]: Point, by: number): Point => [px + x * by, py - y * by];
  const beside = (by: number): Segment => [out(a, by), out(b, by)];
  const at = (share: number): Point => (isArc ? middleOf(points) : along(a, b, share));
  const isPlain = !isNarrow && !isArc && !isHole;
  const isInside = kind === 'adjoining';
  const toward = Math.atan2(y, x);
  // words along an edge that runs up the picture more than across read upward
  const isTurned = !isArc && Math.abs(x) > 1.7 * Math.abs(y);
  const marks: string[] = [];
  const labels: PlanLabel[] = [];
  const lines: Segment[] = [];
  let off = 0;
  if (kind === 'building' || kind === 'slab') {
    off = STRIP;
    const far = points.map((point) => out(point, STRIP)).reverse();
    marks.push(hatched('dimension', [...points, ...far], kind === 'slab' ? SLAB : BUILDING));
    if (!isArc) lines.push(beside(STRIP));
    const text = label(`edge-${kind}`);
    const spot = { at: out(at(0.72), STRIP), toward, isTurned, clearance: 4 };
    labels.push({ text, ...spot, rings: 3, rank: 7, isSpare: true });
  }
  if (isPlain && !isInside && long >= SHORTEST) {
    // clear of the dig and of walls
    off = Math.max(top.toNumber('m') * view.pixelsPerMetre, off) + PAST;
    const own = beside(off);
    for (const end of [a, b]) marks.push(line('dimension', out(end, 3), out(end, off + 5)));
    marks.push(...dimensionLine(...own));
    lines.push(own);
  }
  // on a phone the only pavement has names round its outside; the rows below have all
  if (!isNarrow || (scene.pavements.length === 1 && !isHole && !isInside)) {
    labels.push({
      text:
        isNarrow || isHole
          ? name
          : label('edge-with-length', { edge: name, length: units.long(length) }),
      style: 'edge-name',
      at: out(middleOf(points), off),
      toward: isInside ? toward + Math.PI : toward,
      isTurned: isTurned && !isNarrow,
      ...(isHole || isInside ? { rings: 2 } : {}),
      rank: 3,
      isSpare: true,
    });
  }
  // the set-out of the dig, across from the paving to the edge of the dig
  const across = dig.toNumber('m') * view.pixelsPerMetre;
  if (isPlain && across >= LEAST_ACROSS && long >= SHORTEST_SET_OUT) {
    const to = out(at(0.24), across);
    marks.push(...dimensionLine(at(0.24), to));
    const distance = `${setOutText(dig, { job: scene.job, system, units })} ${units.depthUnit}`;
    const text = label(base.equals(dig) ? 'base-and-dig-set-out' : 'dig-set-out', { distance });
    labels.push({ text, style: 'set-out', at: to, toward, rings: 2, rank: 8, isSpare: true });
  }
  return { marks, labels, lines };
}

const NOWHERE: Point = [0, 0];
