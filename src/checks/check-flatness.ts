import { makeReader } from '../input/reader.js';
import type { ToleranceSet } from '../sources/tolerance-sets.js';
import { length, type LengthInput } from '../units/construct.js';
import { fromSI, type Length } from '../units/quantity.js';
import { worstVerdict, type Verdict } from '../verdict.js';
import type { EdgeGap } from './edge-gaps.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { readLine, type LineReading, type ProfileReadingInput } from './read-profile.js';
import { gapStep, slideEdge, type Straightedge } from './straightedge.js';
import {
  readOverLength,
  readUncertainty,
  type OverLengthInput,
  type SetWith,
} from './tolerance.js';

/** The greatest gap over a reading, wherever the straightedge lies. */
export interface CheckedGap extends CheckedReading {
  readonly station: Length;
  /** Stations of the two readings that the straightedge rests on; null where it never bridges this one. */
  readonly between: readonly [Length, Length] | null;
}

/** The flatness of a surface; the `value` of a reading is the greatest gap over it. */
export interface FlatnessCheck
  extends LayerCheck<Length>, Omit<Straightedge, 'working' | 'readings'> {
  readonly check: 'flatness';
  readonly limits: { readonly least: null; readonly most: Length };
  /** The straightedge of the tolerance. */
  readonly edgeLength: Length;
  readonly readings: readonly CheckedGap[];
  readonly outOfTolerance: readonly CheckedGap[];
}

/**
 * Checks the flatness of a surface: a straightedge is slid along the sampled profile, and no reading
 * may lie deeper below it than the tolerance says. Exact: a gap of just the tolerance passes.
 *
 * Where fewer than three readings stand under the straightedge somewhere, a pass would say nothing
 * about that stretch, and the verdict is `unclear`.
 *
 * @param options.layer - `base`, `bedding` or `pavers`; with limits of your own any name
 * @param options.profile - at least 3 readings under the straightedge: `station`, growing, `height`
 *   [length], and if wanted `id`
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits flatness, or your own `most` gap
 *   `over` a straightedge of a length [length]
 * @param options.uncertainty - how far a gap can be off, either way [length], default none
 * @returns verdict; greatest gap, where and on which contacts; each reading with its gap [length],
 *   verdict and what to add
 * @throws `LIMIT_NOT_SET`, `READINGS_TOO_SPARSE`, `TOO_FEW_POINTS`, `STATION_ORDER`, `DUPLICATE_ID`,
 *   `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source paver-tolerances
 * @source ufgs-02749
 * @source derived
 * @example
 * const check = checkFlatness({
 *   layer: 'base',
 *   profile: [
 *     { station: '0 ft', height: '0 in' },
 *     { station: '5 ft', height: '-7/16 in' },
 *     { station: '10 ft', height: '0 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['2: add 7/16 in']
 */
export function checkFlatness(options: {
  readonly layer: string;
  readonly profile: readonly ProfileReadingInput[];
  readonly tolerance: SetWith<'flatness'> | OverLengthInput;
  readonly uncertainty?: LengthInput;
}): FlatnessCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const layer = reader.text(fields['layer'], ['layer']);
  const profile = readLine(reader, fields['profile'], { field: 'profile', name: 'height' });
  const field = { reader, value: fields['tolerance'], words: `flatness of the ${layer}` };
  const tolerance = readOverLength(field, (set) => flatnessOf(set, layer));
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const edgeLength = tolerance.over;
  const { edge, gaps } = slideEdge(profile, { edgeLength, least: 3 });
  const limits = { least: null, most: tolerance.most };
  const put = layer === 'pavers' ? ('raise' as const) : ('add' as const);
  const readings = gapsOver(profile, gaps).map(({ id, station, gap, between }): CheckedGap => {
    const judged = { id, value: gap, limits, uncertainty };
    return { ...judge(judged, (value) => move(put, value)), station, between };
  });
  const worst = worstVerdict(readings.map((reading) => reading.verdict));
  const verdict = worst === 'pass' && edge.sparse ? 'unclear' : worst;
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

/** The greatest gap over each reading; none where the straightedge never bridges it. */
function gapsOver(profile: readonly LineReading[], gaps: readonly (EdgeGap | null)[]) {
  return profile.map(({ id, station }, index) => {
    const found = gaps[index] ?? null;
    if (found === null) return { id, station, gap: NOTHING, between: null };
    const [left, right] = found.contacts.map((contact) => profile[contact]?.station ?? station);
    const between = [left ?? station, right ?? station] as const;
    return { id, station, gap: fromSI('length', found.gap), between };
  });
}

const NOTHING = length(0, 'm');

const flatnessOf = (set: ToleranceSet, layer: string) =>
  layer === 'base' || layer === 'bedding' || layer === 'pavers' ? set.flatness?.[layer] : undefined;

function noteOn(verdict: Verdict, worst: Verdict): string {
  if (verdict !== worst) {
    return 'Somewhere fewer than three readings stand under the straightedge: what lies between them is not known. Take them closer together.';
  }
  if (verdict === 'pass') return 'No gap under the straightedge is beyond tolerance.';
  if (verdict === 'unclear') return 'Too close to the limit to tell: measure again, more closely.';
  return 'Fill the low spots listed, or, where one high spot holds the straightedge up on both sides, take that down. Then measure again.';
}
