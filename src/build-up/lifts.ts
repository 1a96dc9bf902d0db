import { fault } from '../errors.js';
import { compactedPerLoose } from '../input/compaction-ratio.js';
import { quantity } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** A layer to split into lifts. */
export interface LiftsOptions {
  /** Compacted thickness of the whole layer [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Thickest compacted lift the machine can compact [length], more than 0 and at most 5 m. */
  readonly maxLift: LengthInput;
  /** Compacted over loose thickness, 0.5 to 1. Measure it on a trial strip. */
  readonly compactedPerLoose: number | string;
}

const OPTIONS = shapeOf<LiftsOptions>()({
  thickness: quantity(THICKNESS),
  maxLift: quantity(THICKNESS),
  compactedPerLoose,
});

/** A layer placed in equal lifts. */
export interface Lifts extends Worked {
  /** How many lifts. */
  readonly count: number;
  /** Thickness of one lift after compaction. */
  readonly compacted: Length;
  /** Thickness of one lift as spread. */
  readonly loose: Length;
  /** Compacted top of each lift above the subgrade, lowest first. */
  readonly tops: readonly Length[];
}

/** More lifts than this are a mistake. Internal. */
export const MOST_LIFTS = 500;

/**
 * Splits a layer into equal lifts: `n = ceil(T / L)`, `compacted = T / n`,
 * `loose = compacted / (compacted per loose)`.
 *
 * @param options - see {@link LiftsOptions}
 * @returns number of lifts, lift thickness compacted and loose [length], compacted tops above the
 *   subgrade [length]
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` (more than 500 lifts too) and the reading
 *   codes
 * @source derived
 * @example
 * const base = lifts({ thickness: '11 in', maxLift: '4 in', compactedPerLoose: 0.8 });
 * base.count //=> 3
 * base.tops[1]?.to('in').toFixed(2) //=> '7.33'
 */
export function lifts(options: LiftsOptions): Lifts {
  return inLifts(readOptions(options, OPTIONS));
}

/** The same for a layer that has been read. Internal. */
export function inLifts(read: Values<typeof OPTIONS>): Lifts {
  const count = wholeNumberUp(read.thickness, read.maxLift);
  if (count <= MOST_LIFTS) return splitIntoLifts(read, count);
  const message = `makes ${count} lifts, more than ${MOST_LIFTS}. Check the digits and the unit`;
  throw fault('OUT_OF_RANGE', message, { got: count }, ['maxLift']);
}

function splitIntoLifts(
  { thickness, maxLift, compactedPerLoose: ratio }: Values<typeof OPTIONS>,
  count: number,
): Lifts {
  const compacted = thickness.dividedBy(count);
  const loose = compacted.dividedBy(ratio);
  const tops = Array.from({ length: count }, (_, index) => compacted.times(index + 1));
  return withWorking({ count, compacted, loose, tops }, () => [
    derivedStep({
      title: 'Number of lifts',
      formula: 'n = ceil(T / L)',
      given: [given('T', 'thickness', thickness), given('L', 'thickest lift', maxLift)],
      result: given('n', 'lifts', count),
    }),
    derivedStep({
      title: 'Lift thickness as spread',
      formula: 's = T / n / r',
      given: [
        given('T', 'thickness', thickness),
        given('n', 'lifts', count),
        given('r', 'compacted per loose', ratio),
      ],
      result: given('s', 'loose lift', loose),
    }),
  ]);
}
