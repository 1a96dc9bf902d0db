import { list, object, optional, quantity, text } from '../../input/field.js';
import { ERROR, THICKNESS, THICKNESS_OR_NONE, TOLERANCE } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { max, min } from '../../units/aggregate.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { type Verdict, verdictOf, worstVerdict } from '../../verdict.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';
import { lengthLimits, type LengthLimitsInput } from '../length-limits.js';

/** Deviation of the base at one spot. */
export interface BaseDeviationInput {
  /** Name of the spot. Each id once. */
  readonly id: string;
  /** Base top as built less as designed [length]: high is positive, low negative; up to 10 m. */
  readonly deviation: LengthInput;
}

/** A bed as designed, and the base as built under it. */
export interface BedRangeOptions {
  /** Compacted bed as designed [length], more than 0 and at most 5 m. */
  readonly nominal: LengthInput;
  /** Deviations of the base, spot by spot, 1 to 10 000. */
  readonly deviations: readonly BaseDeviationInput[];
  /** Limits of the compacted bed, each 0 to 5 m: your own, or those of `BED_LIMITS`. */
  readonly limits: LengthLimitsInput;
  /** Uncertainty of one deviation, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const DEVIATION = shapeOf<BaseDeviationInput>()({ id: text(), deviation: quantity(ERROR) });

const OPTIONS = shapeOf<BedRangeOptions>()({
  nominal: quantity(THICKNESS),
  deviations: list(object(DEVIATION), { of: 'deviations', unique: 'id' }),
  limits: lengthLimits(THICKNESS_OR_NONE),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** The bed at one spot. */
export interface BedReading {
  /** Name of the spot. */
  readonly id: string;
  /** Base top as built less as designed. */
  readonly deviation: Length;
  /** Compacted bed between the base as built and the pavers at finished grade. */
  readonly bed: Length;
  /** Verdict on the bed here. */
  readonly verdict: Verdict;
  /** Too thick or too thin; null if it passes. */
  readonly code: 'too-thick' | 'too-thin' | null;
  /** What to do there; null if it passes. */
  readonly note: string | null;
}

/** Check of the bed that the base as built leaves. */
export interface BedRange extends Worked {
  /** Thinnest bed. */
  readonly thinnest: Length;
  /** Thickest bed. */
  readonly thickest: Length;
  /** The worst of all spots. */
  readonly verdict: Verdict;
  /** Spot by spot, in the order given. */
  readonly readings: readonly BedReading[];
}

/**
 * Checks whether the deviations of the base leave a bed within its limits:
 * `bed = nominal - deviation`, so a low base makes a thick bed. A bed on a limit passes. Do not
 * make up a low base with bedding: a thick spot settles more than the rest.
 *
 * @param options - see {@link BedRangeOptions}
 * @returns thinnest and thickest bed, verdict, each reading with what to do
 * @throws `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `EMPTY_LIST`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const bed = bedRange({
 *   nominal: '25 mm',
 *   deviations: [{ id: 'A', deviation: '7 mm' }, { id: 'B', deviation: '-12 mm' }],
 *   limits: { minimum: '20 mm', maximum: '30 mm' },
 * });
 * bed.thickest.to('mm').toString() //=> '37'
 * bed.readings.map(({ id, code }) => `${id} ${code}`) //=> ['A too-thin', 'B too-thick']
 */
export function bedRange(options: BedRangeOptions): BedRange {
  const { nominal, deviations, limits, uncertainty } = readOptions(options, OPTIONS);
  const readings = deviations.map(({ id, deviation }): BedReading => {
    const bed = nominal.minus(deviation);
    const margin = min([bed.minus(limits.minimum), limits.maximum.minus(bed)]);
    const verdict = verdictOf(margin, uncertainty);
    const isThick = bed.plus(bed).compare(limits.minimum.plus(limits.maximum)) > 0;
    const code = verdict === 'pass' ? null : isThick ? 'too-thick' : 'too-thin';
    const note = code === null ? null : NOTES[verdict === 'unclear' ? 'unclear' : code];
    return { id, deviation, bed, verdict, code, note };
  });
  const beds = readings.map(({ bed }) => bed);
  const range = {
    thinnest: min(beds),
    thickest: max(beds),
    verdict: worstVerdict(readings.map(({ verdict }) => verdict)),
    readings,
  };
  return withWorking(range, () =>
    readings.map(({ id, deviation, bed }) =>
      formulaStep({
        title: `Bed at ${id}`,
        formula: 'b = t - d',
        given: [
          given('t', 'nominal bed', nominal),
          given('d', 'base above (+) or below (-) its level', deviation),
        ],
        result: given('b', 'bed', bed),
        source: 'derived' as const,
      }),
    ),
  );
}

const NOTES = {
  'too-thick':
    'The base is low. Add base stone, level it and compact it. Do not fill with bedding sand.',
  'too-thin': 'The base is high. Take it down, level and compact it again.',
  unclear: 'Too close to the limit to tell. Take more readings, then check again.',
} as const;
