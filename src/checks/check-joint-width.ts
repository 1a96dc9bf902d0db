import { makeReader } from '../input/reader.js';
import { max, min, sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { divideRatios, ratioToNumber, wholeRatio } from '../units/ratio.js';
import type { Decimal } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import type { Verdict } from '../verdict.js';
import { given } from '../working.js';
import {
  judge,
  layerCheck,
  marginOf,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { FRACTION, SMALL } from './limits.js';
import { readReadings } from './read-readings.js';
import { readBetween, readUncertainty, type BetweenInput, type SetWith } from './tolerance.js';

/** A joint as measured. */
export interface JointReadingInput {
  readonly id: string;
  readonly width: LengthInput;
}

/** Joint widths against their limits; the `value` of a reading is its width. */
export interface JointWidthCheck extends LayerCheck<Length> {
  readonly check: 'joint-width';
  /** Joints within the limits over all, 0 to 1; those too close to tell are not counted. */
  readonly share: number;
  readonly narrowest: Length;
  readonly widest: Length;
  readonly average: Length;
  readonly readings: readonly CheckedReading[];
  readonly outOfTolerance: readonly CheckedReading[];
}

/**
 * Checks joint widths: `least <= w <= most` for each joint, and the share of joints that keep to it.
 * Exact: a joint on a limit passes. The layer passes where the share is at least `leastShare`.
 *
 * @param options.readings - each `id` once, with its `width` [length, not negative]
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits joints, or your own `least`, `most`
 *   or both [length]
 * @param options.leastShare - of joints that must be within, a fraction 0 to 1, default 1: all
 * @param options.uncertainty - how far a width can be off, either way [length], default none
 * @returns verdict, share, narrowest, widest and average width [length]; each joint with margin,
 *   verdict and how far to open or close it to the nearest limit
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source ufgs-02780
 * @example
 * const check = checkJointWidth({
 *   readings: [
 *     { id: 'a', width: '2 mm' },
 *     { id: 'b', width: '3 mm' },
 *     { id: 'c', width: '6 mm' },
 *   ],
 *   tolerance: 'paver-guide-mm',
 * });
 * check.share.toFixed(2) //=> '0.67'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'mm' })}`) //=> ['c: close up 1 mm']
 */
export function checkJointWidth(options: {
  readonly readings: readonly JointReadingInput[];
  readonly tolerance: SetWith<'joint'> | BetweenInput;
  readonly leastShare?: number | string;
  readonly uncertainty?: LengthInput;
}): JointWidthCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const rows = readReadings(reader, fields['readings'], (row, path) => ({
    width: reader.quantity('length', row['width'], [...path, 'width'], SMALL),
  }));
  const field = { reader, value: fields['tolerance'], words: 'joint width' };
  const rules = { dimension: 'length', rule: SMALL } as const;
  const limits = readBetween(field, (set) => set.joint, rules);
  const leastShare = reader.number(fields['leastShare'] ?? 1, ['leastShare'], FRACTION);
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const { least, most } = limits;
  const readings = rows.map(({ id, width }) =>
    judge({ id, value: width, limits: { least, most }, uncertainty }, (value) =>
      move(most !== null && value.compare(most) > 0 ? 'close' : 'open', marginOf(value, limits)),
    ),
  );
  const count = (...verdicts: readonly Verdict[]) =>
    readings.filter(({ verdict }) => verdicts.includes(verdict)).length;
  const within = count('pass');
  const widths = readings.map(({ value }) => value);
  const parts = {
    check: 'joint-width',
    subject: 'joints',
    share: ratioToNumber(divideRatios(wholeRatio(within), wholeRatio(readings.length))),
    narrowest: min(widths),
    widest: max(widths),
    average: sum(widths).dividedBy(widths.length),
    limits: { least, most },
    origin: limits,
    readings,
    verdict: verdictOnShare(leastShare.times(readings.length), {
      within,
      atBest: count('pass', 'unclear'),
    }),
  } as const;
  return layerCheck(parts, () => [
    {
      title: 'Share of joints within the limits',
      formula: 'p = n / N',
      given: [
        given('n', 'joints within', within),
        given('N', 'joints measured', readings.length),
        ...(least === null ? [] : [given('j0', 'least width', least)]),
        ...(most === null ? [] : [given('j1', 'largest width', most)]),
        given('p0', 'least share', leastShare),
      ],
      result: given('p', 'share', parts.share),
      source: sourceOf(limits),
    },
  ]);
}

/** Whether enough joints are within: surely, at best, or not even then. */
function verdictOnShare(
  needed: Decimal,
  { within, atBest }: { readonly within: number; readonly atBest: number },
): Verdict {
  if (needed.lte(within)) return 'pass';
  return needed.lte(atBest) ? 'unclear' : 'fail';
}
