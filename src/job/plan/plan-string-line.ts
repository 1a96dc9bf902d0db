import type { BuildUp } from '../../build-up/build-up.js';
import { entry } from '../../invariant.js';
import { judgeLine, type StakeLine } from '../../stakes/check-stake-line.js';
import { stringDepths, type StringDepths } from '../../string-line/string-depths.js';
import { stringSag } from '../../string-line/string-sag.js';
import type { Length } from '../../units/quantity.js';
import type { Worked } from '../../working.js';
import { inField } from '../read/in-field.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOf } from '../schema/string-height.js';
import type { FinishSurface } from './finish-surface.js';
import { oldPavingOf, strippedAt } from './plan-old-paving.js';
import type { PlacedStep } from './placed.js';
import { rodsAt, rodSurfaces } from './plan-rods.js';
import { planSlopes } from './plan-slopes.js';
import type { StakePlan, StringLinePlan, StringSagPlan } from './plan.js';
import { isMeasuredFrom, stakesOf, type Stake, type StringLine } from './stake-grounds.js';
import type { LineBasis } from './string-basis.js';
import { stringSteps } from './working/string-steps.js';
import { surfacesBelowString } from './surfaces.js';

/** A string's plan with its working. */
export interface PlannedStringLine {
  readonly plan: StringLinePlan;
  readonly steps: () => readonly PlacedStep[];
}

/** Checks the stakes of a string and finds the depths below it. Internal. */
export function planStringLine(
  job: ReadJob,
  line: StringLine,
  basis: LineBasis,
): PlannedStringLine {
  const { pavement, planned, surface } = basis;
  const own = stakesOf(line, basis.stakes);
  const reference = line.reference ?? 'ends';
  const check = judgeLine({ stakes: own, tolerance: job.stakeTolerance, reference });
  const depths = depthsOf(job, line, { own, planned, check });
  const { stringHeight } = depths;
  const finishes = own.map((stake) => finishAt(stake, surface));
  const slopes = planSlopes(
    own.map((stake, index) => ({ ...stake, finish: finishes[index]?.finishElevation ?? null })),
    { crossSlope: pavement.crossSlope, surface },
    job,
  );
  const rods = {
    surfaces: basis.levelling === null ? [] : rodSurfaces(planned, stringHeight),
    job,
    levelling: basis.levelling,
  };
  const sags = planSags(job, depths.stakes);
  const plan: StringLinePlan = {
    id: line.id,
    pavement: line.pavement,
    stringHeight,
    reference,
    tolerance: job.stakeTolerance,
    ok: check.ok,
    code: check.code,
    ambiguous: check.ambiguous,
    note: check.note,
    worst: check.worst,
    moves: check.moves,
    stakes: depths.stakes.map((stake, index): StakePlan => {
      const place = entry(check.offsets, index);
      const finish = entry(finishes, index);
      return {
        ...stake,
        offset: place.offset,
        inTolerance: place.inTolerance,
        ...finish,
        stringElevation: finish.finishElevation?.plus(stringHeight) ?? null,
        rods: rodsAt(finish.finishElevation, rods),
      };
    }),
    slopes: slopes.map(({ slope }) => slope),
    surfaces: surfacesBelowString(planned, stringHeight),
    sags: sags.plans,
  };
  const steps = () =>
    stringSteps({ job, line, plan, planned, check, depths, slopes, sags: sags.worked, basis });
  return { plan, steps };
}

type Finish = Pick<StakePlan, 'finishElevation' | 'finishFrom' | 'extrapolated'>;

const NO_FINISH: Finish = { finishElevation: null, finishFrom: null, extrapolated: false };

/** Finished grade at a stake: its own level, or that of the fixed levels. */
function finishAt(stake: Stake, surface: FinishSurface | null): Finish {
  if (stake.finish !== undefined) {
    return { finishElevation: stake.finish, finishFrom: 'stake', extrapolated: false };
  }
  if (surface === null) return NO_FINISH;
  const { elevation, extrapolated } = surface(stake);
  return { finishElevation: elevation, finishFrom: 'fixed-levels', extrapolated };
}

function depthsOf(
  job: ReadJob,
  line: StringLine,
  {
    own,
    planned,
    check,
  }: {
    readonly own: readonly Stake[];
    readonly planned: { readonly buildUp: BuildUp };
    readonly check: StakeLine;
  },
): StringDepths {
  const laid = oldPavingOf(job, line.pavement);
  return stringDepths({
    buildUp: planned.buildUp,
    stringHeight: heightOf(job, line),
    stakes: own.map((stake, index) => {
      const { id, ground } = stake;
      const { station } = entry(check.offsets, index);
      if (ground === undefined || !isMeasuredFrom(line, stake)) return { id, station };
      return { id, station, ground, removedSurface: strippedAt(stake, laid) };
    }),
  });
}

/** Sag of the string between neighbouring stakes, if its weight and tension are given. */
function planSags(
  { string }: ReadJob,
  stakes: readonly { readonly id: string; readonly station: Length }[],
): { readonly plans: readonly StringSagPlan[]; readonly worked: readonly Worked[] } {
  if (string === undefined) return { plans: [], worked: [] };
  const spans = stakes.slice(1).map((to, index) => {
    const from = entry(stakes, index);
    const span = to.station.minus(from.station).abs();
    const sag = inField(
      () => stringSag({ span, ...string }),
      () => ['string'],
    );
    return { sag, plan: { from: from.id, to: to.id, sag: sag.sagAtMidspan } };
  });
  return { plans: spans.map(({ plan }) => plan), worked: spans.map(({ sag }) => sag) };
}
