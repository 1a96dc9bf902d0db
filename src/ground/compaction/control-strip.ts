import { list, number, object, optional, quantity, whole } from '../../input/field.js';
import { DENSITY, PASSES, PERCENT_OFF } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { entry } from '../../invariant.js';
import { ONE } from '../../units/decimal.js';
import type { DensityInput } from '../../units/construct.js';
import type { Density } from '../../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';

/** Mean dry density of a control strip after a number of passes. */
export interface StripReadingInput {
  /** Passes so far, 1 to 50; more than in the reading before. */
  readonly passes: number | string;
  /** Mean dry density of the spots read [density], more than 0 and at most 5 t/m3. */
  readonly dryDensity: DensityInput;
}

/** Readings of a control strip. */
export interface ControlStripOptions {
  /** Readings in the order of the passes, 2 to 50. */
  readonly readings: readonly StripReadingInput[];
  /** Gain in density for each further pass that no longer counts, in percent, 0 to 20. Default: 1. */
  readonly stopGain?: number | string;
}

const READING = shapeOf<StripReadingInput>()({
  passes: whole(PASSES),
  dryDensity: quantity(DENSITY),
});

const OPTIONS = shapeOf<ControlStripOptions>()({
  readings: list(object(READING), { of: 'readings', least: 2, most: 50 }),
  stopGain: optional(number(PERCENT_OFF), ONE),
});

/** Density that a machine reaches on a strip, and the passes it takes. */
export interface ControlStrip extends Worked {
  /** Highest dry density reached: what `checkCompaction` takes for the test `control-strip`. */
  readonly density: Density;
  /** Passes after which a further pass gains no more than `stopGain`; null if every pass still does. */
  readonly passes: number | null;
  /** True if the last reading still gained more: roll on before you use the density. */
  readonly isStillRising: boolean;
  /** True if a later reading is lower than an earlier one: the stone may be breaking or wet. */
  readonly hasFallen: boolean;
  /** What to do, in words. */
  readonly note: string;
}

/**
 * The dry density that a machine reaches on a control strip, and the passes that are enough: the
 * first reading after which the gain for each further pass, `100 (d2 - d1) / (d1 (p2 - p1))` percent,
 * is no more than `stopGain`. The strip stands in for a laboratory test: same ground, same stone, same
 * lift, same machine. It does not prove that the stone is dense enough for the load. The gain of 1%
 * is common practice, no source.
 *
 * @param options - see {@link ControlStripOptions}
 * @returns density [density], passes, whether it still rises or has fallen
 * @throws `TOO_FEW`, `TOO_MANY`, `NOT_INCREASING`, `NOT_WHOLE`, `REQUIRED`, `NOT_POSITIVE`,
 *   `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source common-practice
 * @example
 * const strip = controlStrip({
 *   readings: [
 *     { passes: 2, dryDensity: '2000 kg/m3' },
 *     { passes: 4, dryDensity: '2100 kg/m3' },
 *     { passes: 6, dryDensity: '2110 kg/m3' },
 *   ],
 * });
 * strip.passes //=> 4
 * strip.density.to('kg/m3').toString() //=> '2110'
 */
export function controlStrip(options: ControlStripOptions): ControlStrip {
  const { readings, stopGain } = readOptions(options, OPTIONS, checkOrder);
  const gains = readings.slice(1).map((reading, index) => {
    const before = entry(readings, index);
    const gain = reading.dryDensity.minus(before.dryDensity).dividedBy(before.dryDensity);
    return {
      from: before,
      to: reading,
      percent: gain.times(100).dividedBy(reading.passes - before.passes),
    };
  });
  const enough = gains.find(({ percent }) => percent.lte(stopGain));
  const densest = readings.reduce((most, one) =>
    one.dryDensity.greaterThan(most.dryDensity) ? one : most,
  );
  const last = gains.at(-1);
  const found = {
    density: densest.dryDensity,
    passes: enough?.from.passes ?? null,
    isStillRising: last?.percent.gt(stopGain) ?? false,
    hasFallen: gains.some(({ percent }) => percent.isNegative()),
    note: '',
  };
  return withWorking({ ...found, note: noteOf(found) }, () =>
    gains.map(({ from, to, percent }) =>
      formulaStep({
        title: `Gain for each pass from ${from.passes} to ${to.passes}`,
        formula: 'g = 100 * (d2 - d1) / (d1 * (p2 - p1))',
        given: [
          given('d2', 'dry density after', to.dryDensity),
          given('d1', 'dry density before', from.dryDensity),
          given('p2', 'passes after', to.passes),
          given('p1', 'passes before', from.passes),
        ],
        result: given('g', 'gain in percent', percent),
        source: 'derived',
      }),
    ),
  );
}

const noteOf = ({
  passes,
  isStillRising,
  hasFallen,
}: Omit<ControlStrip, 'working' | 'note'>): string => {
  if (hasFallen) {
    return 'The density has fallen with more passes. The stone may be too wet, or breaking. Find out why before you use the strip.';
  }
  if (isStillRising || passes === null) {
    return 'The density still rises. Roll on and read again before you use the strip.';
  }
  const words = passes === 1 ? '1 pass is' : `${passes} passes are`;
  return `${words} enough on this strip. Use the same machine, lift, moisture and stone on the job.`;
};

const checkOrder: Check<typeof OPTIONS> = (reader, { readings }, path) => {
  readings?.forEach((reading, index) => {
    const before = index > 0 ? readings[index - 1] : undefined;
    if (before === undefined || reading.passes > before.passes) return;
    const message = 'is no more than the passes of the reading before. Put the readings in order';
    reader.fail('NOT_INCREASING', [...path, 'readings', index, 'passes'], message);
  });
};
