import { exactlyOne } from '../input/exactly-one.js';
import { optional, quantity, text } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import type { OverLength } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import { fromSI, type Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { worstVerdict, type Verdict } from '../verdict.js';
import { withWorking } from '../working.js';
import type { EdgeGap } from './edge-gaps.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import type { Limits } from './limits.js';
import { profileField, type LineReading, type ProfileReadingInput } from './line-readings.js';
import { gapStep, slideEdge, type Straightedge } from './straightedge.js';
import {
  checkTolerance,
  limitsFrom,
  overLengthField,
  overLengthOf,
  toleranceField,
  type Needed,
  type OverLengthInput,
  type SetWith,
  type Tolerance,
  type OverLengthLimit,
} from './tolerance.js';

/** A profile and the straightedge that is slid along it. */
export interface CheckFlatnessOptions {
  /** 2 to 10 000 readings along a line; 3 or more under the straightedge to have it judged. */
  readonly profile: readonly ProfileReadingInput[];
  /**
   * A set of `TOLERANCE_SETS` that limits flatness, or your own largest gap over a straightedge of a
   * length. This, or `length`.
   */
  readonly tolerance?: SetWith<'flatness'> | OverLengthInput;
  /** `base`, `bedding` or `pavers`; with your own limits any name. Needed with `tolerance`. */
  readonly layer?: string;
  /** How far off a gap may be, either way [length], 0 to 10 m. Default: 0. Goes with `tolerance`. */
  readonly uncertainty?: LengthInput;
  /** Length of a straightedge, to measure without a verdict [length]. This, or `tolerance`. */
  readonly length?: LengthInput;
}

/** What has a flatness judged. */
export interface WithTolerance {
  /** A set of `TOLERANCE_SETS`, or your own largest gap over a length. */
  readonly tolerance: SetWith<'flatness'> | OverLengthInput;
}

/** What has a flatness measured, without a verdict. */
export interface WithEdgeLength {
  /** Length of the straightedge. */
  readonly length: LengthInput;
  /** Not given: there is no verdict. */
  readonly tolerance?: undefined;
}

const LAYER = text();

const OPTIONS = shapeOf<CheckFlatnessOptions>()({
  profile: profileField,
  tolerance: optional(toleranceField(overLengthField)),
  layer: optional(LAYER),
  uncertainty: optional(quantity(TOLERANCE)),
  length: optional(quantity(SITE_LENGTH)),
});

/** The largest gap over a reading, wherever the straightedge lies. */
export interface CheckedGap extends CheckedReading {
  /** Distance along the line. */
  readonly station: Length;
  /** Stations of the two readings that the straightedge rests on; null if it never bridges this one. */
  readonly between: readonly [Length, Length] | null;
}

/** The flatness of a surface; the `value` of a reading is the largest gap over it. */
export interface FlatnessCheck
  extends LayerCheck<Length>, Omit<Straightedge, 'working' | 'readings'> {
  /** What the check is about. */
  readonly check: 'flatness';
  /** Largest gap allowed. */
  readonly limits: Limits<null, Length>;
  /** The straightedge of the tolerance. */
  readonly edgeLength: Length;
  /** Every reading, judged. */
  readonly readings: readonly CheckedGap[];
  /** The readings that do not pass. */
  readonly outOfTolerance: readonly CheckedGap[];
}

/**
 * Measures or checks the flatness of a surface: a straightedge is slid along the sampled profile.
 * Wherever it is set down it rests on two readings, neighbours on the upper hull of those under it, so
 * that none is above it. Over all such pairs i, j not farther apart than the edge is long, and each
 * reading k between: `gap = z_i + (z_j - z_i)(s_k - s_i)/(s_j - s_i) - z_k`. Exact; gaps are plumb, so a
 * profile that is tilted as a whole gives the same. It knows the readings alone: take them close
 * together, a tenth of the edge apart or less, high and low spots among them.
 *
 * With `tolerance` no reading may be deeper below the edge than it allows; a gap exactly on the limit
 * passes. If somewhere fewer than three readings are under the straightedge, a pass would say nothing
 * about that stretch, and the verdict is `unclear`. With `length` the gap is measured and not judged.
 *
 * @param options - see {@link CheckFlatnessOptions}
 * @returns largest gap, where and on which contacts [length], how well the readings show it; with a
 *   tolerance the verdict, and each reading with its gap, verdict and correction
 * @throws `LIMIT_NOT_SET`, `READINGS_TOO_SPARSE`, `TOO_FEW`, `TOO_MANY`, `NOT_INCREASING`,
 *   `DUPLICATE_ID`, `REQUIRED`, `CONFLICTING_FIELDS`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source paver-tolerances
 * @source ufgs-02749
 * @source derived
 * @example
 * const profile = [
 *   { station: '0 ft', height: '0 in' },
 *   { station: '5 ft', height: '-7/16 in' },
 *   { station: '10 ft', height: '0 in' },
 * ];
 * const check = checkFlatness({ layer: 'base', profile, tolerance: 'paver-guide-in' });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['2: add 7/16 in']
 * const edge = checkFlatness({ profile, length: '10 ft' });
 * edge.greatestGap.to('in').toString() //=> '0.4375'
 * edge.contacts.map(({ station }) => station.to('ft').toString()) //=> ['0', '10']
 */
export function checkFlatness(options: CheckFlatnessOptions & WithTolerance): FlatnessCheck;
export function checkFlatness(options: CheckFlatnessOptions & WithEdgeLength): Straightedge;
export function checkFlatness(options: CheckFlatnessOptions): FlatnessCheck | Straightedge;
export function checkFlatness(options: CheckFlatnessOptions): FlatnessCheck | Straightedge {
  const { tolerance, length, ...rest } = readOptions(options, OPTIONS, checkOptions);
  if (tolerance !== undefined) return judgeFlatness(rest, tolerance);
  const edgeLength = length ?? NO_LENGTH;
  const { edge } = slideEdge(rest.profile, { edgeLength, least: 2 });
  return withWorking(edge, () => [gapStep(edge, edgeLength)]);
}

/** A tolerance with its layer, or a length. */
const checkOptions: Check<typeof OPTIONS> = (reader, { tolerance, layer }, path, raw) => {
  const form = exactlyOne(reader, raw, ['tolerance', 'length'], [...path, 'tolerance']);
  if (form === 'length') {
    for (const name of ['layer', 'uncertainty']) {
      if (raw[name] === undefined) continue;
      const message = 'goes with tolerance, and without one nothing is judged. Leave it out';
      reader.fail('CONFLICTING_FIELDS', [...path, name], message);
    }
  }
  if (form !== 'tolerance') return;
  // its own reading says that it is missing
  if (raw['layer'] === undefined) LAYER.read(reader, undefined, [...path, 'layer']);
  if (layer === undefined) return;
  checkTolerance(reader, tolerance, flatnessOf(layer), [...path, 'tolerance']);
};

const flatnessOf = (layer: string): Needed<OverLength> => ({
  words: `flatness of the ${layer}`,
  find: ({ flatness }) =>
    layer === 'base' || layer === 'bedding' || layer === 'pavers' ? flatness?.[layer] : undefined,
});

type Profile = Pick<Values<typeof OPTIONS>, 'profile' | 'layer' | 'uncertainty'>;

function judgeFlatness(
  { profile, layer = '', uncertainty = NO_LENGTH }: Profile,
  given: Tolerance<OverLengthLimit>,
): FlatnessCheck {
  const tolerance = limitsFrom(given, flatnessOf(layer), overLengthOf);
  const edgeLength = tolerance.over;
  const { edge, gaps } = slideEdge(profile, { edgeLength, least: 3 });
  const limits = { minimum: null, maximum: tolerance.maximum };
  const fix = layer === 'pavers' ? ('raise' as const) : ('add' as const);
  const readings = gapsOver(profile, gaps).map(({ id, station, gap, between }): CheckedGap => {
    const judged = { id, value: gap, limits, uncertainty };
    return { ...judge(judged, (value) => move(fix, value)), station, between };
  });
  const worst = worstVerdict(readings.map((reading) => reading.verdict));
  const verdict = worst === 'pass' && edge.isSparse ? 'unclear' : worst;
  const parts = {
    check: 'flatness',
    subject: layer,
    edgeLength,
    ...edge,
    limits,
    origin: tolerance,
    readings,
    verdict,
    note: noteOn(verdict, worst),
  } as const;
  return layerCheck(parts, () => [{ ...gapStep(edge, edgeLength), source: sourceOf(tolerance) }]);
}

/** The largest gap over each reading; none where the straightedge never bridges it. */
function gapsOver(profile: readonly LineReading[], gaps: readonly (EdgeGap | null)[]) {
  return profile.map(({ id, station }, index) => {
    const found = gaps[index] ?? null;
    if (found === null) return { id, station, gap: NO_LENGTH, between: null };
    const [left, right] = found.contacts.map((contact) => profile[contact]?.station ?? station);
    const between = [left ?? station, right ?? station] as const;
    return { id, station, gap: fromSI('length', found.gap), between };
  });
}

function noteOn(verdict: Verdict, worst: Verdict): string {
  if (verdict !== worst) {
    return 'Some positions of the straightedge have fewer than three readings under it, so this check proves nothing there. Take readings closer together.';
  }
  if (verdict === 'pass') return 'No gap under the straightedge is out of tolerance.';
  if (verdict === 'unclear')
    return 'Too close to the limit to tell. Take more readings, then check again.';
  return 'Fill the low spots listed. If one high spot holds the straightedge up on both sides, take that down instead. Then measure again.';
}
