import { makeReader, type Reader } from '../input/reader.js';
import { max, min } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { type Verdict, worstVerdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { LAYER_OF_SOME, LEVEL_DIFFERENCE, NO_LENGTH, SHORT } from './limits.js';
import { verdictWithin } from './within-limits.js';

/** How far the base is off at one spot. */
export interface BaseDeviationInput {
  readonly id: string;
  /** Base top as built less as designed: high is positive, low negative. */
  readonly deviation: LengthInput;
}

/** The bed that is left at one spot. */
export interface BedReading {
  readonly id: string;
  readonly deviation: Length;
  /** Compacted bed between the base as built and the units at finished grade. */
  readonly bed: Length;
  readonly verdict: Verdict;
  readonly finding: 'too-thick' | 'too-thin' | null;
  /** What to do there; null where it passes. */
  readonly action: string | null;
}

/** Whether the base as built leaves a bed within its limits. */
export interface BedRange extends Worked {
  /** Thinnest and thickest bed. */
  readonly least: Length;
  readonly most: Length;
  readonly verdict: Verdict;
  readonly readings: readonly BedReading[];
}

/**
 * Whether the deviations of the base leave a bed within its limits: `bed = nominal - deviation`, so a
 * low base makes a thick bed. A bed on a limit passes. The bed must never make up for the base: a
 * thick spot settles more than its neighbours.
 *
 * @param options.nominal - compacted bed as designed [length]
 * @param options.deviations - base top less design, high positive [length], each with its `id`
 * @param options.limits - `least` and `most` compacted bed [length]; the job's own, or those of `BED_LIMITS`
 * @param options.uncertainty - of one deviation, either way [length], default 0
 * @returns thinnest and thickest bed, verdict, each reading with what to do
 * @throws `OUT_OF_RANGE` for limits the wrong way round, `DUPLICATE_ID`, `EMPTY_LIST`, `NOT_POSITIVE`,
 *   `NEGATIVE` and the reading codes
 * @source derived
 * @example
 * const bed = bedRange({
 *   nominal: '25 mm',
 *   deviations: [{ id: 'A', deviation: '7 mm' }, { id: 'B', deviation: '-12 mm' }],
 *   limits: { least: '20 mm', most: '30 mm' },
 * });
 * bed.most.to('mm').toString() //=> '37'
 * bed.readings.map(({ id, finding }) => `${id} ${finding}`) //=> ['A too-thin', 'B too-thick']
 */
export function bedRange(options: {
  readonly nominal: LengthInput;
  readonly deviations: readonly BaseDeviationInput[];
  readonly limits: { readonly least: LengthInput; readonly most: LengthInput };
  readonly uncertainty?: LengthInput;
}): BedRange {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const nominal = reader.quantity('length', fields['nominal'], ['nominal'], LAYER_OF_SOME);
  const deviations = readDeviations(reader, fields['deviations']);
  const limits = readLimits(reader, fields['limits']);
  const doubt = reader.quantity(
    'length',
    fields['uncertainty'] ?? NO_LENGTH,
    ['uncertainty'],
    SHORT,
  );
  reader.finish();

  const readings = deviations.map(({ id, deviation }): BedReading => {
    const bed = nominal.minus(deviation);
    const ratios = { least: exactOf(limits.least), most: exactOf(limits.most) };
    const verdict = verdictWithin(exactOf(bed), ratios, exactOf(doubt));
    const isThick = bed.plus(bed).compare(limits.least.plus(limits.most)) > 0;
    const finding = verdict === 'pass' ? null : isThick ? 'too-thick' : 'too-thin';
    const action = finding === null ? null : ACTIONS[verdict === 'unclear' ? 'unclear' : finding];
    return { id, deviation, bed, verdict, finding, action };
  });
  const beds = readings.map(({ bed }) => bed);
  const range = {
    least: min(beds),
    most: max(beds),
    verdict: worstVerdict(readings.map(({ verdict }) => verdict)),
    readings,
  };
  return withWorking(range, () =>
    readings.map(({ id, deviation, bed }) => ({
      title: `Bed at ${id}`,
      formula: 'b = t - d',
      given: [
        given('t', 'nominal bed', nominal),
        given('d', 'base above (+) or below (-) its level', deviation),
      ],
      result: given('b', 'bed', bed),
      source: 'derived' as const,
    })),
  );
}

const ACTIONS = {
  'too-thick':
    'The base is low: add base stone, level and compact it. Do not fill with bedding sand.',
  'too-thin': 'The base is high: take it down, level and compact it again.',
  unclear: 'Too close to the limit to tell: measure it again, more closely.',
} as const;

function readDeviations(reader: Reader, value: unknown) {
  const ids = new Set<string>();
  return reader.list(value, ['deviations']).map((item, index) => {
    const path = ['deviations', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the reading ${id} stands twice`);
    }
    ids.add(id);
    const at = [...path, 'deviation'];
    return {
      id,
      deviation: reader.quantity('length', fields['deviation'], at, LEVEL_DIFFERENCE),
    };
  });
}

function readLimits(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['limits']);
  const least = reader.quantity('length', fields['least'], ['limits', 'least'], SHORT);
  const most = reader.quantity('length', fields['most'], ['limits', 'most'], SHORT);
  if (most.compare(least) < 0) {
    reader.fail('OUT_OF_RANGE', ['limits', 'most'], 'the greatest bed is less than the least');
  }
  return { least, most };
}
