import { attempt, type Outcome } from '../attempt.js';
import { isSettlineError, type FieldPath, type Issue } from '../errors.js';
import { entry, present } from '../invariant.js';
import { LIBRARY_VERSION } from '../library-version.js';
import { SOURCES, type SourceId } from '../sources/catalogue.js';
import { cautionsFor } from '../sources/cautions.js';
import { EXCAVATION_SLOPES } from '../sources/excavation-rules.js';
import type { FrostGroup } from '../sources/frost-figures.js';
import { ROOT_CUT_MARKS } from '../sources/tree-rules.js';
import { deepFreeze, hangWorking } from '../working.js';
import { inField } from './read/in-field.js';
import { normalJob } from './read/normal-job.js';
import { pathInJob } from './read/path-in-job.js';
import { fromRoot, type PlacedStep } from './plan/placed.js';
import { levelsFrom, planLevelBook, planLevelling } from './plan/plan-levels.js';
import { leastFallSteps } from './plan/working/least-fall-steps.js';
import { bookSteps } from './plan/working/level-steps.js';
import { levellingSteps } from './plan/working/levelling-steps.js';
import { layOut } from './plan/lay-out.js';
import { refuseOverlaps } from './plan/areas/refuse-overlaps.js';
import { shareOut } from './plan/areas/share-out.js';
import { stakesById } from './plan/stake-grounds.js';
import { planAllSides } from './plan/areas/shared-sides.js';
import { planPavement, type PlannedPavement } from './plan/plan-pavement.js';
import { PUBLISHED_LEAST_FALL } from './plan/plan-slopes.js';
import { planStringLine, type PlannedStringLine } from './plan/plan-string-line.js';
import { planTotals } from './plan/plan-totals.js';
import { totalSteps } from './plan/working/total-steps.js';
import type { JobPlan, PavementPlan, PlanSource, PlanStep } from './plan/plan.js';
import type { NearbyPlan } from './plan/plan-of-site.js';
import { jobInvalid, readWholeJob } from './read/read-job.js';
import { cautionIdsOf } from './plan/caution-ids.js';
import { markPlan } from './require-plan.js';
import type { JobInput } from './schema/job-input.js';
import type { ReadJob } from './schema/job-shape.js';
import { findWarnings } from './warnings/warnings.js';

/**
 * Plans a whole job: reads the description strictly, then works out for each pavement the build-up,
 * dig, widened areas, earth, lifts and orders, each spot counted once, and for each string the depths of
 * every surface below it, whether its stakes stand in line, and the falls between them.
 *
 * @param job - a {@link JobInput}; not changed. In the example it is examples/cedar-court.json
 * @returns one plain, frozen {@link JobPlan}; `JSON.stringify` keeps all of it, `planFromJSON` reads
 *   it back
 * @throws `JOB_INVALID`: every fault is in `issues` with its field path, code and words
 * @source paver-tolerances
 * @source edge-restraints
 * @example
 * const { stringLines, totals } = planJob(job);
 * stringLines[0]?.surfaces.at(-1)?.belowString.to('in').toString() //=> '36.75'
 * stringLines[0]?.moves[0]?.id //=> 'K2'
 * totals.pavers[0]?.order //=> 6817
 */
export function planJob(job: JobInput): JobPlan {
  return planRead(readWholeJob(job));
}

/**
 * Plans a job of unknown origin, such as an imported JSON file, and returns its faults instead of
 * throwing them.
 *
 * @example
 * const outcome = tryPlanJob({ version: 1 });
 * outcome.ok ? 0 : outcome.errors[0]?.code //=> 'REQUIRED'
 */
export function tryPlanJob(job: unknown): Outcome<JobPlan> {
  return attempt(() => planRead(readWholeJob(job)));
}

/** Plans a job that has been read; what shows only then is at fault at its field of the job. */
const planRead = (job: ReadJob): JobPlan =>
  inField(
    () => planParts(job),
    (path) => pathInJob(job, path),
  );

function planParts(job: ReadJob): JobPlan {
  const levelBook = planLevelBook(job);
  const levelOf = levelsFrom(levelBook);
  const levelling = planLevelling(job, levelOf);
  const stakes = stakesById(job);
  refuseOverlaps(job.pavements);
  const laid = planAll(job.pavements, 'pavements', (pavement, path) =>
    layOut(job, pavement, { path, levelOf, stakes }),
  );
  const owned = shareOut(
    laid.map(({ pavement: { id }, dig, bottom, base }) => ({
      id,
      depth: dig.depth,
      dig: bottom,
      base,
    })),
  );
  const sloped = planAllSides(laid);
  const pavements = planAll(laid, 'pavements', (one, [, index]) => {
    const own = entry(owned, Number(index));
    const sides = entry(sloped, Number(index));
    return planPavement(job, one, { own, sides, stakes, book: levelBook });
  });
  const lines = planAll(job.stringLines, 'stringLines', (line) => {
    const index = job.pavements.findIndex(({ id }) => id === line.pavement);
    const pavement = entry(job.pavements, index);
    const { plan: plannedPavement, surface } = entry(pavements, index);
    return planStringLine(job, line, {
      pavement,
      planned: plannedPavement,
      surface,
      levelling,
      stakes,
    });
  });
  const pavementPlans = pavements.map(({ plan }) => plan);
  const linePlans = lines.map(({ plan }) => plan);
  const totals = planTotals(job, pavementPlans);
  const steps = () => totalSteps(job, totals, pavementPlans);
  const plan = {
    kind: 'settline-plan',
    version: 1,
    libraryVersion: LIBRARY_VERSION,
    figures: 'planned',
    altered: [],
    name: job.name,
    job: normalJob(job),
    minimumFall: job.minimumFall ?? PUBLISHED_LEAST_FALL,
    pavements: pavementPlans,
    stringLines: linePlans,
    levelBook,
    levelling,
    totals,
    warnings: findWarnings(job, {
      pavements: pavementPlans,
      lines: linePlans,
      laid,
      stripped: new Set(pavements.flatMap(({ stripped }) => stripped)),
      stakes,
      levelBook,
      levelling,
    }),
    cautions: cautionsFor(...cautionIdsOf(job)),
    sources: sourcesOf(job, pavementPlans),
  } as const;
  return withPlanWorking(plan, () => [
    ...about('Levels', [], leastFallSteps(job)),
    ...about('Levels', ['levelBook'], bookSteps(job, levelBook)),
    ...about('Levels', ['levelling'], levellingSteps(job, levelling, levelBook)),
    ...allSteps(pavements, lines, steps),
  ]);
}

