import { makeArc } from '../../outline/arc.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import { fromSI, type Length } from '../../units/quantity.js';
import type { Ratio } from '../../units/ratio.js';
import { minus, norm, type Vector } from '../../units/vector.js';
import { given, type Step } from '../../working.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { EdgePlan, PavementPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** How far base and dig go beyond the paving along each edge. Internal. */
export function planEdges(job: ReadJob, pavement: Pavement, extension: Length): EdgePlan[] {
  const restraint = job.edgeRestraintWidth ?? NO_LENGTH;
  const room = job.workingRoom ?? NO_LENGTH;
  const planned: EdgePlan[] = [];
  for (const ring of ringsOf(pavement.outline)) {
    forEachEdge(ring.points, (from, to, index) => {
      const edge = planned.length;
      const kind = pavement.edges?.[edge] ?? 'open';
      const base = kind === 'open' ? restraint.plus(extension) : NO_LENGTH;
      const dig = kind === 'open' ? base.plus(room) : NO_LENGTH;
      planned.push({ edge, kind, length: edgeLength(from, to, ring.bulges?.[index]), base, dig });
    });
  }
  return planned;
}

function edgeLength(from: Vector, to: Vector, bulge: Ratio | undefined): Length {
  const chord = norm(minus(to, from));
  return fromSI('length', bulge === undefined ? chord : makeArc(chord, bulge).length);
}

/** The working of the widened areas. Internal. */
export function areaSteps({ areas, edges }: PavementPlan): Step[] {
  const moved = (name: 'base' | 'dig'): Step => ({
    title: `Area of the ${name}`,
    formula: "A' = area of the paving outline, edges moved out by d(k)",
    given: [
      given('A', 'area of the paving', areas.paving),
      ...edges.map((edge) => given(`d${edge.edge}`, `edge ${edge.edge}, ${edge.kind}`, edge[name])),
    ],
    result: given("A'", `area of the ${name}`, areas[name]),
    source: 'edge-restraints',
  });
  return [moved('base'), moved('dig')];
}
