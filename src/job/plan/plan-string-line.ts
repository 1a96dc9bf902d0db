import type { BuildUp } from '../../build-up/build-up.js';
import { checkStakeLine, type StakeLine } from '../../stakes/check-stake-line.js';
import { stringDepths, type StringDepths } from '../../string-line/string-depths.js';
import type { Length } from '../../units/quantity.js';
import { given, type Step } from '../../working.js';
import type { FinishSurface } from './finish-surface.js';
import type { LevellingPlan, LiftPlan, PavementPlan, StakePlan, StringLinePlan } from './plan.js';
import { rodsAt, rodSteps, rodSurfaces } from './plan-rods.js';
import { planSlopes } from './plan-slopes.js';
import type { ReadJob } from '../schema/job-shape.js';

type StringLine = ReadJob['stringLines'][number];
type Pavement = ReadJob['pavements'][number];

/** A string's plan and the working behind it. */
export interface PlannedStringLine {
  readonly plan: StringLinePlan;
  readonly steps: () => readonly Step[];
}

/** What a string stands on. Internal. */
export interface LineBasis {
  readonly pavement: Pavement;
  readonly planned: PavementPlan;
  /** Finished grade by fixed levels; null where the stakes tell. */
  readonly surface: FinishSurface | null;
  readonly levelling: LevellingPlan | null;
}

/** Checks the stakes of a string and finds the depths below it. Internal. */
export function planStringLine(
  job: ReadJob,
  line: StringLine,
  basis: LineBasis,
): PlannedStringLine {
  const { pavement, planned, surface } = basis;
  const { buildUp: stack, lifts } = planned;
  const reference = line.reference ?? 'ends';
  const stringHeight = line.height ?? job.stringHeight;
  const check = checkStakeLine({
    stakes: line.stakes.map(({ id, x, y }) => ({ id, x, y })),
    tolerance: job.stakeTolerance,
    reference,
  });
  const depths = depthsOf(line, pavement, stack, stringHeight, check);
  const finishes = line.stakes.map((stake) => finishAt(stake, surface));
  const slopes = planSlopes(
    line.stakes.map((stake, index) => ({
      ...stake,
      finish: finishes[index]?.finishElevation ?? null,
    })),
    { crossFall: pavement.crossFall, surface },
    job,
  );
  const rods = {
    surfaces: basis.levelling === null ? [] : rodSurfaces(planned, stringHeight),
    job,
    levelling: basis.levelling,
  };
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
      const place = check.offsets[index] ?? check.worst;
      const finish = finishes[index] ?? NO_FINISH;
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
    liftTops: lifts.map(({ lift, belowFinish }) => ({
      lift,
      belowString: stringHeight.plus(belowFinish),
    })),
  };
  const steps = () => [
    ...depths.working,
    ...liftSteps(plan, lifts),
    ...check.working,
    ...slopes.flatMap(({ steps: made }) => made()),
    ...rodSteps(basis.levelling, plan.stakes),
  ];
  return { plan, steps };
}

type Finish = Pick<StakePlan, 'finishElevation' | 'finishFrom' | 'carriedOn'>;

const NO_FINISH: Finish = { finishElevation: null, finishFrom: null, carriedOn: false };

/** Finished grade at a stake: its own, or that of the fixed levels. */
function finishAt(stake: StringLine['stakes'][number], surface: FinishSurface | null): Finish {
  if (stake.finish !== undefined) {
    return { finishElevation: stake.finish, finishFrom: 'stake', carriedOn: false };
  }
  if (surface === null) return NO_FINISH;
  const { elevation, carriedOn } = surface(stake);
  return { finishElevation: elevation, finishFrom: 'fixed-levels', carriedOn };
}

function depthsOf(
  line: StringLine,
  pavement: Pavement,
  stack: BuildUp,
  stringHeight: Length,
  check: StakeLine,
): StringDepths {
  return stringDepths({
    buildUp: stack,
    stringHeight,
    stakes: line.stakes.map(({ id, ground }, index) => ({
      id,
      station: check.offsets[index]?.station ?? stringHeight,
      ...(ground === undefined ? {} : { ground }),
    })),
    ...(pavement.oldSurface === undefined ? {} : { removedSurface: pavement.oldSurface.thickness }),
  });
}

function liftSteps(plan: StringLinePlan, lifts: readonly LiftPlan[]): Step[] {
  return plan.liftTops.map(({ lift, belowString }, index) => ({
    title: `Top of lift ${lift} below the string`,
    formula: 'B = h + d',
    given: [
      given('h', 'string above finished grade', plan.stringHeight),
      given('d', 'lift top below finished grade', lifts[index]?.belowFinish ?? belowString),
    ],
    result: given('B', 'lift top below the string', belowString),
    source: 'derived',
  }));
}
