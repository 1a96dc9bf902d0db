import type { FieldPath } from '../../../errors.js';
import { entry, known } from '../../../invariant.js';
import { given, type StepInput } from '../../../working.js';
import type { Length } from '../../../units/quantity.js';
import { done, place, take, worked, type PlacedStep, type Taken } from '../placed.js';
import { stakeOfJob, type StringBasis } from '../string-basis.js';

/** Names of a stake's place from the first stake, in the working of the line. */
const LISTED = { x: 'stake, along x from the first', y: 'stake, along y from the first' } as const;

type Axis = keyof typeof LISTED;

const placeOf = (id: string, axis: Axis): string => `${id}, along ${axis} from the first stake`;

/** The working of stations, offsets and moves of the stakes of a string. Internal. */
export const rowSteps = (of: StringBasis): PlacedStep[] => [
  ...placeSteps(of),
  ...offsetSteps(of),
  ...stationSteps(of),
  ...moveSteps(of),
];

/** Every stake from the first one. */
function placeSteps(of: StringBasis): PlacedStep[] {
  const { job, plan } = of;
  const isFitted = of.check.working.some(({ kind }) => kind === 'procedure');
  const stakeOf = (id: string) =>
    known(
      job.stakes.find((stake) => stake.id === id),
      'stake',
    );
  const first = entry(plan.stakes, 0).id;
  return plan.stakes.flatMap(({ id }, k) =>
    (['x', 'y'] as const).flatMap((axis) => {
      const [at, from] = [stakeOf(id)[axis], stakeOf(first)[axis]];
      const shown = (name: string) =>
        worked({
          title: `Stake ${id}, along ${axis} from ${first}`,
          formula: 'd = p - p0',
          takes: [
            take('p', `${axis} of ${id}`, at, stakeOfJob(of, id, axis)),
            take('p0', `${axis} of ${first}`, from, stakeOfJob(of, first, axis)),
          ],
          result: given('d', name, at.minus(from)),
          gives: [],
        });
      const isLast = k === plan.stakes.length - 1;
      return [
        ...(isFitted ? [shown(LISTED[axis])] : []),
        shown(placeOf(id, axis)),
        ...(isLast ? [shown(`last ${LISTED[axis]}`)] : []),
      ];
    }),
  );
}

function offsetSteps({ plan, check }: StringBasis): PlacedStep[] {
  let k = 0;
  return check.working.map((step) => {
    if (step.result.symbol !== 'd') return step;
    const index = k;
    k += 1;
    const gives = [['stakes', index, 'offset'], ...worstOf(plan, index, 'offset')];
    return place({ ...step, given: ownPlace(step, entry(plan.stakes, index).id) }, gives);
  });
}

/** The inputs of an offset, with the stake in the names of its place. */
const ownPlace = (step: PlacedStep, id: string): StepInput[] =>
  step.given.map((input) =>
    input.symbol === 'x' || input.symbol === 'y'
      ? { ...input, name: placeOf(id, input.symbol) }
      : input,
  );

/** The worst stake is one of them. */
function worstOf(
  { worst, stakes }: StringBasis['plan'],
  index: number,
  field: 'offset' | 'station',
): FieldPath[] {
  return stakes[index]?.id === worst.id ? [['worst', field]] : [];
}

/** Stations along the line that the offsets are measured from. */
function stationSteps({ plan, check }: StringBasis): PlacedStep[] {
  const offsets = check.working.filter(({ result }) => result.symbol === 'd');
  return plan.stakes.flatMap(({ id, station }, k) => {
    const step = entry(offsets, k);
    const isFitted = step.given.some(({ symbol }) => symbol === 'ux');
    const takes = ownPlace(step, id).map((input): Taken => ({ input, from: [] }));
    return [
      worked({
        title: `Station of stake ${id}`,
        formula: isFitted
          ? 's = ux * (x - x0) + uy * (y - y0)'
          : 's = (x * x2 + y * y2) / sqrt(x2^2 + y2^2)',
        takes,
        result: given('s', `station of ${id}`, station),
        gives: [['stakes', k, 'station'], ...worstOf(plan, k, 'station')],
      }),
    ];
  });
}

/** Moves onto the line, or onto that of the other stakes. */
function moveSteps(of: StringBasis): PlacedStep[] {
  const { plan } = of;
  return plan.moves.map(({ id, distance }, n) => {
    const k = plan.stakes.findIndex((stake) => stake.id === id);
    const offset: Length = entry(plan.stakes, k).offset;
    const shown = {
      title: `Move of stake ${id}`,
      result: given('m', `move of ${id}`, distance),
      gives: [['moves', n, 'distance']],
    };
    if (offset.abs().equals(distance)) {
      const takes = [take('d', 'offset (+ left)', offset, ['stakes', k, 'offset'])];
      return worked({ ...shown, formula: 'm = abs(d)', takes });
    }
    return done({
      ...shown,
      procedure: 'checkStakeLine',
      method: 'Finds the line of the other stakes, and returns how far the stake is off it.',
      takes: plan.stakes.map((stake, index) =>
        take(`d${index + 1}`, `offset of ${stake.id}`, stake.offset, ['stakes', index, 'offset']),
      ),
    });
  });
}
