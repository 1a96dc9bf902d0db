import { number, optional, quantity } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import {
  DRAINAGE,
  LAYER_COEFFICIENT,
  STRUCTURAL_NUMBER,
  STRUCTURAL_NUMBER_OR_NONE,
} from '../input/structure-ranges.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { length, type LengthInput } from '../units/construct.js';
import { ONE, ZERO } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import { roundTo } from '../units/rounding.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, formulaStep, given, withWorking, type Worked } from '../working.js';
import { oneInch } from './printed-units.js';

/** The structural number to reach, and the layer that makes it up. */
export interface StructuralThicknessOptions {
  /** Structural number needed, more than 0 and at most 30; see {@link requiredStructuralNumber}. */
  readonly needed: number | string;
  /** Structural number of the layers above, 0 to 30. Default: 0. */
  readonly above?: number | string;
  /** Coefficient of the layer per inch, more than 0 and at most 1. */
  readonly coefficient: number | string;
  /** Drainage coefficient of the layer, 0.2 to 1.5. Default: 1. */
  readonly drainage?: number | string;
  /** Step to round the thickness up to [length], more than 0 and at most 5 m. Default: 1 in. */
  readonly step?: LengthInput;
}

const ONE_INCH = length(1, 'in');

const OPTIONS = shapeOf<StructuralThicknessOptions>()({
  needed: number(STRUCTURAL_NUMBER),
  above: optional(number(STRUCTURAL_NUMBER_OR_NONE), ZERO),
  coefficient: number(LAYER_COEFFICIENT),
  drainage: optional(number(DRAINAGE), ONE),
  step: optional(quantity(THICKNESS), ONE_INCH),
});

/** Thickness of a layer for a structural number. */
export interface StructuralThickness extends Cautioned, Worked {
  /** Exact thickness; 0 if the layers above are enough. */
  readonly thickness: Length;
  /** Thickness rounded up to the next whole step. */
  readonly rounded: Length;
  /** Structural number with the rounded layer, per inch. */
  readonly structuralNumber: number;
}

/**
 * Thickness of a layer that brings a pavement to a structural number:
 * `D = (SN needed - SN above) / (a m)` in inches, then rounded up to the next whole step.
 *
 * @param options - see {@link StructuralThicknessOptions}
 * @returns thickness and rounded thickness [length], structural number then, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const asphalt = structuralThickness({ needed: '4.5', coefficient: '0.4' });
 * asphalt.thickness.to('in').toString() //=> '11.25'
 * asphalt.rounded.to('in').toString() //=> '12'
 * asphalt.structuralNumber //=> 4.8
 */
export function structuralThickness(options: StructuralThicknessOptions): StructuralThickness {
  const { needed, above, coefficient, drainage, step } = readOptions(options, OPTIONS);
  const missing = needed.minus(above);
  const perInch = coefficient.times(drainage);
  const thickness = missing.gt(0) ? ONE_INCH.times(missing).dividedBy(perInch) : NO_LENGTH;
  const rounded = roundTo(thickness, step, 'up');
  const found = {
    thickness,
    rounded,
    structuralNumber: above.plus(rounded.to('in').times(perInch)).toNumber(),
    cautions: cautionsFor('pavement-design'),
  };
  return withWorking(found, () => [
    formulaStep({
      title: 'Thickness for the structural number',
      formula: 'D = u * max(0, SN - Sa) / (a * m)',
      given: [
        given('SN', 'needed', needed),
        given('Sa', 'above', above),
        given('a', 'coefficient per inch', coefficient),
        given('m', 'drainage', drainage),
        oneInch(),
      ],
      result: given('D', 'thickness', thickness),
      source: 'flexible-pavement-guide',
    }),
    derivedStep({
      title: 'Up to the next whole step',
      formula: 'T = ceil(D / t) * t',
      given: [given('D', 'thickness', thickness), given('t', 'step', step)],
      result: given('T', 'rounded', rounded),
    }),
  ]);
}
