import { quantity } from '../input/field.js';
import { TOLERANCE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { lastOf, present } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { adjustedShots, type DayShot } from './adjusted-shots.js';
import { checksOf, type BenchmarkCheck } from './benchmark-checks.js';
import { dayShots, type DayShotInput } from './day-shots.js';
import { heightOf, heightStep, levelUnder, SET_UP, type SetUpInput } from './instrument-height.js';

/** A day of readings from one set-up. */
export interface CloseBenchmarkOptions extends SetUpInput {
  /**
   * Readings in order, 1 to 10 000. Those with `known` are checks on a known mark; the last one is a
   * check.
   */
  readonly shots: readonly DayShotInput[];
  /**
   * Allowable misclosure of a check [length], more than 0 and at most 10 m. You choose it;
   * `allowableMisclosure` works out a rule.
   */
  readonly allowable: LengthInput;
}

const OPTIONS = shapeOf<CloseBenchmarkOptions>()({
  ...SET_UP,
  shots: dayShots,
  allowable: quantity(TOLERANCE_OF_SOME),
});

/** A day of readings closed on a known mark. */
export interface ClosedDay extends Worked {
  /** Elevation of the line of sight in the morning. */
  readonly instrumentHeight: Length;
  /** Misclosure of the last check: computed less known. */
  readonly misclosure: Length;
  /** Allowable misclosure of a check, as given. */
  readonly allowable: Length;
  /** True if every check is within the allowable. */
  readonly isAccepted: boolean;
  /** The checks, in order. */
  readonly checks: readonly BenchmarkCheck[];
  /** The readings, in the order given. */
  readonly shots: readonly DayShot[];
  /** Points whose levels you must not use. */
  readonly suspects: readonly string[];
  /** What to do. */
  readonly note: string;
}

/**
 * Closes a day of readings from one set-up on a known mark: `HI = benchmark + backsight`,
 * `misclosure = HI - closing reading - known`. Between checks within the allowable, the misclosure
 * is deducted evenly in time (or from shot to shot). Shots after the last good check are suspect
 * and are not adjusted. A check at midday halves the number of shots you can lose.
 *
 * @param options - see {@link CloseBenchmarkOptions}
 * @returns height of instrument, misclosure [length, computed less known], whether all is accepted, the
 *   checks, the shots with elevation, correction and adjusted elevation [length], the suspects, what to
 *   do
 * @throws `BOOK_ROW` (no check at the end), `REQUIRED` (some times missing), `NOT_INCREASING`,
 *   `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const day = closeBenchmark({
 *   benchmark: '30 m',
 *   back: '1.42 m',
 *   shots: [
 *     { point: 'N1', reading: '1.31 m' },
 *     { point: 'BM', reading: '1.409 m', known: '30 m' },
 *   ],
 *   allowable: '6 mm',
 * });
 * day.misclosure.to('mm').toString() //=> '11'
 * day.isAccepted //=> false
 * day.suspects //=> ['N1']
 */
export function closeBenchmark(options: CloseBenchmarkOptions): ClosedDay {
  const { benchmark, back, allowable, shots: read } = readOptions(options, OPTIONS);
  const instrumentHeight = heightOf({ benchmark, back });
  const levels = read.map((shot) => ({
    ...shot,
    elevation: levelUnder(instrumentHeight, shot.reading),
  }));
  const checks = checksOf(levels, allowable);
  const shots = adjustedShots(levels, allowable);
  const suspects = shots.flatMap(({ point, status }) => (status === 'suspect' ? [point] : []));
  const misclosure = lastOf(checks).misclosure;
  const day = {
    instrumentHeight,
    misclosure,
    allowable,
    isAccepted: checks.every(({ isAccepted }) => isAccepted),
    checks,
    shots,
    suspects,
    note: noteFor(checks, suspects),
  };
  const last = lastOf(read);
  return withWorking(day, () => [
    heightStep({ benchmark, back }),
    derivedStep({
      title: 'Misclosure at the end',
      formula: 'm = HI - r - z0',
      given: [
        given('HI', 'height of instrument', instrumentHeight),
        given('r', 'closing reading', last.reading),
        given('z0', 'known level', present(last.known, 'known level')),
      ],
      result: given('m', 'misclosure', misclosure),
    }),
  ]);
}

function noteFor(checks: readonly BenchmarkCheck[], suspects: readonly string[]): string {
  const bad = checks.find(({ isAccepted }) => !isAccepted);
  if (bad === undefined) return 'All checks are within the allowable. Use the adjusted levels.';
  const again =
    suspects.length === 0
      ? 'No point was shot since the last good check.'
      : `Do not use ${suspects.join(', ')}. Set up again and shoot them again.`;
  return `The check on ${bad.point} is outside the allowable: the instrument moved, or a reading is wrong. ${again}`;
}
