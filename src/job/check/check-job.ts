import { cautionsFor, type Caution, type Cautioned } from '../../sources/cautions.js';
import { worstVerdict, type Verdict } from '../../verdict.js';
import { withWorking, type Step, type Worked } from '../../working.js';
import { mark, requireMarked } from '../mark.js';
import { requirePlannedFigures } from '../require-plan.js';
import type { JobPlan } from '../plan/plan.js';
import { surfacesBelow } from '../plan/surfaces.js';
import { checkPavement, type PavementCheck } from './check-pavement.js';
import { checkSurface, isSame, type SurfaceCheck } from './check-surface.js';
import { readJobReadings, type JobReadings, type ReadReadings } from './read-job-readings.js';

/** The work as built against the plan. */
export interface JobCheck extends Cautioned, Worked {
  /** Tells a check from other results. */
  readonly kind: 'settline-check';
  /** Name of the site. */
  readonly name: string;
  /** The worst verdict of all that was measured. */
  readonly verdict: Verdict;
  /** Levels and thicknesses at the stakes, from the subgrade up, pavement by pavement. */
  readonly surfaces: readonly SurfaceCheck[];
  /** Each pavement of the plan: its build-up, the checks between the stakes, what was not checked. */
  readonly pavements: readonly PavementCheck[];
}

/**
 * Compares readings of the work as built with the plan: levels stake by stake and surface by surface,
 * `d = measured - planned`, + high; between the stakes compaction, flatness, fall, lippage, joint
 * widths and bond lines, each by its own function. Exact: a reading on the limit passes. It says what
 * to do next on each surface, and what was not checked.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param readings - see {@link JobReadings}
 * @returns verdicts, differences, margins and moves [length] and the next step, for each surface; the
 *   checks between the stakes of each pavement
 * @throws `PLAN_INVALID` if it is not a plan, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `DUPLICATE_ID`,
 *   `CONFLICTING_FIELDS`, `REQUIRED`, `LIMIT_NOT_SET`, `EMPTY_LIST`, `UNKNOWN_FIELD`, the codes of the
 *   checks and the reading codes
 * @source derived
 * @example
 * const check = checkJob(planJob(job), {
 *   readings: [
 *     { stake: 'K1', surface: 'subgrade', belowString: '36 3/4 in' },
 *     { stake: 'K2', surface: 'subgrade', belowString: '35 7/8 in' },
 *   ],
 *   tolerances: { subgrade: { over: '0 in', under: '3/4 in' } },
 *   jointWidth: [
 *     {
 *       pavement: 'court',
 *       place: 'by the gate',
 *       readings: [{ id: 'a', width: '1/8 in' }],
 *       tolerance: 'paver-guide-in',
 *     },
 *   ],
 * });
 * check.verdict //=> 'fail'
 * check.surfaces[0]?.next.stakes //=> ['K2']
 * check.pavements[0]?.checks.map(({ place, check }) => `${place}: ${check.verdict}`) //=> ['by the gate: pass']
 */
export function checkJob(plan: JobPlan, readings: JobReadings): JobCheck {
  requirePlannedFigures(plan);
  const given = readJobReadings(plan, readings);
  const worked: Worked[] = [];
  const surfaces = checkSurfaces(plan, given, worked);
  const pavements = plan.pavements.map((pavement) =>
    checkPavement(pavement, {
      surfaces: surfaces.get(pavement.id) ?? [],
      placed: given.placed.filter((one) => one.pavement === pavement),
    }),
  );
  const made = pavements.flatMap(({ checks }) => checks.map(({ check }) => check));
  const check = {
    kind: 'settline-check',
    name: plan.name,
    verdict: worstVerdict(pavements.flatMap(({ verdict }) => verdict ?? [])),
    surfaces: [...surfaces.values()].flat(),
    pavements,
    cautions: cautionsOf(made.flatMap(({ cautions }) => cautions)),
  } as const;
  return withWorking(mark(check, CHECK), () =>
    [...worked, ...made].flatMap(({ working }): readonly Step[] => working),
  );
}

/** The surfaces that were read, by the id of their pavement. */
const checkSurfaces = (
  plan: JobPlan,
  given: ReadReadings,
  worked: Worked[],
): ReadonlyMap<string, readonly SurfaceCheck[]> =>
  new Map(
    plan.pavements.map((pavement) => [
      pavement.id,
      surfacesBelow(pavement)
        .reverse()
        .flatMap((surface) => {
          const own = given.readings.filter(
            (one) => one.pavement === pavement && isSame(one.surface, surface),
          );
          if (own.length === 0) return [];
          return [checkSurface(plan, { pavement, surface, own, given, worked })];
        }),
    ]),
  );

/** Those of every check of a job, and what the checks add; each once. */
function cautionsOf(added: readonly Caution[]): readonly Caution[] {
  return [
    ...new Set([...cautionsFor('utilities', 'excavation', 'structure', 'drainage'), ...added]),
  ];
}

const CHECK = Symbol.for('settline.check');

/**
 * Refuses what is no check of a job. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireCheck(value: unknown): asserts value is JobCheck {
  requireMarked(value, CHECK, 'the result of checkJob()');
}
