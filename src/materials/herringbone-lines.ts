import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { wholeRatio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { timesRatio } from './exact.js';
import { JOINT, NO_LENGTH, RUN_OF_SOME, SHORT } from './limits.js';
import { readUnit, type UnitInput } from './read-unit.js';
import { wholeDown } from './whole-number.js';

/** Reference lines of a herringbone at 45 degrees. */
export interface HerringboneLines extends Worked {
  /** Between two lines along the points, and from point to point along a line. */
  readonly spacing: Length;
  /** Long side of a unit with its joint less two short sides with theirs: 0 where the pattern closes. */
  readonly misfit: Length;
  /** True where the misfit is within the tolerance. */
  readonly ok: boolean;
  /** Width at which a unit of this length closes the pattern with this joint. */
  readonly fittingWidth: Length;
  /** Joint at which this unit closes the pattern; null where none does. */
  readonly fittingJoint: Length | null;
  /** Distance of each line from the axis, to one side, the axis first; empty without a width. */
  readonly lines: readonly Length[];
  readonly meaning: string;
}

/** More lines than this are a slip. */
const MOST_LINES = 10_000;

/**
 * Lines for a herringbone at 45 degrees: strings along the points stand `(w + j) sqrt(2)` apart. The
 * pattern closes only where two units side by side are as long as one, joints counted in:
 * `misfit = (l + j) - 2 (w + j) = l - 2 w - j`. A unit of exactly 2 to 1 closes without a joint only,
 * and each pair is off by one joint otherwise.
 *
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.joint - [length], 0 to 100 mm
 * @param options.tolerance - misfit of a pair that the joints can take up [length], default 0
 * @param options.width - of the paving square to the axis, the axis in its middle [length], if the
 *   lines are wanted
 * @returns spacing of the lines, misfit, width and joint that fit, the lines
 * @throws `CAPACITY_EXCEEDED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const lines = herringboneLines({ unit: { length: '200 mm', width: '100 mm' }, joint: '3 mm' });
 * lines.spacing.to('mm').toFixed(1) //=> '145.7'
 * lines.misfit.to('mm').toString() //=> '-3'
 * lines.fittingWidth.to('mm').toString() //=> '98.5'
 */
export function herringboneLines(options: {
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  readonly tolerance?: LengthInput;
  readonly width?: LengthInput;
}): HerringboneLines {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const unit = readUnit(reader, fields['unit']);
  const joint = reader.quantity('length', fields['joint'], ['joint'], JOINT);
  const tolerance = reader.quantity(
    'length',
    fields['tolerance'] ?? NO_LENGTH,
    ['tolerance'],
    SHORT,
  );
  const width =
    fields['width'] === undefined
      ? undefined
      : reader.quantity('length', fields['width'], ['width'], RUN_OF_SOME);
  reader.finish();

  const module = unit.width.plus(joint);
  const spacing = timesRatio(module, ROOT_TWO);
  const twice = unit.width.times(2);
  const misfit = unit.length.minus(twice).minus(joint);
  const ok = misfit.abs().compare(tolerance) <= 0;
  const fittingJoint = unit.length.minus(twice);
  const lines = {
    spacing,
    misfit,
    ok,
    fittingWidth: unit.length.minus(joint).dividedBy(2),
    fittingJoint: fittingJoint.isNegative() ? null : fittingJoint,
    lines: width === undefined ? [] : offsetsWithin(width, spacing),
    meaning: meaningOf(misfit, ok),
  };
  return withWorking(lines, () => [
    {
      title: 'Two units against one',
      formula: 'm = l - 2 w - j',
      given: [
        given('l', 'length of a unit', unit.length),
        given('w', 'width of a unit', unit.width),
        given('j', 'joint', joint),
      ],
      result: given('m', 'misfit', misfit),
      source: 'derived',
    },
    {
      title: 'Between reference lines',
      formula: 's = (w + j) sqrt(2)',
      given: [given('w', 'width of a unit', unit.width), given('j', 'joint', joint)],
      result: given('s', 'spacing', spacing),
      source: 'derived',
    },
  ]);
}

const ROOT_TWO = squareRoot(wholeRatio(2));

function offsetsWithin(width: Length, spacing: Length): Length[] {
  const count = wholeDown(exactOf(width.dividedBy(2)), exactOf(spacing));
  if (count > MOST_LINES) {
    throw fault('CAPACITY_EXCEEDED', `${count} lines: a slip of a digit or of a unit?`, {}, [
      'width',
    ]);
  }
  return Array.from({ length: count + 1 }, (_, index) => spacing.times(index));
}

function meaningOf(misfit: Length, ok: boolean): string {
  if (misfit.isZero()) return 'Two units with their joints are as long as one: the pattern closes.';
  const side = misfit.isNegative() ? 'longer' : 'shorter';
  const doing = ok
    ? 'the joints can take it up'
    : 'joints will not run true. Ask for the work size of the unit, and change the joint or the unit';
  return `Two units side by side are ${side} than one, joints counted in: ${doing}.`;
}
