import { entry } from '../invariant.js';
import { fromSI, type Length } from '../units/quantity.js';
import { divideRatios, wholeRatio, type Ratio } from '../units/ratio.js';
import { formulaStep, given, procedureStep, type Step } from '../working.js';
import { lineSums, sumsWithout, timesCount } from './line-of-stakes.js';
import type { LocalStake } from './plan-stake.js';
import { leftSquares } from './profile-outliers.js';
import type { ProfileStake } from './profile-stake.js';
import type { StakeAgainstOthers } from './stake-against-others.js';

const IN_LINE = 'the others are exactly in line';

const metres = (value: Ratio): Length => fromSI('length', value);

/** The working of the value that an outlier must exceed. Internal. */
export const criticalStep = (of: {
  readonly count: number;
  readonly significance: number;
  readonly critical: number;
}): Step =>
  procedureStep({
    title: 'Critical value of a studentized offset',
    procedure: 'outlierCritical',
    method:
      "Takes Student's t that is exceeded with a chance of the significance over twice the number of stakes, for three degrees of freedom less than there are stakes. It returns that value.",
    given: [
      given('n', 'stakes', of.count),
      given('p', 'chance of faulting a good row', of.significance),
    ],
    result: given('tc', 'critical value', of.critical),
    source: 'outlier-guidance',
  });

/** The working of studentized offsets in plan. Internal. */
export const planOutlierSteps = (
  local: readonly LocalStake[],
  found: readonly StakeAgainstOthers[],
): Step[] =>
  found.map(({ id, deleted, studentized }) =>
    procedureStep({
      title: `Stake ${id} against the line of the others`,
      procedure: 'leaveOneOut',
      method:
        'Divides the offset of the stake from the best-fit line of the others by its standard error, which grows with the scatter of the others and with the distance of the stake from their middle. It returns the studentized offset, in floats, or words where the others have no scatter.',
      given: [
        given('n', 'stakes', local.length),
        given('d', 'offset from the line of the others (+ left)', deleted),
      ],
      result: given('t', 'studentized offset', studentized ?? IN_LINE),
      source: 'outlier-guidance',
    }),
  );

/** The working of studentized offsets in profile. Internal. */
export function profileOutlierSteps(
  stakes: readonly ProfileStake[],
  found: readonly StakeAgainstOthers[],
): Step[] {
  const sums = lineSums(stakes.map(({ at }) => at));
  const n = wholeRatio(sums.count);
  const spread = divideRatios(timesCount(sums, sums.xx, [sums.sum.x, sums.sum.x]), n);
  const row = [
    given('n', 'stakes', sums.count),
    given('m', 'mean station of all stakes', metres(divideRatios(sums.sum.x, n))),
    given('S', 'squares of the stations from their mean', fromSI('area', spread)),
  ];
  return stakes.flatMap(({ id, at }, k) => {
    const stake = entry(found, k);
    const s = given('s', 'station', metres(at.x));
    const title = `Mark of stake ${id} against the grade of the others`;
    return [
      formulaStep({
        title: `Leverage of stake ${id}`,
        formula: 'h = 1 / n + (s - m)^2 / S',
        given: [...row, s],
        result: given('h', 'leverage', stake.leverage),
        source: 'outlier-guidance',
      }),
      formulaStep({
        title,
        formula: `t = Q / S > 0 ? d * sqrt(1 - 1 / n - (s - m)^2 / S) / sqrt(Q / (n - 3)) : "${IN_LINE}"`,
        given: [
          given('d', 'above the grade of the others', stake.deleted),
          ...row,
          s,
          given(
            'Q',
            'squares of the others from their grade',
            fromSI('area', leftSquares(sumsWithout(sums, at))),
          ),
        ],
        result: given('t', 'studentized offset', stake.studentized ?? IN_LINE),
        source: 'outlier-guidance',
      }),
    ];
  });
}
