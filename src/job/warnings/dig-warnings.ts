import { length } from '../../units/construct.js';
import type { Area } from '../../units/quantity.js';
import { NO_AREA } from '../../units/zero.js';
import { commonArea } from '../plan/areas/common-area.js';
import { digOf, digOutline } from '../plan/areas/in-dig.js';
import type { EarthPlan, PavementPlan, PlanWarning } from '../plan/plan.js';
import { areaOfRegions } from '../plan/areas/regions.js';
import type { ReadJob } from '../schema/job-shape.js';
import { lengthFigure } from './figures.js';
import { warning } from './warning.js';

/** What the dig of a pavement shows. Internal. */
export function digWarnings(job: ReadJob, plan: PavementPlan): PlanWarning[] {
  const { name, dig } = plan;
  const found: PlanWarning[] = plan.digClosesUp ? [warning('DIG_CLOSES_UP', name)] : [];
  for (const corner of plan.digLongMitres) {
    found.push(warning('DIG_RUNS_OUT', name, { edge: corner }));
  }
  if (dig.basis === 'spot-heights' || dig.basis === 'stake-levels') {
    return [...found, ...earthWarnings(plan), ...strippedWarnings(plan)];
  }
  if (job.existingLevels !== undefined) found.push(warning('NO_FINISHED_SURFACE', name));
  const depths = depthWarnings(plan);
  return [...found, ...(depths.length > 0 ? depths : strippedWarnings(plan))];
}

/** Less fill than this is the rounding of sums [m3]. */
const NO_FILL = 1e-6;

/** Ground that lies low only once old paving is out: no level on the site shows it. */
function strippedWarnings({ name, earth, oldPaving }: PavementPlan): PlanWarning[] {
  const fill = earth.fill.volume;
  const isShown = earth.deepestFill !== null && earth.deepestFill.depth.compare(NOISE) >= 0;
  if (oldPaving.length === 0 || isShown || fill.toNumber('m3') <= NO_FILL) return [];
  return [warning('FILL_UNDER_OLD_PAVING', name, { fill })];
}

function depthWarnings({ name, dig }: PavementPlan): PlanWarning[] {
  if (dig.depth.isNegative()) {
    return [warning('FILL_NEEDED', name, { fill: dig.depth.abs() })];
  }
  if (!dig.soil.isNegative()) return [];
  const values = { dig: dig.depth, fill: dig.soil.abs() };
  return [warning('OLD_PAVING_DEEPER_THAN_DIG', name, values)];
}

/** Less than this is float noise. */
const NOISE = /* #__PURE__ */ length('0.001', 'mm');

function earthWarnings({ name, dig, earth, areas }: PavementPlan): PlanWarning[] {
  const { uncovered, deepestFill, fillArea } = earth;
  const gap = isGap(dig.basis, uncovered, areas.dig)
    ? [warning('SURFACE_GAP', name, { area: uncovered, levels: LEVELS_OF[dig.basis] })]
    : [];
  if (deepestFill === null || fillArea === null || deepestFill.depth.compare(NOISE) < 0) return gap;
  const { depth, x, y } = deepestFill;
  return [...gap, warning('LOW_GROUND', name, { area: fillArea, depth, x, y })];
}

const LEVELS_OF: Readonly<Record<PavementPlan['dig']['basis'], string>> = {
  'spot-heights': 'spot levels',
  'stake-levels': 'ground readings at stakes',
  'along-strings': 'ground readings at stakes',
  uniform: 'levels',
};

/** Stakes stand round a dig: a tenth of it may lie outside of them. Common practice, no source. */
const SHARE_OUTSIDE_STAKES = '0.1';

const isGap = (
  basis: PavementPlan['dig']['basis'],
  uncovered: EarthPlan['uncovered'],
  dig: Area,
): boolean =>
  basis === 'stake-levels'
    ? uncovered.compare(dig.times(SHARE_OUTSIDE_STAKES)) > 0
    : !uncovered.isZero();

/** Stakes that the dig takes out, and stakes that serve no string. Internal. */
export function stakeWarnings(job: ReadJob, pavements: readonly PavementPlan[]): PlanWarning[] {
  const digs = pavements.map((pavement) => ({ name: pavement.name, holds: digOf(pavement) }));
  const used = new Set(job.stringLines.flatMap(({ stakes }) => stakes));
  return job.stakes.flatMap(({ id, x, y }) => {
    const hit = digs.find(({ holds }) => holds({ x, y }));
    return [
      ...(hit === undefined
        ? []
        : [warning('STAKE_IN_DIG', `stake ${id}`, { pavement: hit.name })]),
      ...(used.has(id) ? [] : [warning('STAKE_UNUSED', `stake ${id}`)]),
    ];
  });
}

/** Sloped sides whose top runs into the dig of another pavement. Internal. */
export function topWarnings(pavements: readonly PavementPlan[]): PlanWarning[] {
  return pavements.flatMap((plan) => {
    const { top } = plan;
    if (top === null) return [];
    const outer = digOutline({ outer: top, holes: top.holes });
    const own = bottomOf(plan);
    return pavements.flatMap((other) => {
      if (other === plan) return [];
      const theirs = bottomOf(other);
      const shared = commonIn(outer, theirs).minus(commonIn(own, theirs));
      if (shared.toNumber('m2') <= SAME_AREA) return [];
      const values = {
        other: other.name,
        area: shared,
        depth: lengthFigure(other.dig.depth.toNumber('m')),
      };
      return [warning('SIDE_RUNS_INTO_DIG', plan.name, values)];
    });
  });
}

/** A strip of a millimetre along a dig [m2]. */
const SAME_AREA = 0.001;

const bottomOf = ({ digOutline: points, digArcs: arcs, digHoles: holes }: PavementPlan) =>
  digOutline({ outer: { points, arcs }, holes });

type Outline = ReturnType<typeof digOutline>;

const commonIn = (a: Outline, b: Outline): Area =>
  commonArea(a, b).reduce(
    (total, outline) => total.plus(areaOfRegions([{ outline, sign: 1 }])),
    NO_AREA,
  );
