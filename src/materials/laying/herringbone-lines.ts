import { fault } from '../../errors.js';
import { optional, quantity } from '../../input/field.js';
import { DISTANCE, JOINT, TOLERANCE } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, type Length } from '../../units/quantity.js';
import { wholeRatio } from '../../units/ratio.js';
import { squareRoot } from '../../units/root.js';
import { timesRatio } from '../../units/times-ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';
import { unit, type UnitInput } from '../pavers/unit.js';
import { wholeDown } from '../whole-number.js';

/** Pavers for a herringbone, and the paving to set out. */
export interface HerringboneLinesOptions {
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Joint width [length], 0 to 100 mm. */
  readonly joint: LengthInput;
  /** Misfit of a pair that the joints can absorb [length], 0 to 10 m. Default: 0. */
  readonly tolerance?: LengthInput;
  /**
   * Width of the paving square to the axis, the axis in its middle [length], more than 0 and at most
   * 100 km. Default: none; no lines are returned.
   */
  readonly width?: LengthInput;
}

const OPTIONS = shapeOf<HerringboneLinesOptions>()({
  unit,
  joint: quantity(JOINT),
  tolerance: optional(quantity(TOLERANCE), NO_LENGTH),
  width: optional(quantity(DISTANCE)),
});

/** Reference lines of a herringbone at 45 degrees. */
export interface HerringboneLines extends Worked {
  /** Distance between two lines along the points, and from point to point along a line. */
  readonly spacing: Length;
  /** Long side of a paver with its joint less two short sides with theirs: 0 if the pattern closes. */
  readonly misfit: Length;
  /** True if the misfit is within the tolerance. */
  readonly isWithinTolerance: boolean;
  /** Width at which a paver of this length closes the pattern with this joint. */
  readonly fittingWidth: Length;
  /** Joint at which this paver closes the pattern; null if none does. */
  readonly fittingJoint: Length | null;
  /** Distance of each line from the axis, to one side, the axis first; empty without a width. */
  readonly lines: readonly Length[];
  /** Whether the pattern closes, and what to do if it does not. */
  readonly note: string;
}

/** More lines than this are a mistake. */
const MOST_LINES = 10_000;

/**
 * Lines for a herringbone at 45 degrees: strings along the points are `(w + j) sqrt(2)` apart. The
 * pattern closes only if two pavers side by side are as long as one, joints included:
 * `misfit = (l + j) - 2 (w + j) = l - 2 w - j`. A paver of exactly 2 to 1 closes only without
 * joints; with joints each pair is off by one joint.
 *
 * @param options - see {@link HerringboneLinesOptions}
 * @returns spacing of the lines, misfit, width and joint that fit, the lines
 * @throws `CAPACITY_EXCEEDED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const lines = herringboneLines({ unit: { length: '200 mm', width: '100 mm' }, joint: '3 mm' });
 * lines.spacing.to('mm').toFixed(1) //=> '145.7'
 * lines.misfit.to('mm').toString() //=> '-3'
 * lines.fittingWidth.to('mm').toString() //=> '98.5'
 */
export function herringboneLines(options: HerringboneLinesOptions): HerringboneLines {
  const { unit: paver, joint, tolerance, width } = readOptions(options, OPTIONS);
  const spacing = timesRatio(paver.width.plus(joint), ROOT_TWO);
  const fittingJoint = paver.length.minus(paver.width.times(2));
  const misfit = fittingJoint.minus(joint);
  const isWithinTolerance = misfit.abs().compare(tolerance) <= 0;
  const lines = {
    spacing,
    misfit,
    isWithinTolerance,
    fittingWidth: paver.length.minus(joint).dividedBy(2),
    fittingJoint: fittingJoint.isNegative() ? null : fittingJoint,
    lines: width === undefined ? [] : offsetsWithin(width, spacing),
    note: noteOn(misfit, isWithinTolerance),
  };
  return withWorking(lines, () => [
    derivedStep({
      title: 'Two pavers against one',
      formula: 'm = l - 2 * w - j',
      given: [
        given('l', 'length of a paver', paver.length),
        given('w', 'width of a paver', paver.width),
        given('j', 'joint', joint),
      ],
      result: given('m', 'misfit', misfit),
    }),
    derivedStep({
      title: 'Between reference lines',
      formula: 's = (w + j) * sqrt(2)',
      given: [given('w', 'width of a paver', paver.width), given('j', 'joint', joint)],
      result: given('s', 'spacing', spacing),
    }),
  ]);
}

const ROOT_TWO = squareRoot(wholeRatio(2));

function offsetsWithin(width: Length, spacing: Length): Length[] {
  const count = wholeDown(exactOf(width.dividedBy(2)), exactOf(spacing));
  if (count > MOST_LINES) {
    const message = `makes ${count} lines, more than ${MOST_LINES}. Check the digits and the unit`;
    throw fault('CAPACITY_EXCEEDED', message, { got: count, most: MOST_LINES }, ['width']);
  }
  return Array.from({ length: count + 1 }, (_, index) => spacing.times(index));
}

function noteOn(misfit: Length, isWithinTolerance: boolean): string {
  if (misfit.isZero())
    return 'Two pavers with their joints are as long as one: the pattern closes.';
  const side = misfit.isNegative() ? 'longer' : 'shorter';
  const advice = isWithinTolerance
    ? 'The joints can absorb it.'
    : 'Joints will not run true. Ask the maker for the exact size of the paver, and change the joint or the paver.';
  return `Two pavers side by side are ${side} than one, joints included. ${advice}`;
}
