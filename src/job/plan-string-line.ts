import type { BuildUp } from '../build-up/build-up.js';
import { checkStakeLine, type StakeLine } from '../stakes/check-stake-line.js';
import { stringDepths, type StringDepths } from '../string-line/string-depths.js';
import type { Length } from '../units/quantity.js';
import { given, type Step } from '../working.js';
import type { LiftPlan, StakePlan, StringLinePlan } from './plan.js';
import { planSlopes } from './plan-slopes.js';
import type { Job } from './schema.js';

type StringLine = Job['stringLines'][number];
type Pavement = Job['pavements'][number];

/** A string's plan and the working behind it. */
export interface PlannedStringLine {
  readonly plan: StringLinePlan;
  readonly steps: () => readonly Step[];
}

/** Checks the stakes of a string and finds the depths below it. Internal. */
export function planStringLine(
  job: Job,
  line: StringLine,
  pavement: Pavement,
  stack: BuildUp,
  lifts: readonly LiftPlan[],
): PlannedStringLine {
  const reference = line.reference ?? 'ends';
  const stringHeight = line.height ?? job.stringHeight;
  const check = checkStakeLine({
    stakes: line.stakes.map(({ id, x, y }) => ({ id, x, y })),
    tolerance: job.stakeTolerance,
    reference,
  });
  const depths = depthsOf(line, pavement, stack, stringHeight, check);
  const slopes = planSlopes(line.stakes, pavement.crossFall, job);
  const plan: StringLinePlan = {
    id: line.id,
    pavement: line.pavement,
    stringHeight,
    reference,
    tolerance: job.stakeTolerance,
    ok: check.ok,
    verdict: check.verdict,
    ambiguous: check.ambiguous,
    note: check.note,
    worst: check.worst,
    moves: check.moves,
    stakes: joinStakes(line, check, depths, stringHeight),
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
  ];
  return { plan, steps };
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

function joinStakes(
  line: StringLine,
  check: StakeLine,
  depths: StringDepths,
  stringHeight: Length,
): StakePlan[] {
  return depths.stakes.map((stake, index) => {
    const finish = line.stakes[index]?.finish ?? null;
    const place = check.offsets[index] ?? check.worst;
    return {
      ...stake,
      offset: place.offset,
      inTolerance: place.inTolerance,
      finishElevation: finish,
      stringElevation: finish?.plus(stringHeight) ?? null,
    };
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
