import { fault } from '../../errors.js';
import { isFloats } from '../floats.js';
import { readNumber, readOptions } from '../read-options.js';
import type { LocalPlane } from './compare-with-plane.js';
import { checkFloats, MOST, readSurface, type Origin } from './read-surface.js';
import type { Surface } from './triangulation.js';
import { meshWarped } from './warped-mesh.js';

/** A design plane in metres: `z = z0 + gradeX x + gradeY y`. */
export interface DesignPlane {
  /** Elevation at x = y = 0. */
  readonly z0: number;
  /** Rise over run along x. */
  readonly gradeX: number;
  /** Rise over run along y. */
  readonly gradeY: number;
}

/** A design surface that is straight along and across between four corners, in metres. */
export interface DesignCorners {
  /** x, y and z of each corner in turn, in order round a convex figure. */
  readonly corners: Float64Array;
}

/** Reads a design, and moves it to the origin. Internal. */
export function readDesign(design: unknown, origin: Origin): Surface | LocalPlane {
  if (design === undefined) throw fault('REQUIRED', DESIGNS, {}, ['design']);
  if (isFloats(design)) return readSurface(design, 'design', origin);
  if (typeof design !== 'object' || design === null || Array.isArray(design)) {
    throw fault('WRONG_TYPE', DESIGNS, {}, ['design']);
  }
  if ('corners' in design) {
    return readCorners(readOptions(design, ['corners'], ['design'])['corners'], origin);
  }
  const fields = readOptions(design, ['z0', 'gradeX', 'gradeY'], ['design']);
  const read = (field: keyof DesignPlane): number => {
    const value = readNumber(fields[field], ['design', field]);
    if (Math.abs(value) <= MOST) return value;
    throw fault('OUT_OF_RANGE', `${value} is not a level or grade on a site`, {}, [
      'design',
      field,
    ]);
  };
  const [z0, gradeX, gradeY] = [read('z0'), read('gradeX'), read('gradeY')];
  return { z0: z0 + gradeX * origin.x + gradeY * origin.y, gradeX, gradeY };
}

const DESIGNS =
  'write a plane { z0, gradeX, gradeY }, four corners { corners }, or a Float64Array x0, y0, z0, x1 ...';

function readCorners(corners: unknown, origin: Origin): Surface {
  const path = ['design', 'corners'];
  checkFloats(corners, path, { stride: 3, words: 'x, y and z of four corners in turn' });
  if (corners.length !== 12) {
    throw fault('WRONG_TYPE', `expected four corners, got ${corners.length / 3}`, {}, path);
  }
  const shift = [origin.x, origin.y, 0];
  return meshWarped(
    corners.map((value, k) => value - (shift[k % 3] ?? 0)),
    path,
  );
}
