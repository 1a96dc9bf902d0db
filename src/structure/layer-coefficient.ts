import { fault } from '../errors.js';
import { choice, quantity } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { RESILIENT_MODULUS } from '../input/structure-ranges.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { LAYER_COEFFICIENTS } from '../sources/flexible-pavements.js';
import type { PressureInput } from '../units/construct.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { onePsi } from './printed-units.js';

/** A layer of unbound stone. */
export interface LayerCoefficientOptions {
  /** Which layer it is. */
  readonly layer: 'base' | 'sub-base';
  /** Resilient modulus of the stone [pressure], more than 0 and at most 100 000 MPa. */
  readonly modulus: PressureInput;
}

const OPTIONS = shapeOf<LayerCoefficientOptions>()({
  layer: choice(['base', 'sub-base']),
  modulus: quantity(RESILIENT_MODULUS),
});

/** Layer coefficient of unbound stone. */
export interface LayerCoefficient extends Cautioned, Worked {
  /** Per inch. */
  readonly coefficient: number;
}

/**
 *
 * Layer coefficient of unbound stone by its modulus E in psi: base `a = 0.249 log10 E - 0.977`,
 * sub-base `a = 0.227 log10 E - 0.839`.
 *
 * @param options - see {@link LayerCoefficientOptions}
 * @returns coefficient per inch, cautions
 * @throws `UNKNOWN_CHOICE`, `NOT_POSITIVE`, `OUT_OF_RANGE` (also if the formula gives no
 * coefficient above 0), `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source layer-coefficient-sheet
 * @example
 * layerCoefficient({ layer: 'base', modulus: '31000 psi' }).coefficient.toFixed(3) //=> '0.141'
 */
export function layerCoefficient(options: LayerCoefficientOptions): LayerCoefficient {
  const { layer, modulus } = readOptions(options, OPTIONS);
  const { factor, constant } = LAYER_COEFFICIENTS[layer];
  const log = Math.log10(modulus.toNumber('psi'));
  const coefficient = Number(factor.value) * log + Number(constant.value);
  if (coefficient <= 0) {
    const got = modulus.toString();
    const message = `the formula gives no coefficient at ${got}. Check the digits and the unit`;
    throw fault('OUT_OF_RANGE', message, { got }, ['modulus']);
  }
  return withWorking({ coefficient, cautions: cautionsFor('pavement-design') }, () => [
    formulaStep({
      title: `Layer coefficient of the ${layer}`,
      formula: 'a = k * log10(E / u) + c',
      given: [
        given('k', 'factor', Number(factor.value)),
        given('E', 'modulus', modulus),
        onePsi(),
        given('c', 'constant', Number(constant.value)),
      ],
      result: given('a', 'coefficient per inch', coefficient),
      source: factor.source,
    }),
  ]);
}
