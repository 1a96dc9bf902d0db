import type { FieldPath } from '../errors.js';
import { custom, number, object, optional, text } from '../input/field.js';
import { COMPACTED_PER_BANK, LOOSE_PER_BANK, VOLUME_OR_NONE } from '../input/ranges.js';
import { makeReader, type Reader } from '../input/reader.js';
import { readShape, shapeOf, type Field, type Values } from '../input/shape.js';
import { shown } from '../input/shown.js';
import { SOIL_NAMES, SOIL_STATE_FACTORS, type SoilName } from '../sources/soil-state-factors.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import type { VolumeInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { isQuantity, type Volume } from '../units/quantity.js';
import { NO_VOLUME } from '../units/zero.js';
import type { VolumeUnit } from '../units/catalogue.js';

/** State of soil: undisturbed in the ground, dug and loose, or compacted in place. */
export type SoilState = 'bank' | 'loose' | 'compacted';

/**
 * A volume of soil or stone with its state in the type, so a loose volume passed as a bank volume does
 * not compile. `to` and `toNumber` read the volume.
 */
export interface StateVolume<S extends SoilState> {
  /** The state of the soil. */
  readonly state: S;
  /** The volume in that state. */
  readonly volume: Volume;
  /** The volume in a unit, to 40 digits. */
  to(unit: VolumeUnit): Decimal;
  /** The volume in a unit as a float. */
  toNumber(unit: VolumeUnit): number;
}

/** Swell and shrinkage of one soil: its loose and compacted volume over its bank volume. */
export interface SoilFactors {
  /** Loose over bank volume, 0.9 to 3. */
  readonly loosePerBank: number | string;
  /** Compacted over bank volume, 0.4 to 2. */
  readonly compactedPerBank: number | string;
  /** Source of the factors, as `soilFactors` returns it. It is not used in calculations. Optional. */
  readonly source?: SourceId;
  /** How far the factors can be traced, as `soilFactors` returns it. Not used in calculations. Optional. */
  readonly status?: SourceStatus;
}

const FACTORS = shapeOf<SoilFactors>()({
  loosePerBank: number(LOOSE_PER_BANK),
  compactedPerBank: number(COMPACTED_PER_BANK),
  source: optional(text()),
  status: optional(text()),
});

const STATES = ['bank', 'loose', 'compacted'] as const;

/** Methods that state volumes inherit, so their own fields stay plain data. */
const READABLE = Object.freeze({
  to(this: StateVolume<SoilState>, unit: VolumeUnit): Decimal {
    return this.volume.to(unit);
  },
  toNumber(this: StateVolume<SoilState>, unit: VolumeUnit): number {
    return this.volume.toNumber(unit);
  },
});

/**
 * Gives a volume its state.
 *
 * @param volume - [volume], not negative
 * @param state - `bank`, `loose` or `compacted`
 * @throws `REQUIRED` or `UNKNOWN_CHOICE` for the state, `NEGATIVE` and the reading codes
 * @example
 * stateVolume('10 yd3', 'bank').state //=> 'bank'
 */
export function stateVolume<S extends SoilState>(volume: VolumeInput, state: S): StateVolume<S> {
  const reader = makeReader();
  const read = reader.quantity('volume', volume, ['volume'], VOLUME_OR_NONE);
  reader.choice(state, ['state'], STATES);
  reader.finish();
  return inState(read, state);
}

/** Gives a calculated volume its state. Internal. */
export function inState<S extends SoilState>(volume: Volume, state: S): StateVolume<S> {
  const plain = Object.create(READABLE) as { state: S; volume: Volume };
  plain.state = state;
  plain.volume = volume;
  return Object.freeze(plain) as StateVolume<S>;
}

