import { custom, list, object, quantity, text, whole } from '../input/field.js';
import { COUNT_OR_NONE, DISTANCE_OR_NONE, ELEVATION } from '../input/ranges.js';
import { readOptions, shapeOf, type Field, type Values } from '../input/shape.js';
import { entry, lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, isQuantity, type Length } from '../units/quantity.js';
import {
  divideRatios,
  multiplyRatios,
  negateRatio,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { withWorking, type Worked } from '../working.js';
import { checkAlong } from './along-the-line.js';
import { misclosureStep } from './misclosure-step.js';

/** A level to adjust, and its position along the line of levels. */
export interface LevelToAdjust {
  /** Point the rod stood on. */
  readonly point: string;
  /** Its elevation, before adjustment [length], up to 10 km either way. */
  readonly elevation: LengthInput;
  /**
   * Number of set-ups from the start (whole, 0 to 1 000 000) for all points, or distance from the
   * start [length, 0 to 100 km] for all. It never decreases from point to point.
   */
  readonly along: number | Exclude<LengthInput, number>;
}

/** Levels of a line, and the elevation it should close on. */
export interface SpreadMisclosureOptions {
  /** Elevation of the closing mark [length], up to 10 km either way. */
  readonly known: LengthInput;
  /** Levels in order, 1 to 10 000; the last one is on the closing mark. */
  readonly points: readonly LevelToAdjust[];
}

/** A number of set-ups, or a distance. */
const along: Field<number | Length> = custom((reader, value, path) =>
  typeof value === 'number' ? setUps.read(reader, value, path) : distance.read(reader, value, path),
);

const setUps = whole(COUNT_OR_NONE);
const distance = quantity(DISTANCE_OR_NONE);

const POINT = shapeOf<LevelToAdjust>()({ point: text(), elevation: quantity(ELEVATION), along });

const POINTS = list(object(POINT), { of: 'points' });

const OPTIONS = shapeOf<SpreadMisclosureOptions>()({
  known: quantity(ELEVATION),
  points: custom((reader, value, path) => {
    const points = POINTS.read(reader, value, path);
    checkAlong(
      reader,
      points.map((point: Values<typeof POINT> | undefined) => point?.along),
      path,
    );
    return points;
  }),
});

/** A level with its share of the misclosure deducted. */
export interface AdjustedLevel {
  /** Point the rod stood on. */
  readonly point: string;
  /** Elevation before adjustment. */
  readonly elevation: Length;
  /** Correction from the adjustment. */
  readonly correction: Length;
  /** Elevation with the correction. */
  readonly adjusted: Length;
}

/** Levels with the misclosure spread over them. */
export interface SpreadMisclosure extends Worked {
  /** Closing elevation less the known one. */
  readonly misclosure: Length;
  /** The levels, in the order given. */
  readonly points: readonly AdjustedLevel[];
}

/**
 * Spreads a misclosure over a line of levels, by set-ups or by distance:
 * `correction(i) = -misclosure x n(i) / n`. Exact: the closing elevation becomes the known one.
 *
 * @param options - see {@link SpreadMisclosureOptions}
 * @returns misclosure [length, computed less known], and each level with correction and adjusted
 *   elevation [length]
 * @throws `EMPTY_LIST`, `WRONG_TYPE` (set-ups and distances mixed), `NOT_WHOLE`, `NOT_POSITIVE`,
 *   `NOT_INCREASING`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source level-booking
 * @example
 * const { misclosure, points } = spreadMisclosure({
 *   known: '29.66 m',
 *   points: [
 *     { point: 'B', elevation: '29.231 m', along: 1 },
 *     { point: 'OBM2', elevation: '29.67 m', along: 2 },
 *   ],
 * });
 * misclosure.to('mm').toString() //=> '10'
 * points.map(({ adjusted }) => adjusted.to('m').toString()) //=> ['29.226', '29.66']
 */
export function spreadMisclosure(options: SpreadMisclosureOptions): SpreadMisclosure {
  const { known, points: levels } = readOptions(options, OPTIONS);
  const closing = lastOf(levels).elevation;
  const misclosure = closing.minus(known);
  const corrections = correctionsOf(
    misclosure,
    levels.map((level) => exactAlong(level.along)),
  );
  const points = levels.map(({ point, elevation }, k) => {
    const correction = entry(corrections, k);
    return { point, elevation, correction, adjusted: elevation.plus(correction) };
  });
  return withWorking({ misclosure, points }, () => [
    misclosureStep({ closing, known, misclosure }),
  ]);
}

const exactAlong = (value: number | Length): Ratio =>
  isQuantity(value) ? exactOf(value) : wholeRatio(value);

/** The share of a misclosure to deduct at each part of a line of levels. Internal. */
export function correctionsOf(misclosure: Length, line: readonly Ratio[]): Length[] {
  const end = line.at(-1) ?? wholeRatio(1);
  const back = negateRatio(exactOf(misclosure));
  return line.map((part) => fromSI('length', divideRatios(multiplyRatios(back, part), end)));
}
