import { fault, type SettlineError } from '../errors.js';

/** What bulk fits take: `[x, y]` pairs, or a flat `Float64Array` of `x0, y0, x1, y1 ...`, in metres. */
export type BulkPoints = readonly (readonly [number, number])[] | Float64Array;

/** What a figure needs, in words, and how many points at least. Internal. */
export interface PointNeed {
  readonly least: number;
  readonly words: string;
}

/** Brings points into one flat array, a copy only where they are pairs. Internal. */
export function flatPoints(points: BulkPoints, need: PointNeed): Float64Array {
  const xy = points instanceof Float64Array ? points : flatten(points);
  if (xy.length >> 1 < need.least || xy.length % 2 !== 0) {
    throw fault('TOO_FEW_POINTS', `${need.words}, each with x and y`);
  }
  return xy;
}

function flatten(points: readonly (readonly [number, number])[]): Float64Array {
  if (!Array.isArray(points)) throw fault('WRONG_TYPE', 'expected a list of [x, y] points');
  const xy = new Float64Array(2 * points.length);
  points.forEach((point: unknown, i) => {
    if (!isPoint(point)) {
      throw fault('WRONG_TYPE', 'expected a point [x, y]', {}, [i]);
    }
    xy[2 * i] = point[0];
    xy[2 * i + 1] = point[1];
  });
  return xy;
}

const isPoint = (point: unknown): point is readonly [number, number] =>
  Array.isArray(point) && typeof point[0] === 'number' && typeof point[1] === 'number';

/** Where a bulk fit writes its residuals. */
export interface ResidualOptions {
  /**
   * An array of one float a point to write the residuals into: saves a new one where fits are made
   * over and over. It is then the `residuals` of the result.
   */
  readonly residualsInto?: Float64Array;
}

/** The caller's array for residuals, or a new one. Internal. */
export function residualsFor(count: number, { residualsInto }: ResidualOptions): Float64Array {
  if (residualsInto === undefined) return new Float64Array(count);
  if (residualsInto instanceof Float64Array && residualsInto.length === count) return residualsInto;
  throw fault('WRONG_TYPE', `residualsInto must be a Float64Array of ${count}`);
}

/** The float at an index that is known to exist. Internal. */
export const at = (values: Float64Array, index: number): number => values[index] ?? Number.NaN;

/** The fault of coordinates whose sums are no numbers: one is not finite, or far too large. Internal. */
export function notFinite(xy: Float64Array): SettlineError {
  const index = xy.findIndex((value) => !Number.isFinite(value));
  return index < 0
    ? fault('OUT_OF_RANGE', 'the coordinates are too far apart to calculate with')
    : fault('NOT_FINITE', 'every coordinate must be a finite number', {}, [index >> 1]);
}
