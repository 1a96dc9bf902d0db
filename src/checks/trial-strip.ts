import { known } from '../invariant.js';
import { readCompactedPerLoose } from '../input/compaction-ratio.js';
import { list, object, optional, quantity } from '../input/field.js';
import { ELEVATION, THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  greaterRatio,
  lesserRatio,
  multiplyRatios,
  ratioToDecimal,
  ratioToNumber,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { oneForm, type Form } from './one-form.js';

/**
 * A spot of a trial strip before and after compaction, in one of two forms: thicknesses; or elevations
 * of the ground below, of the stone as spread and of the stone as compacted.
 */
export type TrialReadingInput = TrialThicknessInput | TrialLevelsInput;

/** A spot of a trial strip by its thicknesses. */
export interface TrialThicknessInput {
  /** Thickness as spread [length], more than 0 and at most 5 m. */
  readonly loose: LengthInput;
  /** Thickness after compaction [length], more than 0 and at most 5 m. */
  readonly compacted: LengthInput;
}

/** A spot of a trial strip by elevations. */
export interface TrialLevelsInput {
  /** Elevation of the ground below [length], up to 10 km either way. */
  readonly bottom: LengthInput;
  /** Elevation of the stone as spread [length], up to 10 km either way. */
  readonly looseTop: LengthInput;
  /** Elevation of the stone after compaction [length], up to 10 km either way. */
  readonly compactedTop: LengthInput;
}

/** Readings of a trial strip. */
export interface TrialStripOptions {
  /** Before and after at the same spots, 1 to 10 000. */
  readonly readings: readonly TrialReadingInput[];
  /** Compacted thickness of the lift to place [length]. Default: no thickness to spread. */
  readonly compactedThickness?: LengthInput;
}

const READING = shapeOf<Partial<TrialThicknessInput & TrialLevelsInput>>()({
  loose: optional(quantity(THICKNESS)),
  compacted: optional(quantity(THICKNESS)),
  bottom: optional(quantity(ELEVATION)),
  looseTop: optional(quantity(ELEVATION)),
  compactedTop: optional(quantity(ELEVATION)),
});

const FORMS: readonly Form[] = [
  ['loose', 'compacted'],
  ['bottom', 'looseTop', 'compactedTop'],
];

/** A ratio above 1 or below one half is a wrong reading. */
const checkReading: Check<typeof READING> = (reader, values, path, raw) => {
  const form = oneForm(reader, raw, { forms: FORMS, shape: READING, path });
  const spot = spotOf(values);
  if (form === undefined || spot === undefined) return;
  const isByLevels = form === 'bottom';
  if (spot.loose.isNegative() || spot.loose.isZero()) {
    reader.fail(
      'NOT_POSITIVE',
      [...path, 'looseTop'],
      'is not above the bottom. Check which reading is which',
    );
    return;
  }
  const at = [...path, isByLevels ? 'compactedTop' : 'compacted'];
  readCompactedPerLoose(reader, ratioToDecimal(ratioOf(spot)), at);
};

const OPTIONS = shapeOf<TrialStripOptions>()({
  readings: list(object(READING, checkReading), { of: 'readings' }),
  compactedThickness: optional(quantity(THICKNESS)),
});

/** Range of the ratio of single readings. */
export interface RatioRange {
  /** The smallest. */
  readonly minimum: number;
  /** The largest. */
  readonly maximum: number;
}

/** The compaction ratio of a trial strip. */
export interface TrialStrip extends Worked {
  /** Compacted over loose, all readings together, as the nearest float: what `lifts` takes. */
  readonly compactedPerLoose: number;
  /** Range of the ratio of single readings. */
  readonly range: RatioRange;
  /** Standard uncertainty of the ratio; null for fewer than 3 readings. */
  readonly standardUncertainty: number | null;
  /** Average thickness as spread. */
  readonly loose: Length;
  /** Average thickness after compaction. */
  readonly compacted: Length;
  /** Loose thickness to spread for the lift to place; null if none is given. */
  readonly spread: Length | null;
}

/**
 * The compaction ratio measured on a trial strip: `r = sum(compacted) / sum(loose)`, and from its
 * scatter `u = sqrt(sum (c - r l)^2 / (n (n - 1))) / mean(l)`. To spread: `T / r`. Exact except for
 * the root and for ratios, which are returned as floats. If the ground settles under the plate, the
 * stone looks less compacted than it is. To allow for it, set a plate on the ground below and shoot
 * the plate.
 *
 * @param options - see {@link TrialStripOptions}
 * @returns ratio with its range and standard uncertainty; average thicknesses [length]; loose thickness
 *   to spread [length]
 * @throws `OUT_OF_RANGE` (also if the ratio of a spot is not 0.5 to 1), `CONFLICTING_FIELDS`,
 *   `REQUIRED`, `NOT_POSITIVE`, `EMPTY_LIST` and the reading codes
 * @source derived
 * @example
 * const strip = trialStrip({
 *   readings: [
 *     { loose: '128 mm', compacted: '103 mm' },
 *     { loose: '124 mm', compacted: '100 mm' },
 *     { loose: '126 mm', compacted: '101 mm' },
 *   ],
 *   compactedThickness: '100 mm',
 * });
 * strip.compactedPerLoose.toFixed(4) //=> '0.8042'
 * strip.spread?.to('mm').toFixed(1) //=> '124.3'
 */
export function trialStrip(options: TrialStripOptions): TrialStrip {
  const { readings, compactedThickness: wanted = null } = readOptions(options, OPTIONS);
  const spots = readings.map((reading) => known(spotOf(reading), 'reading'));
  const count = spots.length;
  const loose = sum(spots.map((spot) => spot.loose)).dividedBy(count);
  const compacted = sum(spots.map((spot) => spot.compacted)).dividedBy(count);
  const ratio = ratioOf({ loose, compacted });
  const ratios = spots.map(ratioOf);
  const strip = {
    compactedPerLoose: ratioToNumber(ratio),
    range: {
      minimum: ratioToNumber(ratios.reduce(lesserRatio)),
      maximum: ratioToNumber(ratios.reduce(greaterRatio)),
    },
    standardUncertainty: count < 3 ? null : ratioToNumber(uncertaintyOf(spots, ratio, loose)),
    loose,
    compacted,
    spread: wanted === null ? null : fromSI('length', divideRatios(exactOf(wanted), ratio)),
  };
  return withWorking(strip, () => trialSteps(strip, wanted));
}

interface Spot {
  readonly loose: Length;
  readonly compacted: Length;
}

const ratioOf = ({ loose, compacted }: Spot): Ratio =>
  divideRatios(exactOf(compacted), exactOf(loose));

/** The two thicknesses of a reading; undefined if part of it could not be read. */
function spotOf(reading: Partial<Values<typeof READING>>): Spot | undefined {
  const { loose, compacted, bottom, looseTop, compactedTop } = reading;
  if (loose !== undefined && compacted !== undefined) return { loose, compacted };
  if (bottom === undefined || looseTop === undefined || compactedTop === undefined)
    return undefined;
  return { loose: looseTop.minus(bottom), compacted: compactedTop.minus(bottom) };
}

/** `sqrt(sum (c - r l)^2 / (n (n - 1))) / mean(l)` */
function uncertaintyOf(spots: readonly Spot[], ratio: Ratio, loose: Length): Ratio {
  const squares = spots.map((spot) => {
    const off = subtractRatios(exactOf(spot.compacted), multiplyRatios(ratio, exactOf(spot.loose)));
    return multiplyRatios(off, off);
  });
  const total = squares.reduce(addRatios);
  const count = wholeRatio(spots.length * (spots.length - 1));
  return divideRatios(squareRoot(divideRatios(total, count)), exactOf(loose));
}

function trialSteps(strip: Omit<TrialStrip, 'working'>, wanted: Length | null): Step[] {
  const { loose, compacted, compactedPerLoose, spread } = strip;
  const ratio: Step = derivedStep({
    title: 'Compaction ratio of the trial strip',
    formula: 'r = C / l',
    given: [
      given('C', 'average compacted thickness', compacted),
      given('l', 'average loose thickness', loose),
    ],
    result: given('r', 'compacted per loose', compactedPerLoose),
  });
  if (wanted === null || spread === null) return [ratio];
  return [
    ratio,
    derivedStep({
      title: 'Loose thickness to spread',
      formula: 's = T / r',
      given: [
        given('T', 'compacted thickness', wanted),
        given('r', 'compacted per loose', compactedPerLoose),
      ],
      result: given('s', 'loose thickness', spread),
    }),
  ];
}
