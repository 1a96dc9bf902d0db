import type { Issue } from '../../../errors.js';
import { formatQuantity } from '../../../units/format-quantity.js';
import { jobInvalid } from '../../read/read-job.js';
import type { Pavement } from '../../schema/layer-kinds.js';
import { commonArea } from './common-area.js';
import { areaOfRegions } from './regions.js';

/**
 * Refuses pavements that overlap. Internal.
 *
 * @throws `JOB_INVALID` with the area of each overlap
 */
export function refuseOverlaps(pavements: readonly Pavement[]): void {
  const issues = pavements.flatMap((pavement, index): Issue[] => {
    const found = pavements.slice(0, index).flatMap((other) => overlapOf(other, pavement) ?? []);
    if (found.length === 0) return [];
    const places = found.map(({ area: shared, id }) => `${shared} of the paving of ${id}`);
    const message = `overlaps ${places.join(' and ')}. Move the edges so that the pavings only touch`;
    const params = {
      pavement: found.map(({ id }) => id).join(', '),
      area: found.map(({ area: shared }) => shared).join(', '),
    };
    return [{ path: ['pavements', index, 'outline'], code: 'OUTLINES_OVERLAP', message, params }];
  });
  if (issues.length > 0) throw jobInvalid(issues);
}

/** The area of an earlier pavement that a pavement overlaps, in words; null if there is none. */
function overlapOf(other: Pavement, pavement: Pavement): { id: string; area: string } | null {
  const common = commonArea(other.outline, pavement.outline);
  const shared = areaOfRegions(common.map((outline) => ({ outline, sign: 1 })));
  if (shared.isZero()) return null;
  return { id: other.id, area: formatQuantity(shared, { as: 'm2', places: 2 }) };
}
