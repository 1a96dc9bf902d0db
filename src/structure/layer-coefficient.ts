import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { LAYER_COEFFICIENTS } from '../sources/flexible-pavements.js';
import type { PressureInput } from '../units/construct.js';
import { given, withWorking, type Worked } from '../working.js';
import { MODULUS } from './limits.js';

/** Layer coefficient of unbound stone. */
export interface LayerCoefficient extends Worked {
  /** Per inch. */
  readonly coefficient: number;
  readonly cautions: readonly Caution[];
}

/**
 * Layer coefficient of unbound stone by its modulus E in psi: base `a = 0.249 log10 E - 0.977`,
 * sub-base `a = 0.227 log10 E - 0.839`.
 *
 * @param options.layer - `base` or `sub-base`
 * @param options.modulus - E, resilient [pressure]
 * @returns coefficient per inch, cautions
 * @throws `UNKNOWN_CHOICE`, `NOT_POSITIVE`, `OUT_OF_RANGE` (also where the relation gives nothing
 *   above 0), `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source layer-coefficient-sheet
 * @example
 * layerCoefficient({ layer: 'base', modulus: '31000 psi' }).coefficient.toFixed(3) //=> '0.141'
 */
export function layerCoefficient(options: {
  readonly layer: 'base' | 'sub-base';
  readonly modulus: PressureInput;
}): LayerCoefficient {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.choice(fields['layer'], ['layer'], ['base', 'sub-base']);
  const modulus = reader.quantity('pressure', fields['modulus'], ['modulus'], MODULUS);
  reader.finish();

  const { factor, constant } = LAYER_COEFFICIENTS[layer];
  const log = Math.log10(modulus.toNumber('psi'));
  const coefficient = Number(factor.value) * log + Number(constant.value);
  if (coefficient <= 0) {
    const words = 'so soft a layer has no coefficient: a slip of a digit or of a unit?';
    reader.fail('OUT_OF_RANGE', ['modulus'], words, { got: modulus.toString() });
    reader.finish();
  }
  return withWorking({ coefficient, cautions: cautionsFor('pavement-design') }, () => [
    {
      title: `Layer coefficient of the ${layer}`,
      formula: 'a = k log10 E + c',
      given: [
        given('k', 'factor', factor.value),
        given('E', 'modulus, in psi', modulus),
        given('c', 'constant', constant.value),
      ],
      result: given('a', 'coefficient per inch', coefficient),
      source: factor.source,
    },
  ]);
}
