import { entry, lastOf } from '../../invariant.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { OldPavingOfJob } from '../plan/plan-old-paving.js';
import { PUBLISHED_LEAST_FALL } from '../plan/plan-slopes.js';
import type { JobPlan, PavementPlan, PlanWarning, StringLinePlan } from '../plan/plan.js';
import type { StakesById } from '../plan/stake-grounds.js';
import type { ReadJob } from '../schema/job-shape.js';
import { footingWarnings, waterWarnings } from './building-warnings.js';
import { crossSlopeWarnings, existingWarnings, groundWarnings } from './contradictions.js';
import { curveWarnings } from './curve-warnings.js';
import { digWarnings, stakeWarnings, topWarnings } from './dig-warnings.js';
import { edgeWarnings } from './edge-warnings.js';
import { existingSurface } from './existing-surface.js';
import { gateWarnings } from './gate-warnings.js';
import { reachWarnings } from './grade-reach.js';
import { groundBlockWarnings } from './ground-warnings.js';
import { gradeWarnings, levelWarnings, rodWarnings } from './level-warnings.js';
import { materialWarnings } from './material-warnings.js';
import { nearbyWarnings, shapeWarnings } from './site-warnings.js';
import { steepSpans, steepSurfaces } from './slope-warnings.js';
import { stringWarnings } from './string-warnings.js';
import { thicknessWarnings } from './thickness-warnings.js';
import { warning } from './warning.js';

/** What warnings are found from, beside the job. Internal. */
export interface WarningBasis extends Pick<JobPlan, 'levelBook' | 'levelling'> {
  readonly pavements: readonly PavementPlan[];
  readonly lines: readonly StringLinePlan[];
  /** The pavements as laid out, in the same order. */
  readonly laid: readonly LaidOut[];
  /** The old paving of the job that lies in a dig. */
  readonly stripped: ReadonlySet<OldPavingOfJob>;
  readonly stakes: StakesById;
}

/** What a crew should look at before it digs. Internal. */
export function findWarnings(job: ReadJob, basis: WarningBasis): PlanWarning[] {
  const { pavements, laid } = basis;
  const existingAt = existingSurface(job, laid);
  return [
    ...levelWarnings(basis),
    ...materialWarnings(job),
    ...edgeWarnings(job.pavements),
    ...pavements.flatMap((plan, index) => {
      return pavementWarnings(job, entry(laid, index), { plan, basis });
    }),
    ...topWarnings(pavements),
    ...lineWarnings(job, basis, existingAt),
    ...groundWarnings(laid, existingAt),
    ...stakeWarnings(job, pavements),
    ...unusedOldPaving(job, basis),
  ];
}

/** Old paving that lies in no dig. */
const unusedOldPaving = (
  { oldPaving = [] }: ReadJob,
  { stripped }: Pick<WarningBasis, 'stripped'>,
): PlanWarning[] =>
  oldPaving.flatMap((old, index) =>
    stripped.has(old) ? [] : [warning('OLD_PAVING_UNUSED', `old ${old.material} ${index + 1}`)],
  );

function pavementWarnings(
  job: ReadJob,
  laid: LaidOut,
  { plan, basis: { lines, stakes } }: { readonly plan: PavementPlan; readonly basis: WarningBasis },
): PlanWarning[] {
  const own = lines.filter(({ pavement }) => pavement === plan.id);
  return [
    ...thicknessWarnings(laid.pavement.layers, plan),
    ...shapeWarnings(job, laid.pavement, plan.name),
    ...digWarnings(job, plan),
    ...gateWarnings(job, laid, plan),
    ...footingWarnings(laid),
    ...gradeWarnings(job, plan),
    ...reachWarnings(laid),
    ...steepSurfaces(laid, plan),
    ...waterWarnings(job, laid),
    ...crossSlopeWarnings(laid, own, stakes),
    ...existingWarnings(laid),
    ...nearbyWarnings(job, plan),
    ...groundBlockWarnings(job, plan),
  ];
}

function lineWarnings(
  job: ReadJob,
  basis: WarningBasis,
  existingAt: ReturnType<typeof existingSurface>,
): PlanWarning[] {
  const { pavements, laid, lines, stakes } = basis;
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  return lines.flatMap((line) => {
    const index = pavements.findIndex(({ id }) => id === line.pavement);
    const [plan, one] = [entry(pavements, index), entry(laid, index)];
    const isLaid = plan.grade !== null;
    return [
      ...rowWarnings(line),
      ...(isLaid ? [] : [...flatSpans(job, line), ...steepSpans(line, plan)]),
      ...stringWarnings({ job, line, laid: one, stakes, existingAt, least }),
      ...curveWarnings(job, line, { laid: one, stakes }),
      ...rodWarnings(line, basis),
    ];
  });
}

function rowWarnings(line: StringLinePlan): PlanWarning[] {
  const fills = line.stakes.flatMap(({ id, dig }) =>
    dig?.isNegative() === true ? [warning('FILL_NEEDED', `stake ${id}`, { fill: dig.abs() })] : [],
  );
  if (line.code === 'always-in-line') {
    return [warning('LINE_NOT_CHECKED', `string ${line.id}`), ...fills];
  }
  const code = line.ambiguous ? 'LINE_AMBIGUOUS' : 'STAKE_OUT_OF_LINE';
  const facing = { from: entry(line.stakes, 0).id, to: lastOf(line.stakes).id };
  const moves = line.moves.map(({ id, distance, direction }) =>
    warning(code, `stake ${id}`, { string: line.id, distance, direction, ...facing }),
  );
  return [...moves, ...fills];
}

function flatSpans(job: ReadJob, line: StringLinePlan): PlanWarning[] {
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  return line.slopes
    .filter(({ verdict }) => verdict === 'fail')
    .map(({ from, to, fall }) =>
      warning('FALL_TOO_SMALL', `string ${line.id}, ${from} to ${to}`, { fall, least }),
    );
}
