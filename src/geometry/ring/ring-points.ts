import { fault } from '../../errors.js';

/** Makes sure that coordinates are a flat list of whole points, three or more. Internal. */
export function requireRing(xy: Float64Array): void {
  if (!(xy instanceof Float64Array) || xy.length % 2 !== 0) {
    throw fault('WRONG_TYPE', 'expected a Float64Array x0, y0, x1, y1 ... in metres', {});
  }
  if (xy.length < 6) {
    const got = xy.length / 2;
    throw fault('TOO_FEW_POINTS', `an outline needs three points or more, got ${got}`, { got });
  }
}

/** Refuses a sum that NaN or infinity has got into, and names the first such coordinate. Internal. */
export function requireFinite(sum: number, xy: Float64Array): void {
  if (Number.isFinite(sum)) return;
  const index = xy.findIndex((value) => !Number.isFinite(value));
  if (index < 0) throw fault('OUT_OF_RANGE', 'coordinates beyond any site', {});
  const axis = index % 2 === 0 ? 'x' : 'y';
  const point = Math.floor(index / 2);
  throw fault('NOT_FINITE', `${axis} of point ${point} is ${xy[index] ?? NaN}`, { point, axis });
}
