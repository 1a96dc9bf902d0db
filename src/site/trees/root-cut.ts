import type { SourceId } from '../../sources/catalogue.js';
import { ROOT_CUT_MARKS } from '../../sources/tree-rules.js';
import type { Area, Length } from '../../units/quantity.js';
import type { DigAtTree } from './dig-at-tree.js';

/** A published limit for cuts near a tree. */
export interface RootCutMark {
  /** `share`: a quarter of the zone. `diameters`: three trunk diameters. */
  readonly id: 'share' | 'diameters';
  /** True if the dig cuts more or comes closer. */
  readonly isReached: boolean;
  /** The limit in words, and its basis. */
  readonly text: string;
  /** Where it is printed. */
  readonly source: SourceId;
}

/** The cut of a dig in a root zone. */
export interface RootCut {
  /** Area of the zone within the dig. */
  readonly area: Area;
  /** Share of the zone, 0 to 1. */
  readonly share: number;
  /** Distance from the middle of the trunk to the dig; 0 if the dig runs under it. */
  readonly distance: Length;
  /** Distance over trunk diameter. */
  readonly diameters: number;
  /** The published limits, and whether the dig reaches them. */
  readonly marks: readonly RootCutMark[];
}

/** The cut of a dig in a root zone, and the limits it reaches. Internal. */
export function rootCut(
  dig: DigAtTree,
  tree: { readonly radius: Length; readonly area: Area; readonly trunk: Length },
): RootCut {
  const { radius, area, trunk } = tree;
  const { distance, share } = dig.cut(radius);
  const closest = trunk.times(ROOT_CUT_MARKS.diameters.value);
  return {
    area: area.times(share),
    share: share.toNumber(),
    distance,
    diameters: distance.dividedBy(trunk).toNumber(),
    marks: [
      {
        id: 'share',
        isReached: share.gt(ROOT_CUT_MARKS.share.value),
        text: 'More than a quarter of the root zone would be disturbed. The published quarter applies to the roots inside the drip line. Applying it to this circle is common practice.',
        source: ROOT_CUT_MARKS.share.source,
      },
      {
        id: 'diameters',
        isReached: distance.compare(closest) < 0,
        text: 'The dig comes closer to the trunk than three trunk diameters.',
        source: ROOT_CUT_MARKS.diameters.source,
      },
    ],
  };
}