/** Hangs the working on a plan, made when first asked for, and its mark. */
function withPlanWorking(
  plan: Omit<JobPlan, 'working'>,
  makeSteps: () => readonly PlanStep[],
): JobPlan {
  return deepFreeze(markPlan(hangWorking(plan, makeSteps))) as JobPlan;
}

function allSteps(
  pavements: readonly PlannedPavement[],
  lines: readonly PlannedStringLine[],
  totals: () => readonly PlacedStep[],
): PlanStep[] {
  return [
    ...pavements.flatMap(({ plan, steps }, index) =>
      about(plan.name, ['pavements', index], steps()),
    ),
    ...lines.flatMap(({ plan, steps }, index) =>
      about(`String ${plan.id}`, ['stringLines', index], steps()),
    ),
    ...about('Loads', ['totals'], totals()),
  ];
}

const about = (subject: string, part: FieldPath, steps: readonly PlacedStep[]): PlanStep[] =>
  steps.map((step) => ({ subject, part, ...step, ...fromRoot(step, part) }));

/** Plans every part and gathers the faults of all, with the path of the part in front. */
function planAll<T, R>(
  parts: readonly T[],
  field: string,
  plan: (part: T, path: FieldPath) => R,
): R[] {
  const issues: Issue[] = [];
  const planned: R[] = [];
  parts.forEach((part, index) => {
    const path = [field, index];
    try {
      planned.push(plan(part, path));
    } catch (error) {
      if (!isSettlineError(error)) throw error;
      for (const issue of error.issues) {
        const isPlaced = issue.path[0] === field || error.code === 'JOB_INVALID';
        issues.push({ ...issue, path: isPlaced ? issue.path : [...path, ...issue.path] });
      }
    }
  });
  if (issues.length > 0) throw jobInvalid(issues);
  return planned;
}

function sourcesOf(job: ReadJob, pavements: readonly PavementPlan[]): PlanSource[] {
  const hasOldPaving = (job.oldPaving ?? []).length > 0;
  const used: SourceId[] = ['paver-tolerances', 'edge-restraints'];
  if (hasOldPaving) used.push('debris-training-sheet', 'state-debris-weights');
  if (job.levelBook !== undefined) used.push('level-booking');
  if (job.levelling !== undefined) used.push('grade-with-a-level');
  used.push(...pavements.flatMap(({ minimum }) => minimum.sources));
  used.push(...groundSources(job, pavements));
  used.push(...pavements.flatMap(({ nearby }) => nearbySources(nearby, job)));
  used.push('derived', 'nist-hb44', 'nist-sp811');
  return [...new Set(used)].map((id) => ({ id, ...SOURCES[id] }));
}

/** Where the limits for trees and open digs come from. */
function nearbySources({ trees, gates }: NearbyPlan, { excavation }: ReadJob): SourceId[] {
  return [
    ...trees.map(() => ROOT_CUT_MARKS.diameters.source),
    ...(excavation === undefined ? [] : [EXCAVATION_SLOPES[excavation.soil].source]),
    ...(gates?.gates ?? []).map(({ source }) => source),
  ];
}

/** Where the figures of the ground come from. */
function groundSources({ ground }: ReadJob, pavements: readonly PavementPlan[]): SourceId[] {
  if (ground === undefined) return [];
  const rules = pavements.flatMap((plan) => present(plan.ground, 'ground').thicknesses);
  return [
    ...rules.flatMap((one) => one.rules.map(({ source }) => source)),
    ...(ground.frost === undefined
      ? []
      : (['frost-depth-coefficient', 'conductivity-equations', 'surface-factors'] as const)),
    ...(ground.cbr === undefined ? [] : supportSources(ground.frostGroup)),
    ...(ground.plant === undefined ? [] : (['reinstatement-lifts'] as const)),
    ...(ground.optimum === undefined ? [] : (['common-practice'] as const)),
    ...(ground.storm === undefined ? [] : (['rational-method', 'runoff-table'] as const)),
  ];
}

const supportSources = (group: FrostGroup = 'NFS'): SourceId[] => [
  'frost-support-rule',
  ...(group === 'NFS' ? [] : (['frost-support'] as const)),
];
