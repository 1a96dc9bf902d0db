import { fault } from '../../errors.js';
import { compareSurfaces } from './compare-surfaces.js';
import { compareWithPlane, type LocalPlane } from './compare-with-plane.js';
import type { Rings } from './outline-mesh.js';
import { makeTally, type Totals } from './tally.js';
import type { Surface } from './triangulation.js';

/** Cut and fill, in the unit of the surfaces, places seen from their origin. Internal. */
export interface Compared extends Totals {
  readonly diagonalDoubt: number;
  readonly uncoveredArea: number;
}

/** Of the area of an outline: what triangles may miss by rounding. */
const ROUNDING = 1e-9;

/** Cut and fill between a surface and a design that have one origin. Internal. */
export function compare(
  existing: Surface,
  design: Surface | LocalPlane,
  rings: Rings | undefined,
): Compared {
  const tally = makeTally();
  const diagonalDoubt =
    'gradeX' in design
      ? compareWithPlane(existing, design, rings, tally)
      : compareSurfaces(existing, design, rings, tally);
  const totals = tally.totals();
  if (!(totals.area > 0)) {
    const words =
      rings === undefined
        ? 'the two surfaces share no area'
        : 'nothing was measured in the outline';
    throw fault('SURFACES_APART', words, {}, [rings === undefined ? 'design' : 'outline']);
  }
  const missing = rings === undefined ? 0 : rings.area - totals.area;
  const uncoveredArea = rings !== undefined && missing > ROUNDING * rings.area ? missing : 0;
  return { diagonalDoubt, uncoveredArea, ...totals };
}
