import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { length, type LengthInput } from '../units/construct.js';
import { ONE } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import { roundTo } from '../units/rounding.js';
import { given, withWorking, type Worked } from '../working.js';
import { COEFFICIENT, DRAINAGE, STRUCTURE, STRUCTURE_OR_NONE, THICKNESS } from './limits.js';

/** How thick a layer must be for a structural number. */
export interface StructuralThickness extends Worked {
  /** Zero where what lies above is enough. */
  readonly thickness: Length;
  /** Up to the next whole step. */
  readonly rounded: Length;
  /** With the rounded layer. */
  readonly structuralNumber: number;
  readonly cautions: readonly Caution[];
}

/**
 * Thickness of a layer that brings a pavement to a structural number:
 * `D = (SN needed - SN above) / (a m)` in inches, and up to the next whole step.
 *
 * @param options.needed - structural number, more than 0 and at most 30; see
 *   {@link requiredStructuralNumber}
 * @param options.above - structural number of the layers above, default 0
 * @param options.coefficient - a of the layer per inch, more than 0 and at most 1
 * @param options.drainage - m, 0.2 to 1.5, default 1
 * @param options.step - thickness is rounded up to a multiple of it [length], default 1 in
 * @returns thickness and rounded thickness [length], structural number then, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const asphalt = structuralThickness({ needed: '4.5', coefficient: '0.4' });
 * asphalt.thickness.to('in').toString() //=> '11.25'
 * asphalt.rounded.to('in').toString() //=> '12'
 * asphalt.structuralNumber //=> 4.8
 */
export function structuralThickness(options: {
  readonly needed: number | string;
  readonly above?: number | string;
  readonly coefficient: number | string;
  readonly drainage?: number | string;
  readonly step?: LengthInput;
}): StructuralThickness {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const needed = reader.number(fields['needed'], ['needed'], STRUCTURE);
  const above = reader.number(fields['above'] ?? 0, ['above'], STRUCTURE_OR_NONE);
  const coefficient = reader.number(fields['coefficient'], ['coefficient'], COEFFICIENT);
  const drainage =
    fields['drainage'] === undefined
      ? ONE
      : reader.number(fields['drainage'], ['drainage'], DRAINAGE);
  const step = reader.quantity('length', fields['step'] ?? '1 in', ['step'], THICKNESS);
  reader.finish();

  const missing = needed.minus(above);
  const perInch = coefficient.times(drainage);
  const thickness = missing.gt(0) ? length(1, 'in').times(missing).dividedBy(perInch) : NONE;
  const rounded = roundTo(thickness, step, 'up');
  const found = {
    thickness,
    rounded,
    structuralNumber: above.plus(rounded.to('in').times(perInch)).toNumber(),
    cautions: cautionsFor('pavement-design'),
  };
  return withWorking(found, () => [
    {
      title: 'Thickness for the structural number',
      formula: 'D = (SN - SN above) / (a m), not less than 0; D in inches',
      given: [
        given('SN', 'needed', needed),
        given('SN above', 'above', above),
        given('a', 'coefficient per inch', coefficient),
        given('m', 'drainage', drainage),
      ],
      result: given('D', 'thickness', thickness),
      source: 'flexible-pavement-guide',
    },
    {
      title: 'Up to the next whole step',
      formula: 'T = D rounded up to a multiple of t',
      given: [given('D', 'thickness', thickness), given('t', 'step', step)],
      result: given('T', 'rounded', rounded),
      source: 'derived',
    },
  ]);
}

const NONE = length(0, 'in');
