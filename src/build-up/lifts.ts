import { makeReader } from '../input.js';
import type { LengthInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { THICKNESS } from './limits.js';
import { readCompactedPerLoose } from '../compaction-ratio.js';

/** A layer placed in equal lifts. */
export interface Lifts extends Worked {
  readonly count: number;
  /** Thickness of one lift after compaction. */
  readonly compacted: Length;
  /** Thickness of one lift as spread. */
  readonly loose: Length;
  /** Compacted top of each lift above the subgrade, lowest first. */
  readonly tops: readonly Length[];
}

/** More lifts than this are a slip. Internal. */
export const MOST_LIFTS = 500;

/**
 * Splits a layer into equal lifts: `n = ceil(T / L)`, `compacted = T / n`,
 * `loose = compacted / (compacted per loose)`.
 *
 * @param options.thickness - compacted thickness of the whole layer [length], at most 5 m
 * @param options.maxLift - thickest compacted lift the machine can compact [length]
 * @param options.compactedPerLoose - compacted over loose thickness, 0.5 to 1; measure it on a trial
 *   strip
 * @returns number of lifts, lift thickness compacted and loose [length], compacted tops above the
 *   subgrade [length]
 * @throws `NOT_POSITIVE`, `RATIO_OUT_OF_RANGE`, `OUT_OF_RANGE` (more than 500 lifts) and the reading
 *   codes
 * @source derived
 * @example
 * const base = lifts({ thickness: '10 in', maxLift: '4 in', compactedPerLoose: 0.8 });
 * base.count //=> 3
 * base.tops[1]?.to('in').toFixed(2) //=> '6.67'
 */
export function lifts(options: {
  readonly thickness: LengthInput;
  readonly maxLift: LengthInput;
  readonly compactedPerLoose: number | string;
}): Lifts {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], THICKNESS);
  const maxLift = reader.quantity('length', fields['maxLift'], ['maxLift'], THICKNESS);
  const ratio = readCompactedPerLoose(reader, fields['compactedPerLoose'], ['compactedPerLoose']);
  reader.finish();
  const count = wholeNumberUp(thickness, maxLift);
  if (count > MOST_LIFTS) {
    reader.fail(
      'OUT_OF_RANGE',
      ['maxLift'],
      `makes ${count} lifts: a slip of a digit or of a unit?`,
    );
    reader.finish();
  }
  return splitIntoLifts(thickness, maxLift, count, ratio);
}

function splitIntoLifts(thickness: Length, maxLift: Length, count: number, ratio: Decimal): Lifts {
  const compacted = thickness.dividedBy(count);
  const loose = compacted.dividedBy(ratio);
  const tops = Array.from({ length: count }, (_, index) => compacted.times(index + 1));
  return withWorking({ count, compacted, loose, tops }, () => [
    {
      title: 'Number of lifts',
      formula: 'n = ceil(T / L)',
      given: [given('T', 'thickness', thickness), given('L', 'thickest lift', maxLift)],
      result: given('n', 'lifts', count),
      source: 'derived',
    },
    {
      title: 'Lift thickness as spread',
      formula: 's = T / n / r',
      given: [
        given('T', 'thickness', thickness),
        given('n', 'lifts', count),
        given('r', 'compacted per loose', ratio),
      ],
      result: given('s', 'loose lift', loose),
      source: 'derived',
    },
  ]);
}
