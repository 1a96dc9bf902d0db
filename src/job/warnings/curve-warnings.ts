import { entry, known } from '../../invariant.js';
import { isOutwardRight, toRight } from '../../outline/chords.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import { roughNumber } from '../../units/ratio.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PlanWarning, StringLinePlan } from '../plan/plan.js';
import type { StakesById } from '../plan/stake-grounds.js';
import type { ReadJob } from '../schema/job-shape.js';
import { lengthFigure, placeFrom, type Place } from './figures.js';
import { roundOf, type Round } from './round-edge.js';
import { warning } from './warning.js';

/** Stakes within so much of an arc stand along it [metres]: what crews set stakes off by. */
const OFFSET = 1.5;
/** Stakes set off an arc evenly differ by less than this share of their offset from the centre. */
const EVEN = 0.05;

/** Neighbouring stakes along an arc between which the string leaves it by more than a stake may be off. Internal. */
export function curveWarnings(
  job: ReadJob,
  line: StringLinePlan,
  { laid, stakes }: { readonly laid: LaidOut; readonly stakes: StakesById },
): PlanWarning[] {
  const arcs = arcsOf(laid.pavement);
  if (arcs.length === 0) return [];
  const tolerance = job.stakeTolerance.toNumber('m');
  const places = line.stakes.map(({ id }) => ({
    id,
    place: placeFrom(laid.pavement.outline.origin, known(stakes.get(id), 'stake')),
  }));
  return places.slice(1).flatMap((to, index) => {
    const from = entry(places, index);
    const beside = arcs.find(({ round }) => isAlong(round, from.place, to.place));
    if (beside === undefined) return [];
    const ordinate = ordinateOf(beside.round, from.place, to.place);
    if (ordinate <= tolerance + 1e-9) return [];
    const subject = `string ${line.id}, ${from.id} to ${to.id}`;
    const values = {
      edge: beside.edge,
      off: lengthFigure(ordinate),
      tolerance: job.stakeTolerance,
    };
    return [warning('STAKES_TOO_FAR_ON_CURVE', subject, values)];
  });
}

interface ArcEdge {
  readonly edge: number;
  readonly round: Round;
}

function arcsOf({ outline }: LaidOut['pavement']): ArcEdge[] {
  const arcs: ArcEdge[] = [];
  let edge = 0;
  ringsOf(outline).forEach((ring, index) => {
    const isRight = isOutwardRight(ring, index > 0);
    forEachEdge(ring.points, (a, b, k) => {
      edge += 1;
      const bulge = ring.bulges?.[k];
      if (bulge === undefined) return;
      const [from, to] = [a, b].map(({ x, y }) => ({ x: roughNumber(x), y: roughNumber(y) })) as [
        Place,
        Place,
      ];
      arcs.push({ edge, round: roundOf(from, to, toRight(bulge, isRight)) });
    });
  });
  return arcs;
}

const fromCentre = ({ centre }: Round, { x, y }: Place): number =>
  Math.hypot(x - centre.x, y - centre.y);

/** True for two stakes that stand evenly along an arc, beside its sweep. */
function isAlong(round: Round, from: Place, to: Place): boolean {
  const [a, b] = [fromCentre(round, from), fromCentre(round, to)];
  const isNear = [a, b].every((away) => Math.abs(away - round.radius) <= OFFSET);
  if (!isNear || Math.abs(a - b) > EVEN * round.radius) return false;
  return [from, to].every((place) => isInSweep(round, place));
}

/** A little before the start and beyond the end counts: stakes stand at the ends of arcs. */
const BEYOND = 0.02;

function isInSweep({ centre, start, sweep }: Round, { x, y }: Place): boolean {
  const turn = 2 * Math.PI;
  const angle = Math.atan2(y - centre.y, x - centre.x) - start;
  const ahead = sweep < 0 ? -angle : angle;
  const turned = ((((ahead + BEYOND) % turn) + turn) % turn) - BEYOND;
  return turned <= Math.abs(sweep) + BEYOND;
}

/** Between the straight from stake to stake and the arc through them. */
function ordinateOf(round: Round, from: Place, to: Place): number {
  const radius = (fromCentre(round, from) + fromCentre(round, to)) / 2;
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  return half >= radius ? radius : radius - Math.sqrt(radius * radius - half * half);
}
