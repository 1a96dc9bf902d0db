import { choice, quantity, text } from '../input/field.js';
import { LIP } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { cautionsFor } from '../sources/cautions.js';
import type { MinimumAndMaximum, ToleranceSet } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given } from '../working.js';
import { judge, layerCheck, moveToLimit, sourceOf, type LayerCheck } from './layer-check.js';
import { betweenField, type BetweenInput } from './limits.js';
import { marginStep } from './margin-step.js';
import { lengthUncertainty, readingsOf, type NamedReadingInput } from './reading-fields.js';
import {
  checkTolerance,
  limitsBetween,
  toleranceField,
  type Needed,
  type SetWith,
} from './tolerance.js';

const PLACES = ['pavers', 'drain', 'accessible-drain'] as const;

/** Where a lip is: between pavers, at a drain, at a drain on an accessible route. */
export type LippagePlace = (typeof PLACES)[number];

/** A difference of level from one paver to the next, or to a grate. */
export interface LippageReadingInput extends NamedReadingInput {
  /**
   * The lip [length], up to 1 m. Not negative between pavers; at a drain + if the paver is above
   * the grate, negative below.
   */
  readonly lippage: LengthInput;
}

/** Lips, and their limits. */
export interface CheckLippageOptions {
  /** Where the lips are. */
  readonly place: LippagePlace;
  /** Lips, 1 to 10 000. */
  readonly readings: readonly LippageReadingInput[];
  /** A set of `TOLERANCE_SETS` that limits lippage at that place, or your own limits. */
  readonly tolerance: SetWith<'lippage'> | BetweenInput;
  /** Uncertainty of a lip, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const READING = shapeOf<LippageReadingInput>()({ id: text(), lippage: quantity(LIP) });

const OPTIONS = shapeOf<CheckLippageOptions>()({
  place: choice(PLACES),
  readings: readingsOf(READING),
  tolerance: toleranceField(betweenField(LIP)),
  uncertainty: lengthUncertainty,
});

/** Lips compared with their limits; the `value` of a reading is the lip. */
export interface LippageCheck extends LayerCheck<Length> {
  /** Kind of check. */
  readonly check: 'lippage';
  /** Where the lips are. */
  readonly place: LippagePlace;
}

/**
 *
 * Checks lippage, the difference of level from one paver to the next, or of the paver above a drain.
 * Exact: a lip on the limit passes. A lip between pavers has no sign; at a drain it is positive if the
 * paver is above the grate, and a paver below it fails a minimum.
 *
 * @param options - see {@link CheckLippageOptions}
 * @returns verdict, each reading with margin [length], verdict and how far to raise or lower it to
 * reach the nearest limit; cautions
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `UNKNOWN_CHOICE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source permeable-tolerances
 * @example
 * const check = checkLippage({
 *   place: 'pavers',
 *   readings: [
 *     { id: 'gate', lippage: '1/8 in' },
 *     { id: 'door', lippage: '3/16 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['door: lower 1/16 in']
 */
export function checkLippage(options: CheckLippageOptions): LippageCheck {
  const { place, readings: rows, tolerance, uncertainty } = readOptions(options, OPTIONS, checkAll);
  const needed = lippageAt(place);
  const { limits, origin } = limitsBetween('length', tolerance, needed);
  const readings = rows.map(({ id, lippage }) =>
    judge({ id, value: lippage, limits, uncertainty }, moveToLimit(limits, 'lower', 'raise')),
  );
  const parts = {
    check: 'lippage',
    subject: needed.words,
    place,
    limits,
    origin,
    readings,
    cautions: cautionsFor('access'),
  } as const;
  return layerCheck(parts, () =>
    readings.map(({ id, value, margin }) =>
      marginStep({
        title: `Lippage at ${id}`,
        value: given('a', 'lip', value),
        limits,
        margin,
        source: sourceOf(origin),
      }),
    ),
  );
}

const PART = {
  pavers: 'lippage',
  drain: 'lippageAtDrain',
  'accessible-drain': 'lippageAtAccessibleDrain',
} as const satisfies Record<LippagePlace, keyof ToleranceSet>;

const WORDS: Readonly<Record<LippagePlace, string>> = {
  pavers: 'lippage between pavers',
  drain: 'lippage at a drain',
  'accessible-drain': 'lippage at a drain on an accessible route',
};

const lippageAt = (place: LippagePlace): Needed<MinimumAndMaximum> => ({
  words: WORDS[place],
  find: (set) => set[PART[place]],
});

const checkAll: Check<typeof OPTIONS> = (reader, { place, readings = [], tolerance }, path) => {
  if (place === undefined) return;
  checkTolerance(reader, tolerance, lippageAt(place), [...path, 'tolerance']);
  if (place !== 'pavers') return;
  readings.forEach(({ lippage }, index) => {
    if (!lippage.isNegative()) return;
    const got = lippage.toString();
    const message = `${got} is negative, and a lip between pavers has no sign. Write it without a sign`;
    reader.fail('NEGATIVE', [...path, 'readings', index, 'lippage'], message, { got });
  });
};
