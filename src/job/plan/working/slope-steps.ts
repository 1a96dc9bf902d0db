import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import { placeBy, take, worked, done, type PlacedStep } from '../placed.js';
import { pavementAt, stakeAt, stakeOfJob, type StringBasis } from '../string-basis.js';
import type { StakePlan, StringLinePlan } from '../plan-of-strings.js';

/** The working of the falls between neighbouring stakes. Internal. */
export function slopeSteps(of: StringBasis): PlacedStep[] {
  const { plan, basis, slopes } = of;
  const indexOf = (id: string) => plan.stakes.findIndex((stake) => stake.id === id);
  return slopes.flatMap(({ slope, crossSlope, steps }, n) => {
    const [a, b] = [indexOf(slope.from), indexOf(slope.to)];
    const at = (field: string): FieldPath => ['slopes', n, field];
    const ends = (axis: 'x' | 'y') =>
      take(
        axis,
        `${axis} of both stakes`,
        [stakeAt(of, a, axis), stakeAt(of, b, axis)],
        stakeOfJob(of, slope.from, axis),
        stakeOfJob(of, slope.to, axis),
      );
    const name = `cross slope from ${slope.from} to ${slope.to}`;
    const z1 = [['stakes', a, 'finishElevation']];
    const z2 = [['stakes', b, 'finishElevation']];
    const isGiven = basis.surface === null && basis.pavement.crossSlope !== undefined;
    const placed = placeBy(
      steps().map((step) => renameCross(step, name)),
      { s: [at('slope')], f: [at('fall')] },
      {
        z1,
        z2,
        L: [at('run')],
        s: [at('slope')],
        f: [at('fall')],
        f0: [['plan', 'minimumFall']],
        ...(isGiven ? { c: [pavementAt(of, 'job', 'crossSlope')] } : {}),
      },
    );
    const rise = worked({
      title: `Rise from ${slope.from} to ${slope.to}`,
      formula: 'r = z2 - z1',
      takes: [
        take('z1', `finished grade at ${slope.from}`, finishOf(plan.stakes[a], slope), ...z1),
        take('z2', `finished grade at ${slope.to}`, finishOf(plan.stakes[b], slope), ...z2),
      ],
      result: given('r', `rise from ${slope.from} to ${slope.to}`, slope.rise),
      gives: [at('rise')],
    });
    const cross =
      basis.surface === null
        ? []
        : [
            done({
              title: `Cross slope from ${slope.from} to ${slope.to}`,
              procedure: 'planJob',
              method:
                'Returns the fall of finished grade square to the string, midway between the stakes.',
              takes: [ends('x'), ends('y')],
              result: given('c', name, crossSlope),
              gives: [],
            }),
          ];
    return [
      worked({
        title: `Run from ${slope.from} to ${slope.to}`,
        formula: 'L = sqrt((x[2] - x[1])^2 + (y[2] - y[1])^2)',
        takes: [ends('x'), ends('y')],
        result: given('L', `run from ${slope.from} to ${slope.to}`, slope.run),
        gives: [at('run')],
      }),
      rise,
      ...cross,
      ...placed,
    ];
  });
}

const renameCross = (step: PlacedStep, name: string): PlacedStep => ({
  ...step,
  given: step.given.map((input) => (input.symbol === 'c' ? { ...input, name } : input)),
});

const finishOf = (stake: StakePlan | undefined, { rise }: StringLinePlan['slopes'][number]) =>
  stake?.finishElevation ?? rise;