/**
 * Converts a volume of soil from one state to another: `loose = bank x (loose per bank)`,
 * `compacted = bank x (compacted per bank)`. It is exact: converting back gives the same volume.
 *
 * @param volume - from {@link stateVolume}
 * @param to - the state wanted
 * @param factors - `loosePerBank` (0.9 to 3) and `compactedPerBank` (0.4 to 2) of this soil
 * @throws `OUT_OF_RANGE`, `WRONG_STATE`, `UNKNOWN_CHOICE`, `NEGATIVE`, `UNKNOWN_FIELD` and the reading
 *   codes
 * @source fm-5-434
 * @example
 * const sand = { loosePerBank: 1.11, compactedPerBank: 0.95 };
 * toState(stateVolume('100 yd3', 'bank'), 'loose', sand).to('yd3').toString() //=> '111'
 */
export function toState<T extends SoilState>(
  volume: StateVolume<SoilState>,
  to: T,
  factors: SoilFactors,
): StateVolume<T> {
  const reader = makeReader();
  const from = readState(reader, volume, ['volume']);
  reader.choice(to, ['to'], STATES);
  const read = readShape(reader, factors, ['factors'], FACTORS) as Values<typeof FACTORS>;
  reader.finish();
  if (from.state === to) return inState(from.volume, to);
  const bank = from.volume.dividedBy(perBank(from.state, read));
  return inState(bank.times(perBank(to, read)), to);
}

function perBank(state: SoilState, factors: Values<typeof FACTORS>): Decimal | 1 {
  if (state === 'bank') return 1;
  return state === 'loose' ? factors.loosePerBank : factors.compactedPerBank;
}

/** The factors of a soil. Internal. */
export const soilFactorsField: Field<Values<typeof FACTORS>> = object(FACTORS);

/** True for a volume with a state. Internal. */
export function isStateVolume(value: unknown): value is StateVolume<SoilState> {
  if (typeof value !== 'object' || value === null) return false;
  const { state, volume } = value as Partial<StateVolume<SoilState>>;
  return STATES.some((one) => one === state) && isQuantity(volume) && volume.dimension === 'volume';
}

/** Reads a volume in any state, not negative. */
function readState(reader: Reader, value: unknown, path: FieldPath): StateVolume<SoilState> {
  if (!isStateVolume(value)) {
    const code = value === undefined ? 'REQUIRED' : 'WRONG_TYPE';
    reader.fail(code, path, `pass the result of stateVolume(), got ${shown(value)}`);
    return inState(NO_VOLUME, 'bank');
  }
  if (value.volume.isNegative()) {
    reader.fail('NEGATIVE', path, 'a volume of soil cannot be negative');
  }
  return value;
}

/** A field for a volume in one state; `why` is the reason, for the message. Internal. */
export const inStateField = <S extends SoilState>(state: S, why: string): Field<StateVolume<S>> =>
  custom((reader, value, path) => {
    const read = readState(reader, value, path);
    if (isStateVolume(value) && read.state !== state) {
      const message = `this volume is ${read.state}, and ${why}. Convert it with toState(volume, '${state}', factors)`;
      reader.fail('WRONG_STATE', path, message, { got: read.state, needed: state });
    }
    return inState(read.volume, state);
  });

/** Factors of a soil in the table, with their source. */
export interface TabulatedSoilFactors extends SoilFactors {
  /** Loose over bank volume, as printed. */
  readonly loosePerBank: string;
  /** Compacted over bank volume, as printed. */
  readonly compactedPerBank: string;
  /** Source in which they are printed. */
  readonly source: SourceId;
  /** How far they can be traced. */
  readonly status: SourceStatus;
}

/**
 * Swell and shrinkage of a named soil. Only `sand` was read in a source; the rest are from memory, as
 * `status` shows. Measure a load of your own soil.
 *
 * @throws `UNKNOWN_CHOICE`
 * @source soil-factors-text
 * @source fm-5-434
 * @example
 * soilFactors('sand').status //=> 'read'
 * soilFactors('clay').status //=> 'memory'
 */
export function soilFactors(soil: SoilName): TabulatedSoilFactors {
  const reader = makeReader();
  const name = reader.choice(soil, ['soil'], SOIL_NAMES);
  reader.finish();
  const factors = SOIL_STATE_FACTORS[name];
  return Object.freeze({ ...factors, status: statusOf(factors.source) });
}
