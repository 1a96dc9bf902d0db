import { object, optional, quantity, whole } from '../../input/field.js';
import { COUNT, DENSITY, JOINT, MASS_OR_NONE, UNIT_SIDE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import {
  area,
  type DensityInput,
  type LengthInput,
  type MassInput,
} from '../../units/construct.js';
import { exactOf, type Area, type Mass } from '../../units/quantity.js';
import { overRatio } from '../../units/times-ratio.js';
import { NO_LENGTH, NO_MASS } from '../../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';
import { moduleOf, unit, type Module, type UnitInput } from './unit.js';

/** Packing of the pavers. */
export interface PalletInput {
  /** Pavers of one layer or band, a whole number, 1 to 1 000 000. */
  readonly unitsPerLayer: number | string;
  /** Layers on a pallet, a whole number, 1 to 1 000 000. */
  readonly layers: number | string;
  /** Mass of the empty pallet [mass], up to 1 000 000 t. Default: 0. */
  readonly empty?: MassInput;
}

/** A paver to weigh. */
export interface UnitMassOptions {
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Thickness of a paver [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Density of a paver as delivered [density], more than 0 and at most 5 t/m3. */
  readonly density: DensityInput;
  /** Joint width [length], 0 to 100 mm. Default: 0. */
  readonly joint?: LengthInput;
  /** Packing of the pavers. Default: not packed. */
  readonly pallet?: PalletInput;
}

const PALLET = shapeOf<PalletInput>()({
  unitsPerLayer: whole(COUNT),
  layers: whole(COUNT),
  empty: optional(quantity(MASS_OR_NONE), NO_MASS),
});

const OPTIONS = shapeOf<UnitMassOptions>()({
  unit,
  thickness: quantity(UNIT_SIDE),
  density: quantity(DENSITY),
  joint: optional(quantity(JOINT), NO_LENGTH),
  pallet: optional(object(PALLET)),
});

/** Mass of packed pavers. */
export interface PackedUnits {
  /** Mass of one layer or band. */
  readonly layer: Mass;
  /** Mass of a full pallet, the empty pallet included. */
  readonly pallet: Mass;
  /** Pavers on a pallet. */
  readonly units: number;
  /** Area of paving that a pallet covers. */
  readonly covers: Area;
}

/** Mass of pavers, loose and packed. */
export interface UnitMass extends Worked {
  /** Mass of one paver. */
  readonly unit: Mass;
  /** Mass of the pavers of one square metre of paving. */
  readonly squareMetre: Mass;
  /** Mass of a layer and a pallet; null if no packing is given. */
  readonly packed: PackedUnits | null;
  /** What to watch when you lift and load. */
  readonly cautions: readonly Caution[];
}

/**
 *
 * Mass of a paver, of a square metre, of a layer and of a pallet: `m = l w t x density`, a square
 * metre takes `1 / ((l + j) (w + j))` pavers. Wet pavers weigh more, so give the density as
 * delivered.
 *
 * @param options - see {@link UnitMassOptions}
 * @returns mass of a paver, of a square metre, of a layer and a pallet, and the area that a pallet
 * covers
 * @throws `NOT_WHOLE`, `OUT_OF_RANGE`, `NOT_POSITIVE`, `NEGATIVE` and the reading codes
 * @source derived
 * @example
 * const block = unitMass({
 *   unit: { length: '200 mm', width: '100 mm' },
 *   thickness: '60 mm',
 *   density: '2300 kg/m3',
 *   pallet: { unitsPerLayer: 40, layers: 10 },
 * });
 * block.unit.to('kg').toString() //=> '2.76'
 * block.squareMetre.to('kg').toString() //=> '138'
 * block.packed?.pallet.to('t').toString() //=> '1.104'
 */
export function unitMass(options: UnitMassOptions): UnitMass {
  const read = readOptions(options, OPTIONS);
  const { thickness, density, joint, pallet } = read;
  const module = moduleOf(read.unit, joint);
  const one = read.unit.length.times(read.unit.width).times(thickness).times(density);
  const weights = {
    unit: one,
    // areas are kept in square metres
    squareMetre: overRatio(one, exactOf(module.area)),
    packed: pallet === undefined ? null : packedUnits(one, pallet, module),
    cautions: cautionsFor('handling', 'loads'),
  };
  return withWorking(weights, () => [
    derivedStep({
      title: 'Mass of a paver',
      formula: 'm = l * w * t * d',
      given: [
        given('l', 'length', read.unit.length),
        given('w', 'width', read.unit.width),
        given('t', 'thickness', thickness),
        given('d', 'density', density),
      ],
      result: given('m', 'one paver', one),
    }),
    derivedStep({
      title: 'Mass of a square metre',
      formula: 'M = m * a / ((l + j) * (w + j))',
      given: [
        given('m', 'one paver', one),
        given('a', 'one square metre', SQUARE_METRE),
        given('l', 'length', read.unit.length),
        given('w', 'width', read.unit.width),
        given('j', 'joint', joint),
      ],
      result: given('M', 'pavers of one square metre', weights.squareMetre),
    }),
  ]);
}

const SQUARE_METRE = area('1 m2');

function packedUnits(one: Mass, pallet: Values<typeof PALLET>, module: Module): PackedUnits {
  const units = pallet.unitsPerLayer * pallet.layers;
  return {
    layer: one.times(pallet.unitsPerLayer),
    pallet: one.times(units).plus(pallet.empty),
    units,
    covers: module.area.times(units),
  };
}
