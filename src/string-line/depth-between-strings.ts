import { toleranceForUncertainty } from '../input/needed-by.js';
import { optional, quantity, text } from '../input/field.js';
import {
  ELEVATION,
  LEVEL_DIFFERENCE,
  SITE_LENGTH,
  SMALL,
  STATION,
  TOLERANCE,
} from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios } from '../units/ratio.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** Two edge strings, and a point between them. */
export interface DepthBetweenStringsOptions {
  /** Elevation of the left string beside the point [length], up to 10 km either way. */
  readonly left: LengthInput;
  /** Elevation of the right string beside the point [length], up to 10 km either way. */
  readonly right: LengthInput;
  /** From string to string [length], more than 0 and at most 10 km. */
  readonly width: LengthInput;
  /** Distance from the left string to the point [length], up to 100 km either way. */
  readonly fromLeft: LengthInput;
  /** Name of the surface you work to, such as `subgrade`. */
  readonly surface: string;
  /** That surface below the strings, as designed [length], positive down, up to 20 m either way. */
  readonly below: LengthInput;
  /**
   * Sag of the line across, at the point [length], 0 to 1 m: see `stringSag`. Default: 0, as of a
   * board.
   */
  readonly sag?: LengthInput;
  /**
   * Measured from the line down to the existing surface [length], up to 20 m. Default: not
   * measured.
   */
  readonly measured?: LengthInput;
  /** Tolerance of the surface, up or down [length], 0 to 10 m. Default: not judged. */
  readonly tolerance?: LengthInput;
  /** Uncertainty of the measure, for the verdict [length], 0 to 10 m; with `tolerance`. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<DepthBetweenStringsOptions>()({
  left: quantity(ELEVATION),
  right: quantity(ELEVATION),
  width: quantity(SITE_LENGTH),
  fromLeft: quantity(STATION),
  surface: text(),
  below: quantity(LEVEL_DIFFERENCE),
  sag: optional(quantity(SMALL), NO_LENGTH),
  measured: optional(quantity(LEVEL_DIFFERENCE)),
  tolerance: optional(quantity(TOLERANCE)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** A measure down from a line across two strings. */
export interface DepthBetweenStrings extends Worked {
  /** The surface you work to. */
  readonly surface: string;
  /** Elevation of the straight line from string to string at the point [length]. */
  readonly straight: Length;
  /** Elevation of the line across the strings there, its sag deducted [length]. */
  readonly line: Length;
  /** Elevation that the surface should have [length]. */
  readonly target: Length;
  /** What to measure down from the line to the surface [length]. */
  readonly measureDown: Length;
  /** Elevation of the surface as measured [length]; null if it was not. */
  readonly elevation: Length | null;
  /**
   * Cut (positive) or fill (negative) still to do [length]; null if the surface was not measured.
   */
  readonly cut: Length | null;
  /** The same in one word; null if the surface was not measured. */
  readonly action: 'cut' | 'fill' | 'none' | null;
  /** Null without a measure or a tolerance. */
  readonly verdict: Verdict | null;
  /** True if the point is outside the two strings, where their line is extended. */
  readonly extrapolated: boolean;
  /** What to watch, in words. */
  readonly note: string;
}

/**
 *
 * Depth between two edge strings, from a line or a straight board laid across them:
 * `z = zl + (zr - zl) x / W - sag`, x from the left string of W apart. The surface should be at
 * `target = zl + (zr - zl) x / W - below`, so the measure down is `below - sag`. Exact.
 *
 * Both strings are at the same height above a finished grade that is straight from one to the other. A
 * crown or a valley between them needs a third string on the break.
 *
 * @param options - see {@link DepthBetweenStringsOptions}
 * @returns elevations, the measure down [length, positive down], cut still to do [length, fill
 * negative],   verdict; `extrapolated` outside the strings
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY` and the reading codes
 * @source derived
 * @example
 * const spot = depthBetweenStrings({
 *   left: '30.15 m',
 *   right: '30.046 m',
 *   width: '5 m',
 *   fromLeft: '2 m',
 *   surface: 'subgrade',
 *   below: '435 mm',
 *   sag: '1.5 mm',
 *   measured: '440 mm',
 * });
 * spot.line.to('m').toString() //=> '30.1069'
 * spot.measureDown.to('mm').toString() //=> '433.5'
 * spot.cut?.to('mm').toString() //=> '-6.5'
 * spot.action //=> 'fill'
 */
export function depthBetweenStrings(options: DepthBetweenStringsOptions): DepthBetweenStrings {
  const read = readOptions(options, OPTIONS, toleranceForUncertainty);
  const { left, right, width, fromLeft, surface, below, sag } = read;
  const share = divideRatios(exactOf(fromLeft), exactOf(width));
  const rise = fromSI('length', multiplyRatios(exactOf(right.minus(left)), share));
  const straight = left.plus(rise);
  const line = straight.minus(sag);
  const target = straight.minus(below);
  const measureDown = below.minus(sag);
  const extrapolated = fromLeft.isNegative() || fromLeft.compare(width) > 0;
  const found = foundAt(line, measureDown, read);
  const note = extrapolated ? NOTES.outside : NOTES.between;
  return withWorking(
    { surface, straight, line, target, measureDown, ...found, extrapolated, note },
    () => showWorking(read, { line, target, cut: found.cut }),
  );
}

type Across = Values<typeof OPTIONS>;

const NOT_MEASURED = { elevation: null, cut: null, action: null, verdict: null } as const;

function foundAt(line: Length, measureDown: Length, { measured, tolerance, uncertainty }: Across) {
  if (measured === undefined) return NOT_MEASURED;
  const cut = measureDown.minus(measured);
  const verdict = tolerance && verdictOf(tolerance.minus(cut.abs()), uncertainty);
  return { elevation: line.minus(measured), cut, action: actionOf(cut), verdict: verdict ?? null };
}

const actionOf = (cut: Length): 'cut' | 'fill' | 'none' =>
  cut.isZero() ? 'none' : cut.isNegative() ? 'fill' : 'cut';

const NOTES = {
  between: 'A crown or a valley between the strings needs a third string on the break.',
  outside: 'This point is outside the two strings. The line between them is extended to it.',
} as const;

function showWorking(
  of: Across,
  made: { readonly line: Length; readonly target: Length; readonly cut: Length | null },
): Step[] {
  const across = [
    given('zl', 'left string', of.left),
    given('zr', 'right string', of.right),
    given('x', 'from the left string', of.fromLeft),
    given('W', 'from string to string', of.width),
  ];
  const [below, sag] = [
    given('b', 'below the strings', of.below),
    given('f', 'sag of the line', of.sag),
  ];
  const steps: Step[] = [
    derivedStep({
      title: 'The line across the strings',
      formula: 'z = zl + (zr - zl) * x / W - f',
      given: [...across, sag],
      result: given('z', 'line', made.line),
    }),
    derivedStep({
      title: 'Where the surface should be',
      formula: 't = zl + (zr - zl) * x / W - b',
      given: [...across, below],
      result: given('t', 'target', made.target),
    }),
  ];
  if (made.cut === null || of.measured === undefined) return steps;
  const left: Step = derivedStep({
    title: 'Still to do (cut +, fill -)',
    formula: 'c = b - f - m',
    given: [below, sag, given('m', 'measured down', of.measured)],
    result: given('c', 'cut', made.cut),
  });
  return [...steps, left];
}
