import { attempt } from '../attempt.js';
import type { Reader } from '../input/reader.js';
import { readCompactedPerLoose } from '../input/compaction-ratio.js';
import type { DensityInput } from '../units/construct.js';
import { density } from '../units/construct.js';
import { exactOf, type Density } from '../units/quantity.js';
import { decimalRatio, divideRatios, ONE_RATIO, signOfRatio, type Ratio } from '../units/ratio.js';
import { readNumber, type NumberInput } from '../units/read-number.js';
import { overRatio, timesRatio } from './exact.js';
import { DENSITY } from './limits.js';

/**
 * How heavy a material is, dry: two of the three say the third, since
 * `compacted per loose = loose density / compacted density`.
 */
export interface DryDensityInput {
  /** Dry, compacted in place. */
  readonly compactedDryDensity?: DensityInput;
  /** Dry, as it lies in a truck or heap. */
  readonly looseDryDensity?: DensityInput;
  /** Compacted over loose volume, 0.5 to 1. */
  readonly compactedPerLoose?: number | string;
}

/** Densities that have been read. Internal. */
export interface DryDensity {
  readonly compacted: Density;
  readonly loose: Density;
  readonly compactedPerLoose: Ratio;
}

const STAND_IN: DryDensity = Object.freeze({
  compacted: density(1, 'kg/m3'),
  loose: density(1, 'kg/m3'),
  compactedPerLoose: ONE_RATIO,
});

/**
 * Reads two of compacted dry density, loose dry density and compacted over loose. `measured` stands
 * in for the ratio where it was not given. Internal.
 */
export function readDryDensity(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  measured?: Ratio,
): DryDensity {
  const read = (name: 'compactedDryDensity' | 'looseDryDensity') =>
    fields[name] === undefined
      ? undefined
      : reader.quantity('density', fields[name], [name], DENSITY);
  const [compacted, loose] = [read('compactedDryDensity'), read('looseDryDensity')];
  const given =
    fields['compactedPerLoose'] === undefined
      ? undefined
      : readExactRatio(reader, fields['compactedPerLoose']);
  if (compacted !== undefined && loose !== undefined) {
    if (given !== undefined) {
      reader.fail(
        'CONFLICTING_FIELDS',
        ['compactedPerLoose'],
        'give two of compactedDryDensity, looseDryDensity and compactedPerLoose: the third follows',
      );
    }
    return fromBoth(reader, compacted, loose);
  }
  const ratio = given ?? measured;
  if (ratio === undefined || (compacted === undefined && loose === undefined)) {
    const missing = ratio === undefined ? 'compactedPerLoose' : 'compactedDryDensity';
    reader.fail(
      'REQUIRED',
      [missing],
      'is missing: give two of compactedDryDensity, looseDryDensity and compactedPerLoose',
    );
    return STAND_IN;
  }
  return fromRatio(ratio, compacted, loose);
}

/** The ratio with all of its digits, once it is known to be one that stone can have. */
function readExactRatio(reader: Reader, value: unknown): Ratio {
  const path = ['compactedPerLoose'];
  const checked = readCompactedPerLoose(reader, value, path);
  const all = attempt(() => readNumber(value as NumberInput));
  return all.ok && signOfRatio(all.value) > 0 ? all.value : decimalRatio(checked);
}

function fromBoth(reader: Reader, compacted: Density, loose: Density): DryDensity {
  const isRead = [compacted, loose].every((one) => !one.isZero() && !one.isNegative());
  if (!isRead) return STAND_IN;
  const ratio = loose.dividedBy(compacted);
  readCompactedPerLoose(reader, ratio, ['looseDryDensity']);
  return {
    compacted,
    loose,
    compactedPerLoose: divideRatios(exactOf(loose), exactOf(compacted)),
  };
}

function fromRatio(ratio: Ratio, compacted?: Density, loose?: Density): DryDensity {
  const dry = compacted ?? overRatio(loose ?? STAND_IN.loose, ratio);
  return {
    compacted: dry,
    loose: loose ?? timesRatio(dry, ratio),
    compactedPerLoose: ratio,
  };
}
