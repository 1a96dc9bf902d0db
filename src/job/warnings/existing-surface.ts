import { entry } from '../../invariant.js';
import type { Length } from '../../units/quantity.js';
import { fromNumber } from '../../units/construct.js';
import type { PlanPoint } from '../../units/vector.js';
import type { LaidOut } from '../plan/lay-out.js';
import type { ReadJob } from '../schema/job-shape.js';
import { placeFrom } from './figures.js';
import { heightOf, levelMesh, type LevelMesh } from './finish-mesh.js';

/** Elevation of the existing surface by the spot heights of the site; null where they do not reach. Internal. */
export type ExistingAt = (place: PlanPoint) => Length | null;

/** The spot heights of a site as a surface; null where it has none. Internal. */
export function existingSurface(job: ReadJob, laid: readonly LaidOut[]): ExistingAt | null {
  const { existingLevels } = job;
  if (existingLevels === undefined) return null;
  // what is in triangles already is not put in triangles again
  const known = laid.find(({ ground }) => ground.basis === 'spot-heights');
  if (known !== undefined) return known.ground.existingAt;
  const origin = entry(existingLevels, 0);
  let mesh: LevelMesh | null | undefined;
  return (place) => {
    mesh ??= levelMesh(existingLevels, origin);
    const at = placeFrom(origin, place);
    const facet = mesh?.facetIn(at) ?? null;
    return facet === null ? null : fromNumber(heightOf(facet, at), 'm');
  };
}
