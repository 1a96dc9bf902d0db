import type { Outline } from '../../../outline/ring.js';
import { ringsOf } from '../../../outline/ring.js';
import { cornerName } from '../../tables/corner-name.js';
import { pointFrom, type PlanPoint } from '../../../units/vector.js';

/** A corner of the paving. Internal. */
export interface Corner extends PlanPoint {
  readonly name: string;
}

/** The corners of an outline: those of the outer ring, then those of its holes. Internal. */
export const cornersOf = (outline: Outline): Corner[] =>
  ringsOf(outline)
    .flatMap(({ points }) => points)
    .map((point, index) => ({ name: cornerName(index), ...pointFrom(outline.origin, point) }));

/** The names of the edges of an outline, from its first: `1 (A-B)`. Internal. */
export function edgeNames(outline: Outline): string[] {
  const names: string[] = [];
  for (const { points } of ringsOf(outline)) {
    const start = names.length;
    points.forEach((_, index) => {
      const to = start + ((index + 1) % points.length);
      names.push(`${start + index + 1} (${cornerName(start + index)}-${cornerName(to)})`);
    });
  }
  return names;
}
