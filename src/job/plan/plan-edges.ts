import { makeArc } from '../../outline/arc.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import type { Decimal } from '../../units/decimal.js';
import { fromSI, type Length } from '../../units/quantity.js';
import type { Ratio } from '../../units/ratio.js';
import { minus, norm, type Vector } from '../../units/vector.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { EdgePlan } from './plan.js';

/** An edge, and the slope of the side of the dig along it. Internal. */
export interface PlannedEdge extends Omit<EdgePlan, 'top'> {
  /** Run over rise; null if the side is vertical. */
  readonly batter: Decimal | null;
}

/** Distances of base and dig outside the paving along each edge. Internal. */
export function planEdges(job: ReadJob, pavement: Pavement, extension: Length): PlannedEdge[] {
  const restraint = job.edgeRestraintWidth ?? NO_LENGTH;
  const room = job.workingRoom ?? NO_LENGTH;
  const planned: PlannedEdge[] = [];
  for (const ring of ringsOf(pavement.outline)) {
    forEachEdge(ring.points, (from, to, index) => {
      const said = pavement.edges?.[planned.length] ?? null;
      const kind = said?.along ?? null;
      const isOpen = kind === null || kind === 'open';
      const base = isOpen ? restraint.plus(extension) : NO_LENGTH;
      const batter = said?.batter ?? pavement.batter;
      planned.push({
        edge: planned.length + 1,
        kind,
        length: edgeLength(from, to, ring.bulges?.[index]),
        base,
        dig: isOpen ? base.plus(room) : NO_LENGTH,
        batter: !isOpen || batter === undefined || batter.isZero() ? null : batter,
      });
    });
  }
  return planned;
}

/** Adds the top of the dig to the edges, for sides of one depth. Internal. */
export const withTops = (edges: readonly PlannedEdge[], depth: Length): EdgePlan[] =>
  edges.map(({ batter, ...edge }) =>
    Object.assign(edge, { top: topAt({ dig: edge.dig, batter }, depth) }),
  );

/** Distance of a side outside the paving at a height above the bottom of the dig. Internal. */
export const topAt = (
  { dig, batter }: Pick<PlannedEdge, 'dig' | 'batter'>,
  height: Length,
): Length => (batter === null || height.isNegative() ? dig : dig.plus(height.times(batter)));

function edgeLength(from: Vector, to: Vector, bulge: Ratio | undefined): Length {
  const chord = norm(minus(to, from));
  return fromSI('length', bulge === undefined ? chord : makeArc(chord, bulge).length);
}
