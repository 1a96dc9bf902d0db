import { fault, type FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { SOIL_NAMES, SOIL_STATE_FACTORS, type SoilName } from '../sources/soil-state-factors.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { toQuantity, type VolumeInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { isQuantity, type Volume } from '../units/quantity.js';
import type { VolumeUnit } from '../units/catalogue.js';

/** Whether soil lies undisturbed, is dug and loose, or is compacted in place. */
export type SoilState = 'bank' | 'loose' | 'compacted';

/**
 * A volume with its state in the type: a loose volume does not compile where a bank volume is
 * needed. `to` and `toNumber` read the volume.
 */
export interface StateVolume<S extends SoilState> {
  readonly state: S;
  readonly volume: Volume;
  to(unit: VolumeUnit): Decimal;
  toNumber(unit: VolumeUnit): number;
}

/** Volumes of one soil in its states, against the bank. */
export interface SoilFactors {
  readonly loosePerBank: number | string;
  readonly compactedPerBank: number | string;
}

const NOT_NEGATIVE = 'a volume of soil must not be negative';
const STATES: readonly SoilState[] = ['bank', 'loose', 'compacted'];

/** What state volumes inherit, so that their own fields stay plain data. */
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
 * @throws `STATE_MISSING`, `NEGATIVE` and the reading codes
 * @example
 * stateVolume('10 yd3', 'bank').state //=> 'bank'
 */
export function stateVolume<S extends SoilState>(volume: VolumeInput, state: S): StateVolume<S> {
  if (!STATES.includes(state)) {
    throw fault('STATE_MISSING', `say whether the volume is ${STATES.join(', ')}`);
  }
  const read = toQuantity('volume', volume);
  if (read.isNegative()) throw fault('NEGATIVE', NOT_NEGATIVE);
  return inState(read, state);
}

/** Gives a volume that has been worked out its state. Internal. */
export function inState<S extends SoilState>(volume: Volume, state: S): StateVolume<S> {
  const plain = Object.create(READABLE) as { state: S; volume: Volume };
  plain.state = state;
  plain.volume = volume;
  return Object.freeze(plain) as StateVolume<S>;
}

/**
 * Turns a volume of soil from one state into another: `loose = bank x (loose per bank)`,
 * `compacted = bank x (compacted per bank)`. Exact: there and back gives the same volume.
 *
 * @param volume - from {@link stateVolume}
 * @param to - the state wanted
 * @param factors - `loosePerBank` (0.9 to 3) and `compactedPerBank` (0.4 to 2) of this soil
 * @throws `RATIO_OUT_OF_RANGE`, `STATE_MISSING`, `NEGATIVE`, `WRONG_TYPE`
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
  if (!isStateVolume(volume) || !STATES.includes(to)) {
    throw fault('STATE_MISSING', `say whether the volume is ${STATES.join(', ')}`);
  }
  const reader = makeReader();
  if (volume.volume.isNegative()) reader.fail('NEGATIVE', ['volume'], NOT_NEGATIVE);
  const read = readSoilFactors(reader, factors, ['factors']);
  reader.finish();
  if (volume.state === to) return inState(volume.volume, to);
  const bank = volume.volume.dividedBy(perBank(volume.state, read));
  return inState(bank.times(perBank(to, read)), to);
}

interface ReadFactors {
  readonly loosePerBank: Decimal;
  readonly compactedPerBank: Decimal;
}

function perBank(state: SoilState, factors: ReadFactors): Decimal | 1 {
  if (state === 'bank') return 1;
  return state === 'loose' ? factors.loosePerBank : factors.compactedPerBank;
}

/** Reads the factors of a soil. Internal. */
export function readSoilFactors(
  reader: Reader,
  value: unknown,
  path: readonly (string | number)[],
): ReadFactors {
  const fields = reader.object(value, path);
  const read = (name: keyof SoilFactors, least: number, most: number) => {
    const factor = reader.number(fields[name], [...path, name], { sign: 'any' });
    if (fields[name] !== undefined && (factor.lt(least) || factor.gt(most))) {
      reader.fail(
        'RATIO_OUT_OF_RANGE',
        [...path, name],
        `must be between ${least} and ${most}, got ${factor.toString()}`,
        { got: factor.toString() },
      );
    }
    return factor;
  };
  return {
    loosePerBank: read('loosePerBank', 0.9, 3),
    compactedPerBank: read('compactedPerBank', 0.4, 2),
  };
}

/** True for a volume with a state. Internal. */
export function isStateVolume(value: unknown): value is StateVolume<SoilState> {
  if (typeof value !== 'object' || value === null) return false;
  const { state, volume } = value as Partial<StateVolume<SoilState>>;
  return STATES.some((one) => one === state) && isQuantity(volume) && volume.dimension === 'volume';
}

/** Makes sure that a field holds a volume in one state, not negative. Internal. */
export function requireState(
  reader: Reader,
  value: unknown,
  { state, path, words }: { state: SoilState; path: FieldPath; words: string },
): void {
  if (!isStateVolume(value) || value.state !== state) reader.fail('STATE_MISSING', path, words);
  else if (value.volume.isNegative()) reader.fail('NEGATIVE', path, NOT_NEGATIVE);
}

/** Factors of a soil of the table, with how far they can be traced. */
export interface TabulatedSoilFactors {
  readonly loosePerBank: string;
  readonly compactedPerBank: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
}

/**
 * Volume factors of a named soil. Only `sand` was read in a source; the rest are from memory: see
 * `status`, and measure a load of your own soil.
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
