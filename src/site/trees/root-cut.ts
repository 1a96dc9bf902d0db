import type { SourceId } from '../../sources/catalogue.js';
import { ROOT_CUT_MARKS } from '../../sources/tree-rules.js';
import type { Area, Length } from '../../units/quantity.js';
import { given, type Step } from '../../working.js';
import type { DigAtTree } from './dig-at-tree.js';

/** A mark that a published source draws. */
export interface RootCutMark {
  /** `share`: a quarter of the zone. `diameters`: three trunk diameters. */
  readonly id: 'share' | 'diameters';
  /** True if the dig cuts more, or comes closer. */
  readonly isReached: boolean;
  /** What the mark is and how well it is founded. */
  readonly text: string;
  /** Where it is printed. */
  readonly source: SourceId;
}

/** What a dig cuts of a root zone. */
export interface RootCut {
  /** Of the zone within the dig. */
  readonly area: Area;
  /** Part of the zone, 0 to 1. */
  readonly share: number;
  /** From the middle of the trunk to the dig; zero if the dig runs under it. */
  readonly distance: Length;
  /** The distance over the trunk diameter. */
  readonly diameters: number;
  /** The published marks, reached or not. */
  readonly marks: readonly RootCutMark[];
}

/** What a dig cuts of a root zone, and the marks it reaches. Internal. */
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
        text: 'More than a quarter of the root zone would be disturbed. The published quarter is of the roots inside the drip line: taking it of this circle is common practice.',
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

/** The working of a cut. Internal. */
export const rootCutStep = (radius: Length, dig: DigAtTree, cut: RootCut): Step => ({
  title: 'Root zone that the dig cuts',
  formula: dig.formula,
  given: [given('R', 'radius', radius), ...dig.given],
  result: given('A', 'area cut', cut.area),
  source: 'derived',
});
