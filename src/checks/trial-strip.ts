import type { FieldPath } from '../errors.js';
import { readCompactedPerLoose } from '../input/compaction-ratio.js';
import { makeReader, type QuantityRule, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import { sum } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  ratioToDecimal,
  ratioToNumber,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { PLACE, THICKNESS } from './limits.js';

/**
 * A spot of a trial strip, before and after compaction: thicknesses, or elevations of the ground below,
 * of the stone as spread and of the stone as compacted.
 */
export type TrialReadingInput =
  | { readonly loose: LengthInput; readonly compacted: LengthInput }
  | {
      readonly bottom: LengthInput;
      readonly looseTop: LengthInput;
      readonly compactedTop: LengthInput;
    };

/** The compaction ratio of a trial strip. */
export interface TrialStrip extends Worked {
  /** Compacted over loose, all readings together, as the nearest float: what `lifts` takes. */
  readonly compactedPerLoose: number;
  /** The smallest and the largest ratio of a single reading. */
  readonly range: { readonly least: number; readonly most: number };
  /** Standard uncertainty of the ratio; null for fewer than 3 readings. */
  readonly standardUncertainty: number | null;
  readonly loose: Length;
  readonly compacted: Length;
  /** Loose thickness to spread for the wanted compacted one; null where none was given. */
  readonly spread: Length | null;
}

/**
 * The compaction ratio measured on a trial strip: `r = sum(compacted) / sum(loose)`, and from its
 * scatter `u = sqrt(sum (c - r l)^2 / (n (n - 1))) / mean(l)`. To spread: `T / r`. Exact, but for the
 * root and for the floats that ratios are returned as. Ground that settles under the plate makes the
 * stone look less compacted than it is: shoot it through a plate.
 *
 * @param options.readings - before and after at the same spots: `loose` and `compacted` thickness, or
 *   elevations `bottom`, `looseTop` and `compactedTop` [length]
 * @param options.compactedThickness - of the lift to be placed [length], for the loose thickness
 * @returns ratio with its range and standard uncertainty; mean thicknesses [length]; loose thickness to
 *   spread [length]
 * @throws `RATIO_OUT_OF_RANGE` where a spot is not 0.5 to 1, `ONE_OF`, `REQUIRED`, `NOT_POSITIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
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
export function trialStrip(options: {
  readonly readings: readonly TrialReadingInput[];
  readonly compactedThickness?: LengthInput;
}): TrialStrip {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const spots = reader.list(fields['readings'], ['readings']).map((item, index) => {
    const path = ['readings', index];
    return readTrial(reader, reader.object(item, path), path);
  });
  const at = ['compactedThickness'];
  const wanted =
    fields['compactedThickness'] === undefined
      ? null
      : reader.quantity('length', fields['compactedThickness'], at, THICKNESS);
  reader.finish();
  const count = spots.length;
  const loose = sum(spots.map((spot) => spot.loose)).dividedBy(count);
  const compacted = sum(spots.map((spot) => spot.compacted)).dividedBy(count);
  const ratio = ratioOf({ loose, compacted });
  const ratios = spots.map(ratioOf);
  const strip = {
    compactedPerLoose: ratioToNumber(ratio),
    range: {
      least: ratioToNumber(ratios.reduce(smaller)),
      most: ratioToNumber(ratios.reduce(larger)),
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

const smaller = (a: Ratio, b: Ratio): Ratio => (compareRatios(b, a) < 0 ? b : a);
const larger = (a: Ratio, b: Ratio): Ratio => (compareRatios(b, a) > 0 ? b : a);

function readTrial(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
): Spot {
  const read = (name: string, rule: QuantityRule<'length'>) =>
    reader.quantity('length', fields[name], [...path, name], rule);
  const form = exactlyOne(reader, fields, ['loose', 'looseTop'], path);
  if (form === undefined) return { loose: NOTHING, compacted: NOTHING };
  if (form === 'loose') {
    const spot = { loose: read('loose', THICKNESS), compacted: read('compacted', THICKNESS) };
    const isRead = !spot.loose.isZero() && !spot.compacted.isZero();
    return isRead ? checkSpot(reader, spot, [...path, 'compacted']) : spot;
  }
  const bottom = read('bottom', PLACE);
  const spot = {
    loose: read('looseTop', PLACE).minus(bottom),
    compacted: read('compactedTop', PLACE).minus(bottom),
  };
  if (spot.loose.isNegative() || spot.loose.isZero()) {
    reader.fail('NOT_POSITIVE', [...path, 'looseTop'], 'must lie above the bottom');
    return spot;
  }
  return checkSpot(reader, spot, [...path, 'compactedTop']);
}

/** A spot whose stone has grown, or shrunk to less than half, was not measured right. */
function checkSpot(reader: Reader, spot: Spot, path: FieldPath): Spot {
  readCompactedPerLoose(reader, ratioToDecimal(ratioOf(spot)), path);
  return spot;
}

const NOTHING = length(0, 'm');

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
  const ratio: Step = {
    title: 'Compaction ratio of the trial strip',
    formula: 'r = C / l',
    given: [given('C', 'mean compacted thickness', compacted), given('l', 'mean loose', loose)],
    result: given('r', 'compacted per loose', compactedPerLoose),
    source: 'derived',
  };
  if (wanted === null || spread === null) return [ratio];
  return [
    ratio,
    {
      title: 'Loose thickness to spread',
      formula: 's = T / r',
      given: [
        given('T', 'compacted thickness', wanted),
        given('r', 'compacted per loose', compactedPerLoose),
      ],
      result: given('s', 'loose thickness', spread),
      source: 'derived',
    },
  ];
}
