import { toleranceForUncertainty } from '../input/needed-by.js';
import { optional, quantity, text } from '../input/field.js';
import { ELEVATION, ROD_READING, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { sight, sightSteps, type InstrumentHeightInput } from './instrument-height.js';
import { reachOf, type RodReach } from './rod-targets.js';

/** A reading, and the surface to work to. */
export interface CutFillOptions {
  /** Elevation of the line of sight [length], or the set-up `{ benchmark, back }` that gives it. */
  readonly instrumentHeight: InstrumentHeightInput;
  /** Reading on the rod at the point [length], 0 to 20 m. */
  readonly reading: LengthInput;
  /** Name of the surface to work to, such as `subgrade`. */
  readonly surface: string;
  /** Elevation of that surface [length], up to 10 km either way. */
  readonly target: LengthInput;
  /** Tolerance of the ground, up or down [length], 0 to 10 m. Default: not judged. */
  readonly tolerance?: LengthInput;
  /** Uncertainty of the cut, for the verdict [length], 0 to 10 m; with `tolerance`. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<CutFillOptions>()({
  instrumentHeight: sight,
  reading: quantity(ROD_READING),
  surface: text(),
  target: quantity(ELEVATION),
  tolerance: optional(quantity(TOLERANCE)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** Cut or fill at the point of the rod. */
export interface CutFill extends Worked {
  /** Elevation of the line of sight. */
  readonly instrumentHeight: Length;
  /** The surface to work to. */
  readonly surface: string;
  /** Elevation of the ground at the rod. */
  readonly ground: Length;
  /**
   * Reading on the rod when it stands on that surface; negative if the surface is above the line of
   * sight.
   */
  readonly gradeRod: Length;
  /** Ground less surface: cut positive, fill negative. */
  readonly cut: Length;
  /** What to do there. */
  readonly action: 'cut' | 'fill' | 'none';
  /** Whether the rod can show the grade rod. */
  readonly reach: RodReach;
  /** Whether the ground is within the tolerance; null if none is given. */
  readonly verdict: Verdict | null;
}

/**
 * Cut or fill from one reading: `grade rod = HI - target`, `cut = grade rod - reading`. If the reading
 * is smaller than the grade rod, the ground is high.
 *
 * @param options - see {@link CutFillOptions}
 * @returns height of instrument, ground, grade rod and cut [length, cut positive], what to do, the
 *   verdict
 * @throws `REQUIRED`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY` and the reading codes
 * @source grade-with-a-level
 * @example
 * const shot = cutFill({
 *   instrumentHeight: { benchmark: '100 ft', back: '4.32 ft' },
 *   reading: '6.18 ft',
 *   surface: 'subgrade',
 *   target: '97.25 ft',
 * });
 * shot.gradeRod.to('ft').toString() //=> '7.07'
 * describeCutFill(shot, { as: 'in', nearest: '1/8 in' }) //=> 'cut 10 5/8 in to subgrade'
 */
export function cutFill(options: CutFillOptions): CutFill {
  const read = readOptions(options, OPTIONS, toleranceForUncertainty);
  const { surface, reading, target, tolerance, uncertainty } = read;
  const { height } = read.instrumentHeight;
  const gradeRod = height.minus(target);
  const cut = gradeRod.minus(reading);
  const result: Omit<CutFill, 'working'> = {
    instrumentHeight: height,
    surface,
    ground: height.minus(reading),
    gradeRod,
    cut,
    action: cut.isZero() ? 'none' : cut.isNegative() ? 'fill' : 'cut',
    reach: reachOf(gradeRod, undefined),
    verdict: tolerance === undefined ? null : verdictOf(tolerance.minus(cut.abs()), uncertainty),
  };
  return withWorking(result, () => [
    ...sightSteps(read.instrumentHeight),
    formulaStep({
      title: `Rod reading for the ${surface}`,
      formula: 'g = HI - z',
      given: [given('HI', 'height of instrument', height), given('z', 'elevation', target)],
      result: given('g', 'grade rod', gradeRod),
      source: 'grade-with-a-level',
    }),
    formulaStep({
      title: `Cut (+) or fill (-) to the ${surface}`,
      formula: 'c = g - r',
      given: [given('g', 'grade rod', gradeRod), given('r', 'reading', reading)],
      result: given('c', 'cut (+) or fill (-)', cut),
      source: 'grade-with-a-level',
    }),
  ]);
}
