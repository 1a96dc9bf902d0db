import { combineOutlines } from '../../../outline/combine-outlines.js';
import type { Outline } from '../../../outline/ring.js';
import { boxOf, isApart, type Box } from './box.js';

/** Results kept for an outline, because areas, earth and old paving need them again. */
interface Known {
  readonly box: Box;
  readonly common: WeakMap<Outline, readonly Outline[]>;
}

const KNOWN = new WeakMap<Outline, Known>();

function knownOf(outline: Outline): Known {
  const known = KNOWN.get(outline) ?? { box: boxOf(outline), common: new WeakMap() };
  KNOWN.set(outline, known);
  return known;
}

/** The outlines of the area that two outlines share. Internal. */
export function commonArea(a: Outline, b: Outline): readonly Outline[] {
  if (a === b) return [a];
  const [one, other] = [knownOf(a), knownOf(b)];
  if (isApart(one.box, other.box)) return [];
  const found = one.common.get(b) ?? combineOutlines([a, b], 'all', ['outline']);
  one.common.set(b, found);
  return found;
}
