import { meanDepthAlong, type MeanDepthAlong } from '../../../string-line/mean-depth-along.js';
import { sum } from '../../../units/aggregate.js';
import type { Length } from '../../../units/quantity.js';
import type { Step } from '../../../working.js';
import type { StakeDig } from '../stake-grounds.js';

/** Mean depth of dig along strings, with its working. Internal. */
export interface MeanDig {
  readonly depth: Length;
  readonly steps: () => readonly Step[];
}

/**
 * Mean depth of dig along the strings of a pavement. If each string has only one reading, it is their
 * plain mean; null if there is no reading. Internal.
 */
export function meanDig(strings: readonly (readonly StakeDig[])[]): MeanDig | null {
  const digs = strings.flat().flatMap(({ dig }) => dig ?? []);
  if (digs.length === 0) return null;
  const along: MeanDepthAlong = meanDepthAlong({
    strings: strings.map((stakes, index) => ({
      id: `string ${index + 1}`,
      stakes: stakes.map(({ id, station, dig }) => ({
        id,
        station,
        ...(dig === null ? {} : { depth: dig }),
      })),
    })),
  });
  return {
    depth: along.mean ?? sum(digs).dividedBy(digs.length),
    steps: () => along.working,
  };
}
