import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { ELEVATION, SIGHT } from './limits.js';

/** A level to adjust, and how far along the line of levels it was taken. */
export interface LevelToAdjust {
  readonly point: string;
  readonly elevation: LengthInput;
  /** Number of set-ups from the start, or distance from the start. */
  readonly along: number | LengthInput;
}

/** A level with its share of the misclosure taken off. */
export interface AdjustedLevel {
  readonly point: string;
  readonly elevation: Length;
  readonly correction: Length;
  readonly adjusted: Length;
}

/** Levels with the misclosure spread over them. */
export interface SpreadMisclosure extends Worked {
  /** Closing level less the known one. */
  readonly misclosure: Length;
  readonly points: readonly AdjustedLevel[];
}

/**
 * Spreads a misclosure over a line of levels, by set-ups or by distance:
 * `correction(i) = -misclosure x n(i) / n`. Exact, so that the closing level becomes the known one.
 *
 * @param options.known - elevation of the closing mark [length]
 * @param options.points - levels in order, the last on the closing mark: `point`, `elevation` [length]
 *   and `along`, which is a number of set-ups for all, or a distance [length] for all
 * @returns misclosure [length, computed less known], and each level with correction and adjusted level
 *   [length]
 * @throws `EMPTY_LIST`, `WRONG_TYPE` (set-ups and distances mixed), `NOT_POSITIVE`, `STATION_ORDER`,
 *   `OUT_OF_RANGE` and the reading codes
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
export function spreadMisclosure(options: {
  readonly known: LengthInput;
  readonly points: readonly LevelToAdjust[];
}): SpreadMisclosure {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const known = reader.quantity('length', fields['known'], ['known'], ELEVATION);
  const levels = readLevels(reader, fields['points']);
  reader.finish();
  const closing = levels.at(-1)?.elevation ?? known;
  const misclosure = closing.minus(known);
  const corrections = correctionsOf(
    misclosure,
    levels.map(({ along }) => along),
  );
  const points = levels.map(({ point, elevation }, k) => {
    const correction = corrections[k] ?? misclosure;
    return { point, elevation, correction, adjusted: elevation.plus(correction) };
  });
  return withWorking({ misclosure, points }, () => [
    {
      title: 'Misclosure',
      formula: 'm = z - z0',
      given: [given('z', 'closing level', closing), given('z0', 'known level', known)],
      result: given('m', 'misclosure', misclosure),
      source: 'level-booking',
    },
  ]);
}

/** The share of a misclosure to take off at each part of a line of levels. Internal. */
export function correctionsOf(misclosure: Length, along: readonly Ratio[]): Length[] {
  const whole = along.at(-1) ?? wholeRatio(1);
  const back = negateRatio(exactOf(misclosure));
  return along.map((part) => fromSI('length', divideRatios(multiplyRatios(back, part), whole)));
}

interface ReadLevel {
  readonly point: string;
  readonly elevation: Length;
  readonly along: Ratio;
}

function readLevels(reader: Reader, value: unknown): ReadLevel[] {
  const list = reader.list(value, ['points']);
  const levels = list.map((item, k): ReadLevel => {
    const path = ['points', k];
    const fields = reader.object(item, path);
    const elevation = [...path, 'elevation'];
    return {
      point: reader.text(fields['point'], [...path, 'point']),
      elevation: reader.quantity('length', fields['elevation'], elevation, ELEVATION),
      along: readAlong(reader, fields['along'], [...path, 'along']),
    };
  });
  checkAlong(reader, list, levels);
  return levels;
}

function readAlong(reader: Reader, value: unknown, path: readonly (string | number)[]): Ratio {
  if (typeof value !== 'number') return exactOf(reader.quantity('length', value, path, SIGHT));
  const setUps = reader.number(value, path, { sign: 'not-negative', most: MOST_SET_UPS });
  if (!setUps.isInteger()) {
    reader.fail('OUT_OF_RANGE', path, `set-ups are counted in whole numbers, got ${value}`);
  }
  return wholeRatio(setUps.toNumber());
}

const MOST_SET_UPS = 10_000;

function checkAlong(reader: Reader, list: readonly unknown[], levels: readonly ReadLevel[]): void {
  const kinds = new Set(list.map((item) => typeof (item as { along?: unknown } | null)?.along));
  if (kinds.has('number') && kinds.size > 1) {
    reader.fail('WRONG_TYPE', ['points'], 'count all in set-ups or all by distance');
    return;
  }
  levels.forEach(({ along }, k) => {
    const before = levels[k - 1]?.along;
    if (before === undefined || compareRatios(along, before) >= 0) return;
    reader.fail('STATION_ORDER', ['points', k, 'along'], 'is less than that of the point before');
  });
  const whole = levels.at(-1)?.along;
  if (whole === undefined || signOfRatio(whole) > 0) return;
  reader.fail('NOT_POSITIVE', ['points', levels.length - 1, 'along'], 'must be more than zero');
}
