import { entry } from '../invariant.js';
import { sum } from '../units/aggregate.js';
import type { Length } from '../units/quantity.js';
import { countParts } from './count-parts.js';
import type { Anchor, StakeReason } from './stake-reasons.js';

/** A stake with the distance to the next. Internal. */
export interface SpacedStake extends Anchor {
  /** Null at the end of the edge. */
  readonly toNext: Length | null;
}

/** More stakes than this are a wrong digit or unit. */
const MOST_STAKES = 10_000;

/**
 * Fills the gaps between stakes with more at equal distances; a closed edge has a gap from its last
 * stake to its `end` as well. Internal.
 */
export function spacedStakes(
  anchors: readonly Anchor[],
  { spacing, end }: { readonly spacing: Length; readonly end: Length | undefined },
): SpacedStake[] {
  const gaps = gapsOf(anchors, end);
  // too many are refused before any are made
  if (gaps.length > 0) countParts(sum(gaps), spacing, PARTS);
  return anchors.flatMap((anchor, k): SpacedStake[] => {
    const gap = gaps[k];
    return gap === undefined ? [{ ...anchor, toNext: null }] : fill(anchor, gap, spacing);
  });
}

/** Distances from each stake to the next, and to the end of a closed edge. Internal. */
export function gapsOf(anchors: readonly Anchor[], end: Length | undefined): Length[] {
  const stations = [...anchors.map(({ station }) => station), ...(end === undefined ? [] : [end])];
  return stations.slice(1).map((station, k) => station.minus(entry(stations, k)));
}

const PARTS = { of: 'stakes', most: MOST_STAKES, path: ['spacing'] } as const;

/** The stake at the start of a gap and those that fill it. */
function fill(start: Anchor, gap: Length, spacing: Length): SpacedStake[] {
  const parts = countParts(gap, spacing, PARTS);
  const toNext = gap.dividedBy(parts);
  return Array.from({ length: parts }, (_, k) => {
    if (k === 0) return { ...start, toNext };
    const station = start.station.plus(toNext.times(k));
    const reason: StakeReason = { kind: 'spacing', text: 'spacing', station };
    return { station, reasons: [reason], toNext };
  });
}
