import type { CheckedStake, NextStep, SurfaceCheck } from '../../check/check-surface.js';
import type { SurfaceKind } from '../../plan/surface-kind.js';
import { fault } from '../../../errors.js';
import { choice } from '../../../input/field.js';
import { isPlain } from '../../../input/plain.js';
import { readOptions, shapeOf } from '../../../input/shape.js';
import { shown } from '../../../input/shown.js';
import { isLength } from '../is-measure.js';
import { readSystem, systemField, type DescribePartOptions } from '../layout/sheet-options.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';
import { unitsOfSheet, type SheetUnits } from '../layout/units-of-sheet.js';

/** How the action at a stake is written. */
export interface DescribeStakeActionOptions {
  /** What was checked: the `kind` of the {@link SurfaceCheck}. */
  readonly kind: SurfaceKind;
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
}

const ACTION_OPTIONS = shapeOf<DescribeStakeActionOptions>()({
  kind: choice<SurfaceKind>(['subgrade', 'lift', 'sub-base', 'base', 'bedding', 'pavers']),
  system: systemField,
});

/**
 * What to do at a stake of a checked surface, in the words of the trade.
 *
 * @param stake - of a {@link SurfaceCheck}
 * @param options - see {@link DescribeStakeActionOptions}
 * @returns for instance `7/8 in high: cut 7/8 in and compact`; `within tolerance` where it passes
 * @throws `WRONG_TYPE` if it is not a stake of a check, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * const { surfaces } = checkJob(planJob(job), {
 *   readings: [{ stake: 'K1', surface: 'base top', belowString: '22 7/8 in' }],
 *   tolerances: { base: { over: '3/8 in', under: '3/8 in' } },
 * });
 * const stake = surfaces[0]?.stakes[0];
 * stake && describeStakeAction(stake, { kind: 'base', system: 'us' })
 * //=> '5/8 in low: loosen the top, spread 13/16 in of loose stone and compact'
 */
export function describeStakeAction(
  stake: CheckedStake,
  options: DescribeStakeActionOptions,
): string {
  if (!isCheckedStake(stake)) {
    throw fault('WRONG_TYPE', `pass a stake of the result of checkJob(), got ${shown(stake)}`);
  }
  const { kind, system } = readOptions(options, ACTION_OPTIONS);
  if (stake.verdict === 'pass') return 'within tolerance';
  const todo = stakeAction(stake, { kind, system });
  if (stake.verdict === 'unclear') return `too close to the limit to tell: ${todo}`;
  const by = unitsOfSheet(system).depthWithUnit(stake.value.abs());
  const off = `${by} ${stake.value.isNegative() ? 'low' : 'high'}`;
  return `${off}: ${todo}`;
}

/** What to do at a stake that does not pass. Internal. */
export const stakeAction = (
  stake: CheckedStake,
  { kind, system }: DescribeStakeActionOptions,
): string =>
  stake.verdict === 'fail' && stake.move !== null
    ? actionWords(stake, kind, unitsOfSheet(system))
    : AGAIN;

/** Where a reading is too close to a limit. Internal. */
export const AGAIN = 'take more readings, then check again';

function isCheckedStake(value: unknown): value is CheckedStake {
  if (!isPlain(value)) return false;
  const { verdict, value: off, move, looseToAdd } = value;
  const isJudged = verdict === 'pass' || verdict === 'unclear' || verdict === 'fail';
  return (
    isJudged && isLength(off) && (move === null || isPlain(move)) && isLengthOrNull(looseToAdd)
  );
}

const isLengthOrNull = (value: unknown): boolean => value === null || isLength(value);

function actionWords(stake: CheckedStake, kind: SurfaceKind, units: SheetUnits): string {
  const isHigh = !stake.value.isNegative();
  const by = units.depthWithUnit(stake.value.abs());
  const loose = units.depthWithUnit(stake.looseToAdd ?? stake.value.abs());
  switch (kind) {
    case 'subgrade':
      return isHigh
        ? `cut ${by} and compact`
        : `fill with base stone, ${loose} loose, and compact; never with soil`;
    case 'bedding':
      return isHigh ? `strike off ${by}` : `add sand and screed up ${by}`;
    case 'pavers':
      return isHigh
        ? `lift, take out ${by} of bedding, lay again and compact`
        : `lift, add ${by} of bedding, lay again and compact; if the bed gets too thick, mend the base`;
    default:
      return isHigh
        ? `take off ${by} and compact`
        : `loosen the top, spread ${loose} of loose stone and compact`;
  }
}

/**
 * The next step on a checked surface, in words.
 *
 * @param check - of a {@link SurfaceCheck}
 * @param options - see {@link DescribePartOptions}
 * @returns for instance `Go on to base top: spread 6 7/16 in loose.`
 * @throws `WRONG_TYPE` if it is not a surface of a check, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * const readings = ['G1', 'G2', 'G3'].map((stake) => ({
 *   stake,
 *   surface: 'subgrade',
 *   belowString: '18 1/4 in',
 * }));
 * const tolerances = { subgrade: { over: '0 in', under: '3/4 in' } };
 * const { surfaces } = checkJob(planJob(job), { readings, tolerances });
 * surfaces[0] && describeNextStep(surfaces[0], { system: 'us' })
 * //=> 'Go on to base top: spread 6 7/16 in loose.'
 */
export function describeNextStep(
  check: Pick<SurfaceCheck, 'next'>,
  options: DescribePartOptions,
): string {
  if (!isPlain(check) || !isNextStep(check.next)) {
    throw fault('WRONG_TYPE', `pass a surface of the result of checkJob(), got ${shown(check)}`);
  }
  const system = readSystem(options);
  const { step, stakes, surface, spread } = check.next;
  const at = stakes.join(', ');
  switch (step) {
    case 'correct':
      return `Correct ${at}, then measure again. Do not cover this surface.`;
    case 'measure-again':
      return `Take more readings at ${at}, then check again before you cover this surface.`;
    case 'measure-rest':
      return `Within tolerance so far. Measure ${at} too before you cover this surface.`;
    case 'go-on': {
      if (surface === null) return 'Within tolerance: this was the last surface.';
      const { depthWithUnit } = unitsOfSheet(system);
      const how = spread === null ? '' : `: spread ${depthWithUnit(spread)} loose`;
      return `Go on to ${surface}${how}.`;
    }
  }
}

const STEPS: readonly unknown[] = ['correct', 'measure-again', 'measure-rest', 'go-on'];
const MOST_STAKES = 10_000;

function isNextStep(value: unknown): value is NextStep {
  if (!isPlain(value)) return false;
  const { step, stakes, surface, spread } = value;
  return (
    STEPS.includes(step) &&
    areTexts(stakes) &&
    (surface === null || typeof surface === 'string') &&
    isLengthOrNull(spread)
  );
}

const areTexts = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= MOST_STAKES &&
  Array.from(value).every((one) => typeof one === 'string');
