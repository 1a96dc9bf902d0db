import { isSettlineError } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { SI_UNIT, type Dimension } from '../../units/catalogue.js';
import { entryOf, anyEntryOf } from '../../units/find-unit.js';
import {
  exactOf,
  fromSI,
  fromUnit,
  isQuantity,
  ownQuantity,
  type AnyQuantity,
} from '../../units/quantity.js';
import { ratioToNumber, ZERO_RATIO } from '../../units/ratio.js';
import { readWritten } from '../../units/read-number.js';
import type { Reading } from './reading.js';
import { WHOLE } from './job-numbers.js';
import { MOST, MOST_LENGTH, MOST_NUMBER, PER_PART, SIGNED } from './saved-limits.js';

/** Digits that no plan is written with: reading them would take long. */
const ENDLESS = /e[+-]?\d{4}/i;

/** A quantity of a dimension, or of any; what cannot be read is a stand-in. Internal. */
export function readSavedQuantity(
  reading: Reading,
  dimension: Dimension | undefined,
  value: unknown,
): AnyQuantity {
  const read = isQuantity(value) ? ownQuantity(value) : fromParts(reading, dimension, value);
  if (read === undefined) return fromSI(dimension ?? 'length', ZERO_RATIO);
  if (dimension !== undefined && read.dimension !== dimension) {
    reading.fail(`expected a quantity of ${dimension}, got ${shown(read)}`);
    return fromSI(dimension, ZERO_RATIO);
  }
  checkSize(reading, read, dimension === undefined);
  return read;
}

function fromParts(
  reading: Reading,
  dimension: Dimension | undefined,
  saved: unknown,
): AnyQuantity | undefined {
  const parts = partsOf(saved);
  if (parts === undefined) {
    const unit = SI_UNIT[dimension ?? 'length'];
    reading.fail(
      `expected { value, unit }, such as { "value": "1", "unit": "${unit}" }, got ${shown(saved)}`,
    );
    return undefined;
  }
  const { value, unit } = parts;
  reading.spend(typeof value === 'string' ? value.length / PER_PART : 0);
  const entry = tried(reading, 'unit', () =>
    dimension === undefined ? anyEntryOf(unit) : entryOf(dimension, unit),
  );
  const exact = tried(reading, 'value', () => readWritten(value));
  if (entry === undefined || exact === undefined) return undefined;
  return fromUnit(entry.dimension, exact, entry.symbol as never);
}

interface Parts {
  readonly value: string | number;
  readonly unit: unknown;
}

function partsOf(saved: unknown): Parts | undefined {
  if (typeof saved !== 'object' || saved === null || Object.keys(saved).length !== 2) {
    return undefined;
  }
  const { value, unit } = saved as Partial<Record<'value' | 'unit', unknown>>;
  if (typeof unit !== 'string') return undefined;
  if (typeof value === 'number') return { value, unit };
  return typeof value === 'string' && !ENDLESS.test(value) ? { value, unit } : undefined;
}

function tried<T>(reading: Reading, part: 'value' | 'unit', read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    reading.fail(error.message, [part]);
    return undefined;
  }
}

/** Limits by field and dimension; a figure of a warning or a step may have any sign. */
function checkSize(reading: Reading, read: AnyQuantity, isAnySign: boolean): void {
  const { dimension } = read;
  const name = nameOf(reading.at);
  const size = ratioToNumber(exactOf(read));
  const own = Object.hasOwn(MOST_LENGTH, name) && dimension === 'length';
  const most = own ? MOST_LENGTH[name] : undefined;
  if (!(Math.abs(size) <= (most ?? MOST[dimension]))) {
    reading.fail(`${shown(read)} is more than any plan holds. Check the digits and the unit`);
  }
  if (size >= 0 || isAnySign || (SIGNED.has(name) && CAN_BE_SIGNED.has(dimension))) return;
  reading.fail(`${shown(read)} is negative. This figure is zero or more`);
}

const CAN_BE_SIGNED: ReadonlySet<Dimension> = new Set(['length', 'slope']);

/** The name of the field; an index has that of its list. */
function nameOf(at: readonly (string | number)[]): string {
  for (let k = at.length - 1; k >= 0; k -= 1) {
    const step = at[k];
    if (typeof step === 'string') return step;
  }
  return '';
}

/** A plain number; what cannot be read is 0. A figure of a warning or a step may have any sign. Internal. */
export function readSavedNumber(reading: Reading, value: unknown, isAnySign = false): number {
  const name = nameOf(reading.at);
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    reading.fail(`expected a number, got ${shown(value)}`);
    return 0;
  }
  if (Math.abs(value) > MOST_NUMBER) {
    reading.fail(`${value} is more than any plan holds. Check the digits`);
  }
  if (value < 0 && !isAnySign) {
    reading.fail(`${value} is negative. This figure is zero or more`);
  }
  if (WHOLE.has(name) && !Number.isInteger(value)) reading.fail(`${value} is not a whole number`);
  return value;
}

/** A number of the job as digits. Internal. */
export function readSavedDigits(reading: Reading, value: unknown): string | number {
  const isText = typeof value === 'string' && !ENDLESS.test(value);
  if (!isText && typeof value !== 'number') {
    reading.fail(`expected digits as text, got ${shown(value)}`);
    return 0;
  }
  reading.spend(isText ? value.length / PER_PART : 0);
  try {
    const size = ratioToNumber(readWritten(value));
    if (!(Math.abs(size) <= MOST_NUMBER)) {
      reading.fail(`${shown(value)} is more than any job holds`);
    }
    if (size < 0) reading.fail(`${shown(value)} is negative. This figure is zero or more`);
    if (WHOLE.has(nameOf(reading.at)) && !Number.isInteger(size)) {
      reading.fail(`${shown(value)} is not a whole number`);
    }
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    reading.fail(error.message);
    return 0;
  }
  return value;
}
