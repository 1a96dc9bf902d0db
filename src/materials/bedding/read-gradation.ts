import type { FieldPath } from '../../errors.js';
import { choice, custom, list, number, object, optional, quantity } from '../../input/field.js';
import { PERCENT_OFF, PERCENT_PASSING, SIEVE } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Check, type Values } from '../../input/shape.js';
import { entry } from '../../invariant.js';
import { GRADATIONS, type GradationName } from '../../sources/gradations.js';
import { length, type LengthInput } from '../../units/construct.js';
import { ZERO } from '../../units/decimal.js';
import { exactOf, type Length } from '../../units/quantity.js';
import { compareRatios, divideRatios, ratioToDecimal, wholeRatio } from '../../units/ratio.js';
import { readNumber } from '../../units/read-number.js';
import { refuseCrossed } from '../within-limits.js';

/** Percent passing a sieve, from the laboratory's sheet. */
export interface SievePassingInput {
  /** Opening of the sieve [length], more than 0 and at most 200 mm. Each sieve once. */
  readonly sieve: LengthInput;
  /** Percent by mass that passes, 0 to 100. */
  readonly percent: number | string;
}

/** Limits of percent passing for a sieve. */
export interface SieveLimitsInput {
  /** Opening of the sieve [length], more than 0 and at most 200 mm. Each sieve once. */
  readonly sieve: LengthInput;
  /** Minimum percent passing by mass, 0 to 100. */
  readonly minimum: number | string;
  /** Maximum percent passing by mass, 0 to 100. */
  readonly maximum: number | string;
}

/** A sieve analysis, and the limits for the sand. */
export interface CheckGradationOptions {
  /** Results of the laboratory, in any order, 1 to 100 sieves. */
  readonly passing: readonly SievePassingInput[];
  /**
   * The name of a published table in `GRADATIONS`, or your own limits, 1 to 100 sieves. Two limits
   * of `bedding-sand` are most likely misprints: `bedding-sand-capped` is the same table without
   * them.
   */
  readonly limits: GradationName | readonly SieveLimitsInput[];
  /**
   * Uncertainty of a percentage, either way, in percent, 0 to 20. It does not apply to 0 and 100,
   * because all or nothing is seen, not weighed. Default: 0.
   */
  readonly uncertainty?: number | string;
}

const PASSING = shapeOf<SievePassingInput>()({
  sieve: quantity(SIEVE),
  percent: number(PERCENT_PASSING),
});

const LIMITS = shapeOf<SieveLimitsInput>()({
  sieve: quantity(SIEVE),
  minimum: number(PERCENT_PASSING),
  maximum: number(PERCENT_PASSING),
});

const SIEVES = { of: 'sieves', most: 100 } as const;

const ownLimits = list(
  object(LIMITS, (reader, { minimum, maximum }, path) => {
    if (minimum !== undefined && maximum !== undefined)
      refuseCrossed(reader, maximum.lt(minimum), path);
  }),
  SIEVES,
);

const NAMES = [
  'bedding-sand',
  'bedding-sand-capped',
  'concrete-sand-c33',
  'joint-sand',
  'joint-sand-c144-natural',
  'joint-sand-c144-manufactured',
  'washed-coarse-sand',
  'stone-57',
  'sand-zone-1',
  'sand-zone-2',
  'sand-zone-3',
  'sand-zone-4',
  'fine-sand',
] as const satisfies GradationName[];
const published = choice(NAMES);

/** The fields of {@link CheckGradationOptions}. Internal. */
export const GRADATION_OPTIONS = shapeOf<CheckGradationOptions>()({
  passing: list(object(PASSING), SIEVES),
  limits: custom(readLimits),
  uncertainty: optional(number(PERCENT_OFF), ZERO),
});

/** Percent passing a sieve. Internal. */
export type Passing = Values<typeof PASSING>;
/** Limits of percent passing for a sieve. Internal. */
export type LimitRow = Values<typeof LIMITS>;

function readLimits(reader: Reader, value: unknown, path: FieldPath) {
  if (Array.isArray(value)) {
    return { rows: ownLimits.read(reader, value, path), source: null, isOwn: true };
  }
  const table = GRADATIONS[published.read(reader, value, path)];
  const figure = (text: string) => ratioToDecimal(readNumber(text));
  const rows = table.map(({ sieve, minimum, maximum }): LimitRow => ({
    sieve: length(`${sieve.value} ${sieve.unit}`),
    minimum: figure(minimum.value),
    maximum: figure(maximum.value),
  }));
  return { rows, source: entry(table, 0).sieve.source, isOwn: false };
}

/** Sieves in the order of the sheet. Internal. */
export const coarsestFirst = <T extends { readonly sieve: Length }>(rows: readonly T[]): T[] =>
  [...rows].sort((a, b) => b.sieve.compare(a.sieve));

/** Each sieve once, and percent passing. Internal. */
export const checkSheet: Check<typeof GRADATION_OPTIONS> = (reader, { passing, limits }, path) => {
  if (passing !== undefined) {
    refuseTwins(reader, passing, [...path, 'passing']);
    refuseRise(reader, passing, [...path, 'passing']);
  }
  if (limits?.isOwn === true) refuseTwins(reader, limits.rows, [...path, 'limits']);
};

function refuseTwins(
  reader: Reader,
  rows: readonly { readonly sieve: Length }[],
  path: FieldPath,
): void {
  rows.forEach(({ sieve }, index) => {
    const earlier = rows.findIndex((other) => isSameSieve(sieve, other.sieve));
    if (earlier >= index) return;
    const message = 'the same sieve is listed before this one. List each sieve once';
    reader.fail('DUPLICATE_ID', [...path, index, 'sieve'], message, { earlier });
  });
}

/** A finer sieve cannot pass more. */
function refuseRise(reader: Reader, passing: readonly Passing[], path: FieldPath): void {
  const sorted = coarsestFirst(passing.map((row, index) => ({ ...row, index })));
  sorted.slice(1).forEach((finer, before) => {
    const coarser = entry(sorted, before);
    if (finer.percent.lte(coarser.percent)) return;
    const message = `${finer.percent.toString()}% passes this sieve, more than the ${coarser.percent.toString()}% of a coarser one. Write percent passing, not percent retained`;
    reader.fail('PASSING_RISES', [...path, finer.index, 'percent'], message);
  });
}

/** Openings within one percent of the first. Internal. */
export function isSameSieve(a: Length, b: Length): boolean {
  const apart = exactOf(a.minus(b).abs());
  return compareRatios(apart, divideRatios(exactOf(a.abs()), wholeRatio(100))) <= 0;
}
