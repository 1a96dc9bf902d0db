import type { Outline } from '../../../outline/ring.js';
import type { Length } from '../../../units/quantity.js';
import { areaOfRegions, without, type SignedOutline } from './regions.js';

/** The dig and base of a pavement, which others may share. Internal. */
export interface SharedPart {
  readonly id: string;
  /** Mean depth of its dig. */
  readonly depth: Length;
  readonly dig: Outline;
  readonly base: Outline;
}

/** The parts of dig and base counted with one pavement. Internal. */
export interface OwnParts {
  readonly dig: readonly SignedOutline[];
  readonly base: readonly SignedOutline[];
}

/** True if a dig is deeper, or as deep and first by id. Internal. */
export function isDeeper(
  one: Pick<SharedPart, 'id' | 'depth'>,
  other: Pick<SharedPart, 'id' | 'depth'>,
): boolean {
  const deeper = one.depth.compare(other.depth);
  return deeper === 0 ? one.id < other.id : deeper > 0;
}

/**
 * Shares out the areas that several digs or bases cover. A shared area counts with the pavement that has
 * the deepest dig; if depths are equal, with the first by id, whatever the order of the job. Internal.
 */
export function shareOut(parts: readonly SharedPart[]): readonly OwnParts[] {
  const inOrder = [...parts].sort((a, b) => (isDeeper(a, b) ? -1 : 1));
  return parts.map((part) => {
    const before = inOrder.slice(0, inOrder.indexOf(part));
    const own = (name: 'dig' | 'base') => {
      const others = before.map((other) => other[name]);
      const regions = without(part[name], others);
      return areaOfRegions(regions).isZero() ? [] : regions;
    };
    return { dig: own('dig'), base: own('base') };
  });
}
