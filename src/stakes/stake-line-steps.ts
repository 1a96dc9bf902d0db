import { entry, lastOf } from '../invariant.js';
import { fromSI, type Length } from '../units/quantity.js';
import { ONE_RATIO, ratioToNumber, type Ratio } from '../units/ratio.js';
import { share, type Vector } from '../units/vector.js';
import { derivedStep, given, procedureStep, type Step, type StepInput } from '../working.js';
import type { PlanLine } from './line-of-stakes.js';
import type { LocalStake } from './plan-stake.js';

interface Shown {
  readonly local: readonly LocalStake[];
  readonly line: PlanLine;
  readonly reference: 'ends' | 'best-fit';
}

interface Offset {
  readonly id: string;
  readonly offset: Length;
}

const metres = (value: Ratio): Length => fromSI('length', value);

/** The working of offsets from the line of a row. Internal. */
export function stakeLineSteps(offsets: readonly Offset[], of: Shown): Step[] {
  // two stakes are their own best-fit line
  const isFitted = of.reference === 'best-fit' && of.local.length > 2;
  return isFitted ? offsetsFromBest(offsets, of) : offsetsFromEnds(offsets, of);
}

const placeOf = ({ x, y }: Vector): StepInput[] => [
  given('x', 'stake, along x from the first', metres(x)),
  given('y', 'stake, along y from the first', metres(y)),
];

const placesOf = (local: readonly LocalStake[]): StepInput[] => [
  given(
    'x',
    'stake, along x from the first',
    local.map(({ at }) => metres(at.x)),
  ),
  given(
    'y',
    'stake, along y from the first',
    local.map(({ at }) => metres(at.y)),
  ),
];

const HOW = { ends: 'the line through the end stakes', 'best-fit': 'the best-fit line' } as const;

function offsetsFromEnds(offsets: readonly Offset[], { local, reference }: Shown): Step[] {
  const last = lastOf(local).at;
  return offsets.map(({ id, offset }, k) =>
    derivedStep({
      title: `Stake ${id} against ${HOW[reference]}`,
      formula: 'd = (x2 * y - y2 * x) / sqrt(x2^2 + y2^2)',
      given: [
        ...placeOf(entry(local, k).at),
        given('x2', 'last stake, along x from the first', metres(last.x)),
        given('y2', 'last stake, along y from the first', metres(last.y)),
      ],
      result: given('d', 'offset (+ left)', offset),
    }),
  );
}

function offsetsFromBest(offsets: readonly Offset[], { local, line, reference }: Shown): Step[] {
  const { x: ux, y: uy } = share(line.along, ONE_RATIO, line.size);
  const direction = [ratioToNumber(ux), ratioToNumber(uy)] as const;
  const fit = procedureStep({
    title: 'Best-fit line of the stakes',
    procedure: 'checkStakeLine',
    method:
      'Finds the line through the mean of the stakes with the smallest sum of squared distances of the stakes, measured square to it. It returns the direction of the line from the first stake to the last, as its parts along x and y for a length of one.',
    given: placesOf(local),
    result: given('ux, uy', 'direction of the line', direction),
    source: 'derived',
  });
  const [x0, y0] = [metres(line.point.x), metres(line.point.y)];
  const point = procedureStep({
    title: 'Point of the best-fit line',
    procedure: 'checkStakeLine',
    method:
      'Drops the first stake square onto the line, and returns the point there, along x and y from the stake.',
    given: placesOf(local),
    result: given('x0, y0', 'point of the line', [x0, y0]),
    source: 'derived',
  });
  const known = [
    given('x0', 'point of the line', x0),
    given('y0', 'point of the line', y0),
    given('ux', 'direction of the line', direction[0]),
    given('uy', 'direction of the line', direction[1]),
  ];
  const steps = offsets.map(({ id, offset }, k) =>
    derivedStep({
      title: `Stake ${id} against ${HOW[reference]}`,
      formula: 'd = ux * (y - y0) - uy * (x - x0)',
      given: [...placeOf(entry(local, k).at), ...known],
      result: given('d', 'offset (+ left)', offset),
    }),
  );
  return [fit, point, ...steps];
}
