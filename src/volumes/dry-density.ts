import type { FieldPath } from '../errors.js';
import { exactCompactedPerLoose, readCompactedPerLoose } from '../input/compaction-ratio.js';
import { optional, quantity } from '../input/field.js';
import { DENSITY } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { isLeftOut, type Values } from '../input/shape.js';
import type { DensityInput } from '../units/construct.js';
import { exactOf, type Density } from '../units/quantity.js';
import { divideRatios, ONE_RATIO, type Ratio } from '../units/ratio.js';
import { overRatio } from '../units/times-ratio.js';

/**
 * Dry density of a material. Any two of the three fields give the third:
 * `compacted per loose = loose density / compacted density`. The ratio alone gives volumes but no
 * masses.
 */
export interface DryDensityInput {
  /** Dry density, compacted in place [density], more than 0 and at most 5 t/m3. Default: none. */
  readonly compactedDryDensity?: DensityInput;
  /** Dry density, loose in a truck or heap [density], more than 0 and at most 5 t/m3. Default: none. */
  readonly looseDryDensity?: DensityInput;
  /** Compacted over loose volume, 0.5 to 1. Default: that of the two densities. */
  readonly compactedPerLoose?: number | string;
}

/** Options with at least one density: the result has masses too. */
export type WithDensity =
  | {
      /** Dry density, compacted in place [density]. */
      readonly compactedDryDensity: DensityInput;
    }
  | {
      /** Dry density, loose in a truck or heap [density]. */
      readonly looseDryDensity: DensityInput;
    };

/** The fields of {@link DryDensityInput}. Internal. */
export const DRY_DENSITY = {
  compactedDryDensity: optional(quantity(DENSITY)),
  looseDryDensity: optional(quantity(DENSITY)),
  compactedPerLoose: optional(exactCompactedPerLoose),
} as const;

type Densities = Values<typeof DRY_DENSITY>;

/** The densities and their ratio. Internal. */
export interface DryDensity {
  /** In place; null if no density is given. */
  readonly compacted: Density | null;
  readonly compactedPerLoose: Ratio;
}

/**
 * Checks that two of the three fields are given, or the ratio alone. `isMeasured` is true if the ratio
 * was measured another way and need not be given. Internal.
 */
export function checkDryDensity(
  reader: Reader,
  values: Partial<Densities>,
  raw: Readonly<Record<string, unknown>>,
  { path, isMeasured }: { readonly path: FieldPath; readonly isMeasured: boolean },
): void {
  const isGiven = (name: keyof Densities) => raw[name] !== undefined;
  const at = [...path, 'compactedPerLoose'];
  const hasBoth = isGiven('compactedDryDensity') && isGiven('looseDryDensity');
  if (hasBoth && isGiven('compactedPerLoose')) {
    const message =
      'the two densities already give it. Leave out compactedDryDensity, looseDryDensity or this';
    reader.fail('CONFLICTING_FIELDS', at, message);
  }
  const lacksDensity =
    isLeftOut(values, 'compactedDryDensity') || isLeftOut(values, 'looseDryDensity');
  if (lacksDensity && isLeftOut(values, 'compactedPerLoose') && !isMeasured) {
    const message =
      'missing. Write compacted over loose volume, such as 0.8, or both dry densities';
    reader.fail('REQUIRED', at, message);
  }
  const { compactedDryDensity: compacted, looseDryDensity: loose } = values;
  if (compacted === undefined || loose === undefined) return;
  readCompactedPerLoose(reader, loose.dividedBy(compacted), [...path, 'looseDryDensity']);
}

/** Works out density and ratio from the checked fields. Internal. */
export function dryDensityOf(
  { compactedDryDensity, looseDryDensity, compactedPerLoose: ratio }: Densities,
  measured: Ratio = ONE_RATIO,
): DryDensity {
  if (compactedDryDensity !== undefined && looseDryDensity !== undefined) {
    const both = divideRatios(exactOf(looseDryDensity), exactOf(compactedDryDensity));
    return { compacted: compactedDryDensity, compactedPerLoose: both };
  }
  const perLoose = ratio ?? measured;
  const fromLoose = looseDryDensity === undefined ? null : overRatio(looseDryDensity, perLoose);
  return { compacted: compactedDryDensity ?? fromLoose, compactedPerLoose: perLoose };
}
