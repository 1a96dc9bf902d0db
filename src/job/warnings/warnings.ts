import { length } from '../../units/construct.js';
import { digOf } from '../plan/in-dig.js';
import { gradeWarnings, levelWarnings, rodWarnings } from './level-warnings.js';
import type {
  EarthworkPlan,
  JobPlan,
  PavementPlan,
  PlanWarning,
  StringLinePlan,
} from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { nearbyWarnings, shapeWarnings } from './site-warnings.js';
import { thicknessWarnings } from './thickness-warnings.js';
import { warning } from './warning.js';

/** What a crew should look at before it digs. Internal. */
export function findWarnings(
  job: ReadJob,
  plan: Pick<JobPlan, 'levelBook' | 'levelling'> & {
    readonly pavements: readonly PavementPlan[];
    readonly lines: readonly StringLinePlan[];
  },
): PlanWarning[] {
  const { pavements, lines } = plan;
  const laid = new Set(pavements.filter(({ grade }) => grade !== null).map(({ id }) => id));
  return [
    ...levelWarnings(plan),
    ...pavements.flatMap((pavement, index) => [
      ...thicknessWarnings(job.pavements[index]?.layers ?? [], pavement),
      ...shapesOf(job, pavement, index),
      ...digWarnings(job, pavement),
      ...gradeWarnings(job, pavement),
      ...nearbyWarnings(pavement),
    ]),
    ...lines.flatMap((line) => [
      ...lineWarnings(line),
      ...(laid.has(line.pavement) ? [] : slopeWarnings(job, line)),
      ...rodWarnings(line, plan),
    ]),
    ...stakesInDig(job, pavements),
  ];
}

function shapesOf(job: ReadJob, { name }: PavementPlan, index: number): PlanWarning[] {
  const pavement = job.pavements[index];
  return pavement === undefined ? [] : shapeWarnings(job, pavement, name);
}

function digWarnings(job: ReadJob, plan: PavementPlan): PlanWarning[] {
  const { name, oldSurface, areas, earthwork } = plan;
  const found: PlanWarning[] = plan.digClosesUp ? [warning('DIG_CLOSES_UP', name)] : [];
  for (const corner of plan.digLongMitres) {
    found.push(warning('DIG_RUNS_OUT', name, { edge: corner + 1 }));
  }
  if (earthwork !== null) {
    found.push(...earthWarnings(name, earthwork));
  } else {
    if (job.existingLevels !== undefined) found.push(warning('NO_FINISHED_SURFACE', name));
    found.push(...depthWarnings(plan));
  }
  if (oldSurface !== null && oldSurface.area.compare(areas.dig) > 0) {
    found.push(
      warning('OLD_SURFACE_WIDER_THAN_DIG', name, { area: oldSurface.area, dig: areas.dig }),
    );
  }
  return found;
}

function depthWarnings({ name, dig }: PavementPlan): PlanWarning[] {
  if (dig.depth.isNegative()) {
    return [warning('FILL_NEEDED', name, { fill: dig.depth.abs() })];
  }
  if (!dig.soil.isNegative()) return [];
  const values = { dig: dig.depth, fill: dig.soil.abs() };
  return [warning('OLD_SURFACE_DEEPER_THAN_DIG', name, values)];
}

/** Less than this is float noise. */
const NOISE = length('0.001', 'mm');

function earthWarnings(name: string, earthwork: EarthworkPlan): PlanWarning[] {
  const { uncovered, deepestFill, fillArea } = earthwork;
  const gap = uncovered.isZero() ? [] : [warning('SURFACE_GAP', name, { area: uncovered })];
  if (deepestFill === null || deepestFill.depth.compare(NOISE) < 0) return gap;
  const { depth, x, y } = deepestFill;
  return [...gap, warning('LOW_GROUND', name, { area: fillArea, depth, x, y })];
}

function lineWarnings(line: StringLinePlan): PlanWarning[] {
  const fills = line.stakes
    .filter(({ dig }) => dig?.isNegative() === true)
    .map(({ id, dig }) => warning('FILL_NEEDED', `stake ${id}`, { fill: dig?.abs() ?? '' }));
  if (line.code === 'always-in-line') {
    return [warning('LINE_NOT_CHECKED', `string ${line.id}`), ...fills];
  }
  const code = line.ambiguous ? 'LINE_AMBIGUOUS' : 'STAKE_OUT_OF_LINE';
  const moves = line.moves.map(({ id, distance, direction }) =>
    warning(code, `stake ${id}`, { string: line.id, distance, direction }),
  );
  return [...moves, ...fills];
}

function slopeWarnings(job: ReadJob, line: StringLinePlan): PlanWarning[] {
  return line.slopes
    .filter(({ verdict }) => verdict === 'fail')
    .map(({ from, to, fall }) =>
      warning('FALL_TOO_SMALL', `string ${line.id}, ${from} to ${to}`, {
        fall,
        ...(job.minimumFall === undefined ? {} : { least: job.minimumFall }),
      }),
    );
}

/** Stakes that the dig would take out. */
function stakesInDig(job: ReadJob, pavements: readonly PavementPlan[]): PlanWarning[] {
  const digs = pavements.map((pavement) => ({ name: pavement.name, holds: digOf(pavement) }));
  return job.stringLines.flatMap(({ stakes }) =>
    stakes.flatMap(({ id, x, y }) => {
      const hit = digs.find(({ holds }) => holds({ x, y }));
      return hit === undefined
        ? []
        : [warning('STAKE_IN_DIG', `stake ${id}`, { pavement: hit.name })];
    }),
  );
}
