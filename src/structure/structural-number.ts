import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { LengthInput } from '../units/construct.js';
import { ONE, ZERO, type Decimal } from '../units/decimal.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { COEFFICIENT, DRAINAGE, THICKNESS } from './limits.js';

/** A layer of a flexible pavement, from the top down. */
export interface StructuralLayerInput {
  readonly name: string;
  /** Compacted [length]. */
  readonly thickness: LengthInput;
  /** Layer coefficient per inch: 0.44 for new asphalt, 0.14 for good crushed stone, say (from memory). */
  readonly coefficient: number | string;
  /** Drainage coefficient of an unbound layer, default 1. */
  readonly drainage?: number | string;
}

/** What a layer adds. */
export interface StructuralLayer {
  readonly name: string;
  readonly thickness: Length;
  readonly coefficient: number;
  readonly drainage: number;
  /** To the structural number. */
  readonly adds: number;
  /** With all layers above. */
  readonly downTo: number;
}

/** Structural number of a stack of layers. */
export interface StructuralNumber extends Worked {
  /** Per inch. */
  readonly structuralNumber: number;
  readonly layers: readonly StructuralLayer[];
  readonly cautions: readonly Caution[];
}

/**
 * Structural number of the layers of a flexible pavement: `SN = sum(a D m)`, D in inches. Exact
 * decimals; the results are the nearest floats.
 *
 * @param options.layers - from the top down: `name`, `thickness` [length, to 5 m], `coefficient` a per
 *   inch (more than 0, at most 1), `drainage` m (0.2 to 1.5, default 1)
 * @returns structural number, what each layer adds, cautions
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
export function structuralNumber(options: {
  readonly layers: readonly StructuralLayerInput[];
}): StructuralNumber {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = reader
    .list(fields['layers'], ['layers'])
    .map((layer, index) => readLayer(reader, layer, ['layers', index]));
  reader.finish();

  let sum: Decimal = ZERO;
  const layers = read.map(({ name, thickness, coefficient, drainage }): StructuralLayer => {
    const adds = thickness.to('in').times(coefficient).times(drainage);
    sum = sum.plus(adds);
    return {
      name,
      thickness,
      coefficient: coefficient.toNumber(),
      drainage: drainage.toNumber(),
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
    layers.map((layer, index) => ({
      title: `Structural number down through ${layer.name}`,
      formula: index === 0 ? 'SN = a D m' : 'SN = SN above + a D m',
      given: [
        ...(index === 0 ? [] : [given('SN above', 'above', layers[index - 1]?.downTo ?? 0)]),
        given('a', 'coefficient per inch', layer.coefficient),
        given('D', 'thickness, in inches', layer.thickness),
        given('m', 'drainage', layer.drainage),
      ],
      result: given('SN', 'structural number', layer.downTo),
      source: 'flexible-pavement-guide',
    })),
  );
}

function readLayer(reader: Reader, layer: unknown, path: FieldPath) {
  const fields = reader.object(layer, path);
  const at = (name: string): FieldPath => [...path, name];
  return {
    name: reader.text(fields['name'], at('name')),
    thickness: reader.quantity('length', fields['thickness'], at('thickness'), THICKNESS),
    coefficient: reader.number(fields['coefficient'], at('coefficient'), COEFFICIENT),
    drainage:
      fields['drainage'] === undefined
        ? ONE
        : reader.number(fields['drainage'], at('drainage'), DRAINAGE),
  };
}
