import { entry, known } from '../../invariant.js';
import { fromNumber, length } from '../../units/construct.js';
import type { Length, Slope } from '../../units/quantity.js';
import { between, scaled, turnedLeft, type PlanPoint } from '../../units/vector.js';
import { slopeAt } from '../plan/finish-surface.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { PlanWarning, SlopePlan, StringLinePlan } from '../plan/plan.js';
import type { StakesById } from '../plan/stake-grounds.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { ExistingAt } from './existing-surface.js';
import { lengthFigure, placeFigures, placeFrom, type Place } from './figures.js';
import { finishedMesh, levelMesh } from './finish-mesh.js';
import { warning } from './warning.js';

/** What the warnings of a string are found from. Internal. */
export interface StringBasis {
  readonly job: ReadJob;
  readonly line: StringLinePlan;
  /** The pavement that the string serves. */
  readonly laid: LaidOut;
  readonly stakes: StakesById;
  readonly existingAt: ExistingAt | null;
  readonly least: Slope;
}

/** What the levels along a string show. Internal. */
export function stringWarnings(basis: StringBasis): PlanWarning[] {
  return [
    ...inGroundAtStakes(basis),
    ...inGroundBetween(basis),
    ...lowPoints(basis),
    ...sags(basis),
  ];
}

const spanOf = (line: StringLinePlan, from: string, to: string): string =>
  `string ${line.id}, ${from} to ${to}`;

function inGroundAtStakes({ line }: StringBasis): PlanWarning[] {
  return line.stakes.flatMap(({ id, ground }) =>
    ground?.isNegative() === true
      ? [warning('STRING_IN_GROUND', `stake ${id}`, { string: line.id, above: ground.abs() })]
      : [],
  );
}

/** Places along a span are this close [metres], and no more than so many. */
const STEP = 0.5;
const MOST_STEPS = 40;
/** Less than this is the rounding of spot heights [metres]. */
const ROUNDING = 0.001;

/** Spot heights above the straight from string to string height. */
function inGroundBetween({ line, stakes, existingAt }: StringBasis): PlanWarning[] {
  if (existingAt === null) return [];
  return line.stakes.slice(1).flatMap((to, index) => {
    const from = entry(line.stakes, index);
    const [start, end] = [stakes.get(from.id), stakes.get(to.id)];
    const [low, high] = [from.stringElevation, to.stringElevation];
    if (start === undefined || end === undefined || low === null || high === null) return [];
    const found = highestAbove({ start, end, low, high, existingAt });
    if (found === null) return [];
    const place = placeFigures(start, found.place);
    const values = { string: line.id, above: lengthFigure(found.above), ...place };
    return [warning('STRING_IN_GROUND', spanOf(line, from.id, to.id), values)];
  });
}

/** Where the ground rises highest above a stretched string; null where it does not. */
function highestAbove({
  start,
  end,
  low,
  high,
  existingAt,
}: {
  readonly start: PlanPoint;
  readonly end: PlanPoint;
  readonly low: Length;
  readonly high: Length;
  readonly existingAt: ExistingAt;
}): { readonly place: Place; readonly above: number } | null {
  const { x, y } = placeFrom(start, end);
  const count = Math.min(MOST_STEPS, Math.max(2, Math.ceil(Math.hypot(x, y) / STEP)));
  const rise = high.minus(low).toNumber('m');
  let found: { place: Place; above: number } | null = null;
  for (let k = 0; k <= count; k += 1) {
    const place = { x: (x * k) / count, y: (y * k) / count };
    const there = {
      x: start.x.plus(fromNumber(place.x, 'm')),
      y: start.y.plus(fromNumber(place.y, 'm')),
    };
    const ground = existingAt(there);
    if (ground === null) continue;
    const above = ground.minus(low).toNumber('m') - (rise * k) / count;
    if (above > (found?.above ?? ROUNDING)) found = { place, above };
  }
  return found;
}

/** Falls smaller than this are what levels are rounded to. */
const NO_DROP = /* #__PURE__ */ length(1, 'mm');

/** Stakes that finished grade falls to from both sides, where water does not run off across. */
function lowPoints(basis: StringBasis): PlanWarning[] {
  const { line } = basis;
  return line.slopes.slice(1).flatMap((after, index) => {
    const before = line.slopes[index];
    if (before?.to !== after.from) return [];
    const [drop, rise] = [before.rise.negated(), after.rise];
    if (drop.compare(NO_DROP) <= 0 || rise.compare(NO_DROP) <= 0) return [];
    if (runsOffAcross(basis, before, after)) return [];
    const values = { string: line.id, from: before.from, to: after.to };
    return [
      warning('LOW_POINT', `stake ${after.from}`, {
        ...values,
        drop,
        rise,
      }),
    ];
  });
}

/** True where the slope across a string is the minimum fall or more at a stake. */
function runsOffAcross(
  { laid, stakes, least }: StringBasis,
  before: SlopePlan,
  after: SlopePlan,
): boolean {
  const { pavement, grade } = laid;
  const stakeOf = (id: string) => known(stakes.get(id), 'stake');
  const [from, at, to] = [stakeOf(before.from), stakeOf(after.from), stakeOf(after.to)];
  if (grade !== null) {
    const ahead = between(from, to);
    const across = scaled(turnedLeft(ahead), { n: 1, d: 100 });
    return slopeAt(grade.surface, at, across).abs().compare(least) >= 0;
  }
  if (pavement.crossSlope !== undefined) return pavement.crossSlope.abs().compare(least) >= 0;
  const { origin } = pavement.outline;
  const mesh = finishedMesh(pavement) ?? levelMesh(laid.finishes.levels, origin);
  const low = placeFrom(origin, at);
  const ahead = placeFrom(from, to);
  const run = Math.hypot(ahead.x, ahead.y);
  const minimum = least.toNumber('ratio');
  const enough = minimum - Math.min(SLOPE_ROUNDING, minimum / 4);
  // to either side of the string
  return [-SIDE, SIDE].some((side) => {
    const square = { x: (-ahead.y / run) * side, y: (ahead.x / run) * side };
    const facet = mesh?.facetIn({ x: low.x + square.x, y: low.y + square.y }) ?? null;
    if (facet === null) return false;
    const slope = (facet.gradeX * square.x + facet.gradeY * square.y) / SIDE;
    return Math.abs(slope) >= enough;
  });
}
/** To either side of a string [metres]. */
const SIDE = 0.05;
/** Levels are rounded: over some metres that is so much slope. */
const SLOPE_ROUNDING = 5e-4;

/** Spans over which the string sags by more than a stake may be off. */
function sags({ job, line }: StringBasis): PlanWarning[] {
  return line.sags
    .filter(({ sag }) => sag.compare(job.stakeTolerance) > 0)
    .map(({ from, to, sag }) =>
      warning('STRING_SAGS', spanOf(line, from, to), { sag, tolerance: job.stakeTolerance }),
    );
}
