import type { BuildUp } from '../../build-up/build-up.js';
import { judgeLine, type StakeLine } from '../../stakes/check-stake-line.js';
import { stringDepths, type StringDepths } from '../../string-line/string-depths.js';
import { stringSag } from '../../string-line/string-sag.js';
import type { Length } from '../../units/quantity.js';
import { formulaStep, given, type Step, type Worked } from '../../working.js';
import { inField } from '../read/in-field.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { FinishSurface } from './finish-surface.js';
import { oldPavingOf, strippedAt } from './plan-old-paving.js';
import { rodsAt, rodSteps, rodSurfaces } from './plan-rods.js';
import { planSlopes } from './plan-slopes.js';
import type {
  LevellingPlan,
  PavementPlan,
  StakePlan,
  StringLinePlan,
  StringSagPlan,
} from './plan.js';
import {
  heightOf,
  isMeasuredFrom,
  stakesOf,
  type Stake,
  type StakesById,
  type StringLine,
} from './stake-grounds.js';
import { surfacesBelowString } from './surfaces.js';

type Pavement = ReadJob['pavements'][number];

/** A string's plan with its working. */
export interface PlannedStringLine {
  readonly plan: StringLinePlan;
  readonly steps: () => readonly Step[];
}

/** The pavement and the levels of a string. Internal. */
export interface LineBasis {
  readonly pavement: Pavement;
  readonly planned: PavementPlan;
  /** Finished grade through fixed levels; null if the stakes give it. */
  readonly surface: FinishSurface | null;
  readonly levelling: LevellingPlan | null;
  readonly stakes: StakesById;
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
  const stringHeight = heightOf(job, line);
  const check = judgeLine({ stakes: own, tolerance: job.stakeTolerance, reference });
  const depths = depthsOf(job, line, { own, planned, stringHeight, check });
  const finishes = own.map((stake) => finishAt(stake, surface));
  const slopes = planSlopes(
    own.map((stake, index) => ({ ...stake, finish: finishes[index]?.finishElevation ?? null })),
    { crossFall: pavement.crossFall, surface },
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
    surfaces: surfacesBelowString(planned, stringHeight),
    sags: sags.plans,
  };
  const steps = () => [
    ...depths.working,
    ...surfaceSteps(plan),
    ...check.working,
    ...slopes.flatMap(({ steps: made }) => made()),
    ...rodSteps(basis.levelling, plan.stakes),
    ...sags.worked.flatMap(({ working }) => working),
  ];
  return { plan, steps };
}

type Finish = Pick<StakePlan, 'finishElevation' | 'finishFrom' | 'carriedOn'>;

const NO_FINISH: Finish = { finishElevation: null, finishFrom: null, carriedOn: false };

/** Finished grade at a stake: its own level, or that of the fixed levels. */
function finishAt(stake: Stake, surface: FinishSurface | null): Finish {
  if (stake.finish !== undefined) {
    return { finishElevation: stake.finish, finishFrom: 'stake', carriedOn: false };
  }
  if (surface === null) return NO_FINISH;
  const { elevation, carriedOn } = surface(stake);
  return { finishElevation: elevation, finishFrom: 'fixed-levels', carriedOn };
}

function depthsOf(
  job: ReadJob,
  line: StringLine,
  {
    own,
    planned,
    stringHeight,
    check,
  }: {
    readonly own: readonly Stake[];
    readonly planned: { readonly buildUp: BuildUp };
    readonly stringHeight: Length;
    readonly check: StakeLine;
  },
): StringDepths {
  const laid = oldPavingOf(job, line.pavement);
  return stringDepths({
    buildUp: planned.buildUp,
    stringHeight,
    stakes: own.map((stake, index) => {
      const { id, ground } = stake;
      const station = check.offsets[index]?.station ?? stringHeight;
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
    const from = stakes[index] ?? to;
    const span = to.station.minus(from.station).abs();
    const sag = inField(
      () => stringSag({ span, ...string }),
      () => ['string'],
    );
    return { sag, plan: { from: from.id, to: to.id, sag: sag.sagAtMidspan } };
  });
  return { plans: spans.map(({ plan }) => plan), worked: spans.map(({ sag }) => sag) };
}

function surfaceSteps({ stringHeight, surfaces }: StringLinePlan): Step[] {
  return surfaces
    .filter(({ kind }) => kind === 'lift')
    .map(({ surface, belowFinish, belowString }) =>
      formulaStep({
        title: `${surface} below the string`,
        formula: 'B = h + d',
        given: [
          given('h', 'string above finished grade', stringHeight),
          given('d', 'below finished grade', belowFinish),
        ],
        result: given('B', 'below the string', belowString),
        source: 'derived',
      }),
    );
}
