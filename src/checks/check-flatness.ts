import { exactlyOne } from '../input/exactly-one.js';
import { optional, quantity, text } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { entry, known } from '../invariant.js';
import { shownText } from '../shown-text.js';
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
  checkLayerSet,
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

/** A profile, and the straightedge to slide along it. */
export interface CheckFlatnessOptions {
  /** Readings along a line, 2 to 10 000; a verdict needs 3 or more under the straightedge. */
  readonly profile: readonly ProfileReadingInput[];
  /**
   * A set of `TOLERANCE_SETS` that limits flatness, or your own maximum gap over a straightedge of
   * a length. Give this or `length`.
   */
  readonly tolerance?: SetWith<'flatness'> | OverLengthInput;
  /**
   * Layer: `base`, `bedding` or `pavers`; with your own limits any name. Needed with `tolerance`.
   */
  readonly layer?: string;
  /** Uncertainty of a gap, either way [length], 0 to 10 m. Default: 0. Only with `tolerance`. */
  readonly uncertainty?: LengthInput;
  /** Length of a straightedge, to measure without a verdict [length]. Give this or `tolerance`. */
  readonly length?: LengthInput;
}

/** Flatness with a verdict. */
export interface WithTolerance {
  /** A set of `TOLERANCE_SETS`, or your own maximum gap over a length. */
  readonly tolerance: SetWith<'flatness'> | OverLengthInput;
}

/** Flatness measured without a verdict. */
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

/** The largest gap over a reading, over all positions of the straightedge. */
export interface CheckedGap extends CheckedReading {
  /** Distance along the line. */
  readonly station: Length;
  /** Height above the level line of the readings. */
  readonly height: Length;
  /** Stations of the two readings that hold the straightedge; null if it never bridges this one. */
  readonly between: readonly [Length, Length] | null;
}

/** The flatness of a surface; the `value` of a reading is the largest gap over it. */
export interface FlatnessCheck
  extends LayerCheck<Length, CheckedGap>, Omit<Straightedge, 'working' | 'readings'> {
  /** Kind of check. */
  readonly check: 'flatness';
  /** Maximum gap. */
  readonly limits: Limits<null, Length>;
  /** The straightedge of the tolerance. */
  readonly edgeLength: Length;
}

/**
 *
 * Measures or checks the flatness of a surface: a straightedge is slid along the sampled profile.
 * In every position it rests on two readings that are neighbours on the upper hull of those under
 * it, so none is above it. Over all such pairs i, j not farther apart than the edge is long, and
 * each reading k between: `gap = z_i + (z_j - z_i)(s_k - s_i)/(s_j - s_i) - z_k`. Exact; gaps are
 * plumb, so tilting the whole profile changes nothing. The check knows only the readings: take them
 * close together, a tenth of the edge apart or less, and include high and low spots.
 *
 * With `tolerance` a gap exactly on the limit passes. If some position of the straightedge has
 * fewer than three readings under it, a pass proves nothing there, and the verdict is `unclear`.
 * With `length` the gap is measured and not judged.
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
  const edgeLength = known(length, 'length');
  const slid = slideEdge(rest.profile, { edgeLength, least: 2 });
  return withWorking(slid.edge, () => [gapStep(slid, edgeLength)]);
}

/** A tolerance with its layer, or a length. */
const checkOptions: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const form = exactlyOne(reader, raw, ['tolerance', 'length'], [...path, 'tolerance']);
  if (form === 'length') {
    for (const name of ['layer', 'uncertainty']) {
      if (raw[name] === undefined) continue;
      const message = 'belongs to tolerance, and there is none. Leave it out';
      reader.fail('CONFLICTING_FIELDS', [...path, name], message);
    }
  }
  if (form !== 'tolerance') return;
  // reading the field already reports that it is missing
  if (raw['layer'] === undefined) LAYER.read(reader, undefined, [...path, 'layer']);
  checkLayerSet(flatnessOf)(reader, values, path);
};

const flatnessOf = (layer: string): Needed<OverLength> => ({
  words: `flatness of the ${shownText(layer)}`,
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
  const slid = slideEdge(profile, { edgeLength, least: 3 });
  const { edge, gaps } = slid;
  const limits = { minimum: null, maximum: tolerance.maximum };
  const fix = layer === 'pavers' ? ('raise' as const) : ('add' as const);
  const readings = gapsOver(profile, gaps).map(
    ({ id, station, height, gap, between }): CheckedGap => {
      const judged = { id, value: gap, limits, uncertainty };
      return { ...judge(judged, (value) => move(fix, value)), station, height, between };
    },
  );
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
  return layerCheck(parts, () => [{ ...gapStep(slid, edgeLength), source: sourceOf(tolerance) }]);
}

/** The largest gap over each reading; none if the straightedge never bridges it. */
function gapsOver(profile: readonly LineReading[], gaps: readonly (EdgeGap | null)[]) {
  return profile.map(({ id, station, value: height }, index) => {
    const found = gaps[index] ?? null;
    if (found === null) return { id, station, height, gap: NO_LENGTH, between: null };
    const [left, right] = found.contacts;
    const between = [entry(profile, left).station, entry(profile, right).station] as const;
    return { id, station, height, gap: fromSI('length', found.gap), between };
  });
}

function noteOn(verdict: Verdict, worst: Verdict): string {
  if (verdict !== worst) {
    return 'Some positions of the straightedge have fewer than three readings under it, so this check proves nothing there. Take readings closer together.';
  }
  if (verdict === 'pass') return 'No gap under the straightedge is out of tolerance.';
  if (verdict === 'unclear')
    return 'Too close to the limit to tell. Take more readings, then check again.';
  return 'Fill the low spots listed. If one high spot holds the straightedge up on both sides, cut that instead. Then measure again.';
}
