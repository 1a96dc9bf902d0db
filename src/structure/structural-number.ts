import { list, number, object, optional, quantity, text } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { DRAINAGE, LAYER_COEFFICIENT } from '../input/structure-ranges.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import { ONE, ZERO } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { oneInch } from './printed-units.js';

/** A layer of a flexible pavement, from the top down. */
export interface StructuralLayerInput {
  /** What the crew calls it. */
  readonly name: string;
  /** Compacted thickness [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /**
   * Layer coefficient per inch, more than 0 and at most 1, such as 0.44 for new asphalt or 0.14 for
   * good crushed stone (from memory).
   */
  readonly coefficient: number | string;
  /** Drainage coefficient of an unbound layer, 0.2 to 1.5. Default: 1. */
  readonly drainage?: number | string;
}

/** The layers of a pavement. */
export interface StructuralNumberOptions {
  /** Layers from the top down. */
  readonly layers: readonly StructuralLayerInput[];
}

const LAYER = shapeOf<StructuralLayerInput>()({
  name: text(),
  thickness: quantity(THICKNESS),
  coefficient: number(LAYER_COEFFICIENT),
  drainage: optional(number(DRAINAGE), ONE),
});

const OPTIONS = shapeOf<StructuralNumberOptions>()({
  layers: list(object(LAYER), { of: 'layers', most: 100 }),
});

/** Contribution of a layer to the structural number. */
export interface StructuralLayer {
  /** What the crew calls it. */
  readonly name: string;
  /** Compacted thickness. */
  readonly thickness: Length;
  /** Layer coefficient per inch. */
  readonly coefficient: number;
  /** Drainage coefficient; 1 if none was given. */
  readonly drainage: number;
  /** Contribution to the structural number, per inch. */
  readonly adds: number;
  /** Structural number of this layer and all layers above. */
  readonly downTo: number;
}

/** Structural number of a stack of layers. */
export interface StructuralNumber extends Cautioned, Worked {
  /** Per inch. */
  readonly structuralNumber: number;
  /** From the top down. */
  readonly layers: readonly StructuralLayer[];
}

/**
 *
 * Structural number of the layers of a flexible pavement: `SN = sum(a D m)`, D in inches. Exact
 * decimals; the results are the nearest floats.
 *
 * @param options - see {@link StructuralNumberOptions}
 * @returns structural number, the contribution of each layer, cautions
 * @throws `EMPTY_LIST`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-guide
 * @example
 * const layers = [
 *   { name: 'asphalt', thickness: '4 in', coefficient: '0.44' },
 *   { name: 'base', thickness: '8 in', coefficient: '0.30' },
 *   { name: 'sub-base', thickness: '8 in', coefficient: '0.11' },
 * ];
 * structuralNumber({ layers }).structuralNumber //=> 5.04
 */
export function structuralNumber(options: StructuralNumberOptions): StructuralNumber {
  let sum = ZERO;
  const layers = readOptions(options, OPTIONS).layers.map((layer): StructuralLayer => {
    const adds = layer.thickness.to('in').times(layer.coefficient).times(layer.drainage);
    sum = sum.plus(adds);
    return {
      name: layer.name,
      thickness: layer.thickness,
      coefficient: layer.coefficient.toNumber(),
      drainage: layer.drainage.toNumber(),
      adds: adds.toNumber(),
      downTo: sum.toNumber(),
    };
  });
  const found = {
    structuralNumber: sum.toNumber(),
    layers,
    cautions: cautionsFor('pavement-design'),
  };
  return withWorking(found, () =>
    layers.map((layer, index) => layerStep(layer, layers[index - 1]?.downTo)),
  );
}

const layerStep = (layer: StructuralLayer, above: number | undefined): Step =>
  formulaStep({
    title: `Structural number down through ${layer.name}`,
    formula: above === undefined ? 'SN = a * m * D / u' : 'SN = Sa + a * m * D / u',
    given: [
      ...(above === undefined ? [] : [given('Sa', 'structural number down to here', above)]),
      given('a', 'coefficient per inch', layer.coefficient),
      given('m', 'drainage', layer.drainage),
      given('D', 'thickness', layer.thickness),
      oneInch(),
    ],
    result: given('SN', 'structural number', layer.downTo),
    source: 'flexible-pavement-guide',
  });
