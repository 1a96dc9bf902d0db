import { entry, known } from '../../invariant.js';
import { edgeRestraint, type EdgeRestraint } from '../../materials/edging/edge-restraint.js';
import { geotextile, type GeotextileOver } from '../../materials/fabric/geotextile.js';
import { jointSand, type JointSand } from '../../materials/joints/joint-sand.js';
import { sum } from '../../units/aggregate.js';
import type { Area, Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { paverIndex, type Paver } from './materials.js';
import type { DigRing, EdgePlan, SuppliesPlan } from './plan.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import { withoutGaps } from './without-gaps.js';
import { inField } from '../read/in-field.js';

/** Areas and edges for counting the supplies of a pavement. Internal. */
export interface SuppliesBasis {
  readonly paving: Area;
  readonly edges: readonly EdgePlan[];
  readonly dig: { readonly outer: DigRing; readonly holes: readonly DigRing[] };
  readonly paver: Paver | null;
}

type Materials = ReadJob['materials'];

/** A run of edge restraint. Internal. */
export interface OpenRun {
  readonly length: Length;
  readonly isCurved: boolean;
  readonly isClosed: boolean;
  /** Edges along it, counted from 1. */
  readonly edges: readonly number[];
}

/** Supplies with what they were worked out from. Internal. */
export interface PlannedSupplies {
  readonly plan: SuppliesPlan;
  readonly sand: JointSand | null;
  readonly restraint: EdgeRestraint | null;
  readonly fabric: GeotextileOver | null;
  readonly runs: readonly OpenRun[];
}

/** Joint sand, edge restraint and geotextile of a pavement, if the job includes them. Internal. */
export function planSupplies(
  { materials }: ReadJob,
  pavement: Pavement,
  basis: SuppliesBasis,
): PlannedSupplies {
  const { paver } = basis;
  const sand =
    materials.jointSand === undefined || paver === null
      ? null
      : sandFor(materials.jointSand, {
          paver,
          index: paverIndex(materials, paver),
          pavement,
          area: basis.paving,
        });
  const runs = materials.edgeRestraint === undefined ? [] : openRuns(pavement, basis.edges);
  const restraint =
    materials.edgeRestraint === undefined || runs.length === 0
      ? null
      : restraintFor(materials.edgeRestraint, runs);
  const fabric =
    materials.geotextile === undefined ? null : fabricFor(materials.geotextile, basis.dig);
  const plan = { jointSand: sand, edgeRestraint: restraint, geotextile: fabric };
  return { plan, sand, restraint, fabric, runs };
}

function sandFor(
  { density, recess, riseFromBed, waste, bag }: NonNullable<Materials['jointSand']>,
  {
    paver,
    index,
    pavement,
    area,
  }: {
    readonly paver: Paver;
    /** Index of the paver in the job. */
    readonly index: number;
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
    ...withoutGaps({ recess, riseFromBed, bag, waste: waste && numberText(waste) }),
  };
  return inField(
    () => jointSand(options),
    (path) =>
      path[0] === 'joint'
        ? ['materials', 'pavers', index, ...path]
        : ['materials', 'jointSand', ...path],
  );
}

const fabricFor = (fabric: NonNullable<Materials['geotextile']>, dig: SuppliesBasis['dig']) =>
  inField(
    () => geotextile({ outline: { ...dig.outer, holes: dig.holes }, ...withoutGaps(fabric) }),
    (path) => ['materials', 'geotextile', ...path],
  );

const restraintFor = (
  restraint: NonNullable<Materials['edgeRestraint']>,
  runs: readonly OpenRun[],
): EdgeRestraint =>
  inField(
    () =>
      edgeRestraint({
        runs: runs.map(({ length, isCurved, isClosed }) => ({ length, isCurved, isClosed })),
        ...withoutGaps(restraint),
      }),
    (path) => ['materials', 'edgeRestraint', ...path],
  );

/** The runs of open edges, ring by ring. */
const openRuns = ({ outline }: Pavement, edges: readonly EdgePlan[]): OpenRun[] =>
  [outline, ...outline.holes].reduce<{ start: number; runs: OpenRun[] }>(
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

interface RunEdge {
  readonly edge: EdgePlan;
  readonly curved: boolean;
}

/** True for an open edge, or one the job does not describe. */
const isOpen = ({ edge: { kind } }: RunEdge): boolean => kind === 'open' || kind === null;

/** The runs of connected open edges of a ring. A run ends where straight and curved edges meet. */
function runsOf(ring: readonly RunEdge[]): OpenRun[] {
  const isSame = (a: RunEdge, b: RunEdge) => isOpen(a) === isOpen(b) && a.curved === b.curved;
  // start between two kinds, so that the first point of the ring breaks no run
  const first = ring.findIndex((one, k) => !isSame(known(ring.at(k - 1), 'such entry'), one));
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
    .filter(([one]) => one !== undefined && isOpen(one))
    .map((group) => ({
      length: group.reduce((total, { edge }) => total.plus(edge.length), NO_LENGTH),
      isCurved: entry(group, 0).curved,
      isClosed,
      edges: group.map(({ edge }) => edge.edge),
    }));
}
