import type { FieldPath } from '../../../errors.js';
import { entry, known } from '../../../invariant.js';
import { arcOf } from '../../../outline/arc.js';
import { forEachEdge, ringsOf, type Ring } from '../../../outline/ring.js';
import { fromSI } from '../../../units/quantity.js';
import { minus, norm, pointFrom, type PlanPoint, type Vector } from '../../../units/vector.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { LaidOut } from '../lay-out.js';
import { take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { EdgePlan, PavementPlan } from '../plan.js';
import type { PlannedEdge } from '../plan-edges.js';

/** The working of the lengths of the edges, and of base and dig outside them. Internal. */
export function edgeSteps(job: ReadJob, laid: LaidOut, plan: PavementPlan): PlacedStep[] {
  return [...lengthSteps(laid), ...outsideSteps(job, laid, plan), ...topSteps(laid, plan)];
}

/** The rings of an outline with the path of each in the job. */
export function placedRings({ outline }: LaidOut['pavement']): { ring: Ring; at: FieldPath }[] {
  const isList = outline.holes.length === 0 && !hasBulge(outline);
  return ringsOf(outline).map((ring, index) => ({
    ring,
    at: ['given', 'outline', ...(isList ? [] : index === 0 ? [] : ['holes', index - 1])],
  }));
}

/** True for a ring with arcs. Internal. */
export const hasBulge = ({ bulges }: Ring): boolean =>
  bulges?.some((bulge) => bulge !== undefined) ?? false;

/** The path of the points of a ring. */
export const pointsAt = ({ outline }: LaidOut['pavement'], at: FieldPath): FieldPath =>
  outline.holes.length === 0 && !hasBulge(outline) ? at : [...at, 'points'];

function lengthSteps({ pavement }: LaidOut): PlacedStep[] {
  const { origin } = pavement.outline;
  const steps: PlacedStep[] = [];
  let edge = 0;
  for (const { ring, at } of placedRings(pavement)) {
    const points = pointsAt(pavement, at);
    const start = edge;
    forEachEdge(ring.points, (a, b, index) => {
      const places = [a, b].map((one) => pointFrom(origin, one));
      const paths = [index, (index + 1) % ring.points.length].map((k) => [...points, k]);
      const ends = endsTaken(places, paths);
      steps.push(...lengthOf({ ring, at, index, edge: start + index, ends, a, b }));
    });
    edge += ring.points.length;
  }
  return steps;
}

const endsTaken = (places: readonly PlanPoint[], paths: readonly FieldPath[]): Taken[] =>
  (['x', 'y'] as const).map((axis) =>
    take(
      axis,
      `${axis} of both ends`,
      places.map((place) => place[axis]),
      ...paths.map((path) => [...path, axis]),
    ),
  );

interface EdgeOfRing {
  readonly ring: Ring;
  readonly at: FieldPath;
  /** Edge of the ring. */
  readonly index: number;
  /** Edge of the outline. */
  readonly edge: number;
  readonly ends: readonly Taken[];
  readonly a: Vector;
  readonly b: Vector;
}

const STRAIGHT = 'sqrt((x[2] - x[1])^2 + (y[2] - y[1])^2)';

function lengthOf({ ring, at, index, edge, ends, a, b }: EdgeOfRing): PlacedStep[] {
  const bulge = ring.bulges?.[index];
  const chord = fromSI('length', norm(minus(b, a)));
  const gives = [['edges', edge, 'length']];
  if (bulge === undefined) {
    return [
      worked({
        title: `Length of edge ${edge + 1}`,
        formula: `L = ${STRAIGHT}`,
        takes: ends,
        result: given('L', `length of edge ${edge + 1}`, chord),
        gives,
      }),
    ];
  }
  const arcs = known(ring.bulges, 'arcs').flatMap((one, k) => (one === undefined ? [] : [k]));
  const name = `chord of edge ${edge + 1}`;
  return [
    worked({
      title: `Chord of edge ${edge + 1}`,
      formula: `C = ${STRAIGHT}`,
      takes: ends,
      result: given('C', name, chord),
      gives: [],
    }),
    worked({
      title: `Length of edge ${edge + 1}, an arc`,
      formula: 'L = (C^2 / (8 * abs(M)) + abs(M) / 2) * 4 * atan(2 * abs(M) / C)',
      takes: [
        take('C', name, chord),
        take('M', 'middle ordinate', fromSI('length', bulge), [
          ...at,
          'arcs',
          arcs.indexOf(index),
          'bulgeMiddleOrdinate',
        ]),
      ],
      result: given('L', `length of edge ${edge + 1}`, fromSI('length', arcOf(a, b, bulge).length)),
      gives,
    }),
  ];
}

/** Base and dig outside the edges that are open: the same along all of them. */
function outsideSteps(job: ReadJob, { edges }: LaidOut, plan: PavementPlan): PlacedStep[] {
  const open = edges.flatMap(({ kind }, index) =>
    kind === null || kind === 'open' ? [index] : [],
  );
  const first = plan.edges[open[0] ?? -1];
  if (first === undefined) return [];
  const all = (field: 'base' | 'dig' | 'top', of = open) =>
    of.map((index) => ['edges', index, field]);
  const upright = open.filter((index) => isUpright(edges[index], plan.edges[index]));
  const x = take('x', 'extension', plan.extension, ['extension']);
  const { edgeRestraintWidth: width, workingRoom: room } = job;
  const base = take('b', 'base outside the paving', first.base, ['edges', entry(open, 0), 'base']);
  return [
    worked({
      title: 'Base outside the paving, along open edges',
      formula: width === undefined ? 'b = x' : 'b = r + x',
      takes:
        width === undefined
          ? [x]
          : [take('r', 'width of the edge restraint', width, ['job', 'edgeRestraintWidth']), x],
      result: given('b', 'base outside the paving', first.base),
      gives: all('base'),
      source: 'edge-restraints',
    }),
    worked({
      title: 'Dig outside the paving, along open edges',
      formula: room === undefined ? 'd = b' : 'd = b + w',
      takes:
        room === undefined
          ? [base]
          : [base, take('w', 'working room', room, ['job', 'workingRoom'])],
      result: given('d', 'dig outside the paving', first.dig),
      gives: [...all('dig'), ...all('top', upright)],
    }),
  ];
}

/** True where the top of a side stands over its foot. */
const isUpright = (edge: PlannedEdge | undefined, plan: EdgePlan | undefined): boolean =>
  (edge?.batter ?? null) === null || plan?.top.equals(plan.dig) === true;

function topSteps({ edges, pavement, dig }: LaidOut, plan: PavementPlan): PlacedStep[] {
  return plan.edges.flatMap((edge, index) => {
    const batter = edges[index]?.batter ?? null;
    if (batter === null || isUpright(edges[index], edge)) return [];
    const isOwn = pavement.edges?.[index]?.batter !== undefined;
    return [
      worked({
        title: `Top of the slope outside edge ${edge.edge}`,
        formula: 't = d + E * n',
        takes: [
          take('d', 'dig outside the paving', edge.dig, ['edges', index, 'dig']),
          take('E', 'depth of dig', dig.depth, ['dig', 'depth']),
          take('n', 'run over rise of the side', batter, [
            'given',
            ...(isOwn ? ['edges', index, 'batter'] : ['batter']),
          ]),
        ],
        result: given('t', 'top of the slope outside the paving', edge.top),
        gives: [['edges', index, 'top']],
      }),
    ];
  });
}
