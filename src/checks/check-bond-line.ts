import { fault } from '../errors.js';
import { optional, text } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { entry } from '../invariant.js';
import type { OverLength } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import type { Limits } from './limits.js';
import { bondField, type BondReadingInput, type LineReading } from './line-readings.js';
import { marginStep } from './margin-step.js';
import { lengthUncertainty } from './reading-fields.js';
import { stringOffsets } from './string-offsets.js';
import {
  checkSetFor,
  limitsFrom,
  overLengthField,
  overLengthOf,
  toleranceField,
  type Needed,
  type OverLengthInput,
  type SetWith,
} from './tolerance.js';

/** A line of joints, and its tolerance. */
export interface CheckBondLineOptions {
  /** Name of the line. Default: `bond line`. */
  readonly line?: string;
  /** Joints along the line, 3 to 10 000, some of them between the ends of the string. */
  readonly readings: readonly BondReadingInput[];
  /**
   * A set of `TOLERANCE_SETS` that limits bond lines, or your own maximum distance over a string of
   * a length.
   */
  readonly tolerance: SetWith<'bondLine'> | OverLengthInput;
  /** Uncertainty of a distance, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<CheckBondLineOptions>()({
  line: optional(text(), 'bond line'),
  readings: bondField,
  tolerance: toleranceField(overLengthField),
  uncertainty: lengthUncertainty,
});

/** The largest distance of a joint from the string, over all positions of the string. */
export interface CheckedBond extends CheckedReading {
  /** Distance along the line. */
  readonly station: Length;
  /** Stations of the two readings that hold the string; null if the joint is only ever an end. */
  readonly between: readonly [Length, Length] | null;
}

/** The straightness of a bond line; the `value` of a reading is its distance, + left of travel. */
export interface BondLineCheck extends LayerCheck<Length, CheckedBond> {
  /** Kind of check. */
  readonly check: 'bond-line';
  /** Maximum distance, right (negative) and left. */
  readonly limits: Limits<Length>;
  /** The string of the tolerance. */
  readonly stringLength: Length;
  /** Largest distance found, either way. */
  readonly greatest: Length;
  /** Station of the largest distance. */
  readonly at: Length;
}

/**
 * Checks how straight a bond line (a line of joints) runs: a string is held on two readings as far
 * apart as its length allows and moved along, and no reading between may be farther from it than
 * the tolerance allows: `d = y - (y1 + (y2 - y1)(s - s1)/(s2 - s1))`. Distances are square to the
 * base line of the stations and offsets, which need not be parallel to the bond line. Exact: a
 * distance on the limit passes.
 *
 * @param options - see {@link CheckBondLineOptions}
 * @returns verdict; largest distance and where; each reading with its distance [length, + left],
 *   verdict and which way to move it
 * @throws `LIMIT_NOT_SET`, `READINGS_TOO_SPARSE`, `TOO_FEW`, `TOO_MANY`, `NOT_INCREASING`,
 *   `DUPLICATE_ID`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @example
 * const check = checkBondLine({
 *   readings: [
 *     { station: '0 ft', offset: '0 in' },
 *     { station: '20 ft', offset: '5/8 in' },
 *     { station: '40 ft', offset: '0 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['2: move 5/8 in right']
 */
export function checkBondLine(options: CheckBondLineOptions): BondLineCheck {
  const {
    line: subject,
    readings: line,
    uncertainty,
    ...rest
  } = readOptions(options, OPTIONS, checkSet);
  const tolerance = limitsFrom(rest.tolerance, BOND_LINE, overLengthOf);
  const offsets = stringOffsets(
    line.map(({ at }) => at),
    exactOf(tolerance.over),
  );
  if (offsets.every((one) => one === null)) {
    const message = 'no reading is between the ends of the string. Take more readings';
    throw fault('READINGS_TOO_SPARSE', message, {}, ['readings']);
  }
  const limits = { minimum: tolerance.maximum.negated(), maximum: tolerance.maximum };
  const readings = line.map(({ id, station }, index): CheckedBond => {
    const found = offsets[index] ?? null;
    const value = found === null ? NO_LENGTH : fromSI('length', found.offset);
    const ends = found?.ends.map((end) => entry(line, end).station);
    const between = ends === undefined ? null : ([entry(ends, 0), entry(ends, 1)] as const);
    return { ...judge({ id, value, limits, uncertainty }, toTheString), station, between };
  });
  const worst = readings.reduce((a, b) => (b.value.abs().compare(a.value.abs()) > 0 ? b : a));
  const parts = {
    check: 'bond-line',
    subject,
    stringLength: tolerance.over,
    greatest: worst.value.abs(),
    at: worst.station,
    limits,
    origin: tolerance,
    readings,
  } as const;
  return layerCheck(parts, () =>
    readings.flatMap((reading, index) => {
      const ends = offsets[index]?.ends.flatMap((end) => entry(line, end));
      const [first, second] = ends ?? [];
      const at = line[index];
      if (at === undefined || first === undefined || second === undefined) return [];
      return bondSteps(reading, [first, at, second], { limits, source: sourceOf(tolerance) });
    }),
  );
}

const BOND_LINE: Needed<OverLength> = {
  words: 'bond line',
  find: ({ bondLine }) => bondLine,
};

const checkSet = checkSetFor(BOND_LINE);

const toTheString = (offset: Length) =>
  move(offset.isNegative() ? 'move-left' : 'move-right', offset);

function bondSteps(
  { id, value, margin }: CheckedBond,
  [first, at, second]: readonly [LineReading, LineReading, LineReading],
  { limits, source }: { readonly limits: Limits<Length>; readonly source: Step['source'] },
): Step[] {
  const distance = given('d', 'distance, + left', value);
  return [
    formulaStep({
      title: `Bond line at ${id}, from the string`,
      formula: 'd = y - (y1 + (y2 - y1) * (s - s1) / (s2 - s1))',
      given: [
        given('s', 'station', at.station),
        given('y', 'offset', at.value),
        given('s1', 'station of one end of the string', first.station),
        given('y1', 'offset of this end', first.value),
        given('s2', 'station of the other end', second.station),
        given('y2', 'offset of that end', second.value),
      ],
      result: distance,
      source,
    }),
    marginStep({
      title: `Bond line at ${id} against its limits`,
      value: distance,
      limits,
      margin,
      source,
    }),
  ];
}
