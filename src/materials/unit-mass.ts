import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import {
  area,
  mass,
  type DensityInput,
  type LengthInput,
  type MassInput,
} from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { exactOf, type Area, type Mass } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { timesRatio } from './exact.js';
import { DENSITY, JOINT, NO_LENGTH, UNIT_SIDE } from './limits.js';
import { moduleOf, readUnit, type UnitInput } from './read-unit.js';

/** How units are packed. */
export interface PalletInput {
  readonly unitsPerLayer: number;
  readonly layers: number;
  /** The empty pallet, default nothing. */
  readonly empty?: MassInput;
}

/** What units weigh, alone and packed. */
export interface UnitMass extends Worked {
  readonly unit: Mass;
  /** Units of one square metre of paving. */
  readonly squareMetre: Mass;
  /** One layer or band, the pallet, and the paving that a pallet covers; null without packing. */
  readonly packed: {
    readonly layer: Mass;
    readonly pallet: Mass;
    readonly units: number;
    readonly covers: Area;
  } | null;
  readonly cautions: readonly Caution[];
}

/**
 * Mass of a unit, of a square metre, of a layer and of a pallet: `m = l w t x density`, a square metre
 * takes `1 / ((l + j) (w + j))` units. Wet units weigh more: give the density as delivered.
 *
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.thickness - [length]
 * @param options.density - of the unit as delivered [density]
 * @param options.joint - [length], default 0
 * @param options.pallet - `unitsPerLayer` and `layers`, whole numbers, and `empty` [mass]
 * @returns mass of a unit, of a square metre, of a layer and a pallet, and what a pallet covers
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `NEGATIVE` and the reading codes
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
export function unitMass(options: {
  readonly unit: UnitInput;
  readonly thickness: LengthInput;
  readonly density: DensityInput;
  readonly joint?: LengthInput;
  readonly pallet?: PalletInput;
}): UnitMass {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const unit = readUnit(reader, fields['unit']);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], UNIT_SIDE);
  const density = reader.quantity('density', fields['density'], ['density'], DENSITY);
  const joint = reader.quantity('length', fields['joint'] ?? NO_LENGTH, ['joint'], JOINT);
  const pallet = fields['pallet'] === undefined ? null : readPallet(reader, fields['pallet']);
  reader.finish();

  const module = moduleOf(unit, joint).area;
  const one = unit.length.times(unit.width).times(thickness).times(density);
  const perMetre = divideRatios(exactOf(SQUARE_METRE), exactOf(module));
  const weights = {
    unit: one,
    squareMetre: timesRatio(one, perMetre),
    packed:
      pallet === null
        ? null
        : {
            layer: one.times(pallet.perLayer),
            pallet: one.times(pallet.perLayer.times(pallet.layers)).plus(pallet.empty),
            units: pallet.perLayer.times(pallet.layers).toNumber(),
            covers: module.times(pallet.perLayer.times(pallet.layers)),
          },
    cautions: cautionsFor('handling', 'loads'),
  };
  return withWorking(weights, () => [
    {
      title: 'Mass of a unit',
      formula: 'm = l w t d',
      given: [
        given('l', 'length', unit.length),
        given('w', 'width', unit.width),
        given('t', 'thickness', thickness),
        given('d', 'density', density),
      ],
      result: given('m', 'one unit', one),
      source: 'derived',
    },
    {
      title: 'Mass of a square metre',
      formula: 'M = m / ((l + j) (w + j))',
      given: [given('m', 'one unit', one), given('j', 'joint', joint)],
      result: given('M', 'units of one square metre', weights.squareMetre),
      source: 'derived',
    },
  ]);
}

const SQUARE_METRE = area(1, 'm2');
const NO_PALLET = mass(0, 'kg');
const MOST_UNITS = 100_000;

function readPallet(reader: Reader, value: unknown) {
  const path = ['pallet'];
  const fields = reader.object(value, path);
  const count = (name: 'unitsPerLayer' | 'layers'): Decimal => {
    const at = [...path, name];
    const read = reader.number(fields[name], at, { sign: 'positive', most: MOST_UNITS });
    if (!read.isInteger()) reader.fail('OUT_OF_RANGE', at, 'must be a whole number');
    return read;
  };
  return {
    perLayer: count('unitsPerLayer'),
    layers: count('layers'),
    empty: reader.quantity('mass', fields['empty'] ?? NO_PALLET, [...path, 'empty'], {
      sign: 'not-negative',
    }),
  };
}
