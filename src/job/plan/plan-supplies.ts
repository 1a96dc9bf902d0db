import { edgeRestraint, type RestraintRunInput } from '../../materials/edging/edge-restraint.js';
import { geotextile } from '../../materials/fabric/geotextile.js';
import { jointSand } from '../../materials/joints/joint-sand.js';
import { sum } from '../../units/aggregate.js';
import { exactOf, fromSI, type Area, type Length } from '../../units/quantity.js';
import { compareRatios, divideRatios, subtractRatios, type Ratio } from '../../units/ratio.js';
import { cross, dot, minus, norm, type Vector } from '../../units/vector.js';
import type { Step, Worked } from '../../working.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { EdgePlan, SuppliesPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { withoutGaps } from './without-gaps.js';
import { inField } from '../read/in-field.js';

/** What the supplies of a pavement are counted from. Internal. */
export interface SuppliesBasis {
  readonly paving: Area;
  readonly edges: readonly EdgePlan[];
  readonly digOutline: readonly { readonly x: Length; readonly y: Length }[];
}

type Materials = NonNullable<ReadJob['materials']>;

/** Joint sand, edge restraint and fabric of a pavement, where the job asks for them. Internal. */
export function planSupplies(
  { materials, paver }: ReadJob,
  pavement: Pavement,
  basis: SuppliesBasis,
): { readonly plan: SuppliesPlan; readonly steps: () => readonly Step[] } {
  const sand =
    materials?.jointSand === undefined || paver === undefined
      ? null
      : sandFor(materials.jointSand, { paver, pavement, area: basis.paving });
  const restraint =
    materials?.edgeRestraint === undefined
      ? null
      : restraintFor(materials.edgeRestraint, pavement, basis.edges);
  const fabric =
    materials?.geotextile === undefined ? null : fabricFor(materials.geotextile, basis.digOutline);
  const worked: readonly (Worked | null)[] = [sand, restraint, fabric];
  return {
    plan: { jointSand: sand, edgeRestraint: restraint, geotextile: fabric },
    steps: () => worked.flatMap((one) => one?.working ?? []),
  };
}

function sandFor(
  { density, recess, riseFromBed, waste, bag }: NonNullable<Materials['jointSand']>,
  {
    paver,
    pavement,
    area,
  }: {
    readonly paver: NonNullable<ReadJob['paver']>;
    readonly pavement: Pavement;
    readonly area: Area;
  },
) {
  const depth = sum(
    pavement.layers.filter(({ kind }) => kind === 'paver').map(({ thickness }) => thickness),
  );
  const options = {
    area,
    unit: { length: paver.length, width: paver.width },
    joint: paver.joint,
    depth,
    density,
    ...withoutGaps({ recess, riseFromBed, bag, waste: waste?.toString() }),
  };
  return inField(
    () => jointSand(options),
    (path) => (path[0] === 'joint' ? ['paver', ...path] : ['materials', 'jointSand', ...path]),
  );
}

const fabricFor = (
  fabric: NonNullable<Materials['geotextile']>,
  digOutline: SuppliesBasis['digOutline'],
) =>
  inField(
    () => geotextile({ ...boxOf(digOutline), ...withoutGaps(fabric) }),
    (path) => ['materials', 'geotextile', ...path],
  );

function restraintFor(
  restraint: NonNullable<Materials['edgeRestraint']>,
  { outline }: Pavement,
  edges: readonly EdgePlan[],
) {
  const runs = [outline, ...outline.holes].reduce<{ start: number; runs: RestraintRunInput[] }>(
    (before, ring) => {
      const count = ring.points.length;
      const own = edges.slice(before.start, before.start + count).map((edge, index) => ({
        edge,
        curved: ring.bulges?.[index] !== undefined,
      }));
      return { start: before.start + count, runs: [...before.runs, ...runsOf(own)] };
    },
    { start: 0, runs: [] },
  ).runs;
  if (runs.length === 0) return null;
  return inField(
    () => edgeRestraint({ runs, ...withoutGaps(restraint) }),
    (path) => ['materials', 'edgeRestraint', ...path],
  );
}

interface RunEdge {
  readonly edge: EdgePlan;
  readonly curved: boolean;
}

/** The open edges of a ring that hang together; where straight and curved edges meet a run ends. */
function runsOf(ring: readonly RunEdge[]): RestraintRunInput[] {
  const isSame = (a: RunEdge, b: RunEdge) =>
    (a.edge.kind === 'open') === (b.edge.kind === 'open') && a.curved === b.curved;
  // start where two kinds meet, so that no run is broken by the first point of the ring
  const first = ring.findIndex((one, k) => !isSame(ring.at(k - 1) ?? one, one));
  const isClosed = first < 0;
  const turned = isClosed ? ring : [...ring.slice(first), ...ring.slice(0, first)];
  const groups: RunEdge[][] = [];
  for (const one of turned) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    if (last === undefined || before === undefined || !isSame(before, one)) groups.push([one]);
    else last.push(one);
  }
  return groups
    .filter(([one]) => one?.edge.kind === 'open')
    .map((group) => ({
      length: group.reduce((total, { edge }) => total.plus(edge.length), NO_LENGTH),
      isCurved: group[0]?.curved ?? false,
      isClosed,
    }));
}

/** Length and width of the box round a dig, laid along its longest edge. */
function boxOf(points: SuppliesBasis['digOutline']): { length: Length; width: Length } {
  const [first] = points;
  const vectors = points.map(({ x, y }): Vector => ({ x: exactOf(x), y: exactOf(y) }));
  const sides = vectors.map((from, k) => minus(vectors[(k + 1) % vectors.length] ?? from, from));
  const longest = sides.reduce((a, b) => (compareRatios(norm(b), norm(a)) > 0 ? b : a));
  if (first === undefined) return { length: NO_LENGTH, width: NO_LENGTH };
  const size = norm(longest);
  const spread = (of: (vector: Vector) => Ratio): Length => {
    const values = vectors.map(of);
    const [low, high] = [
      values.reduce((a, b) => (compareRatios(b, a) < 0 ? b : a)),
      values.reduce((a, b) => (compareRatios(b, a) > 0 ? b : a)),
    ];
    return fromSI('length', divideRatios(subtractRatios(high, low), size));
  };
  return {
    length: spread((vector) => dot(longest, vector)),
    width: spread((vector) => cross(longest, vector)),
  };
}
