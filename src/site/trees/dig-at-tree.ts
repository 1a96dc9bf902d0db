import type { Decimal } from '../../units/decimal.js';
import type { Length } from '../../units/quantity.js';
import type { Area } from '../../units/quantity.js';
import type { Step } from '../../working.js';

/** A dig beside a tree. Internal. */
export interface DigAtTree {
  /** Distance to the trunk, and part of a root zone of a radius that is in the dig, 0 to 1. */
  readonly cut: (radius: Length) => { readonly distance: Length; readonly share: Decimal };
  /** The working of the area cut from a root zone of a radius. */
  readonly steps: (radius: Length, area: Area) => readonly Step[];
}
