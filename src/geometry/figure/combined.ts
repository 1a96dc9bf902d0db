import type { Outlining } from './combine-figures.js';

/** A combined figure with its holes. Internal. */
export interface Combined {
  readonly outer: Outlining;
  readonly holes: readonly Outlining[];
}
