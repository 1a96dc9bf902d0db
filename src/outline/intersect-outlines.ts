import { custom } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { Area } from '../units/quantity.js';
import { NO_AREA } from '../units/zero.js';
import { given, procedureStep, withWorking, type Worked } from '../working.js';
import { combineOutlines } from './combine-outlines.js';
import { combinedOutline, type CombinedOutline } from './combined-outline.js';
import { areaOf } from './outline-area.js';
import { readOutline, type OutlineInput } from './read-outline.js';

/** Two outlines to intersect. */
export interface IntersectOutlinesOptions {
  /** First outline, such as the dig, as in `outlineArea`. */
  readonly outline: OutlineInput;
  /** Second outline, such as the old paving, as in `outlineArea`. */
  readonly other: OutlineInput;
}

const OPTIONS = shapeOf<IntersectOutlinesOptions>()({
  outline: custom(readOutline),
  other: custom(readOutline),
});

/** The area that two outlines share. */
export interface IntersectedOutlines extends Worked {
  /** One outline for each part; empty if the outlines are apart or only touch. */
  readonly outlines: readonly CombinedOutline[];
  /** Area that both cover, without the holes. */
  readonly area: Area;
}

/**
 * Intersects two outlines, arcs and holes included: `A = area covered by both`. Outlines that only
 * touch share no area.
 *
 * It is as exact as {@link uniteOutlines}: straight edges always, arcs to 40 digits. A part narrower
 * than 1e-11 of the distance from the first point to the farthest may be left out.
 *
 * @param options - see {@link IntersectOutlinesOptions}
 * @returns the outlines of the common parts and their area
 * @throws `OUTLINE_UNRESOLVED` and the codes of {@link outlineArea}
 * @source derived
 * @example
 * const dig = { unit: 'ft', points: [[0, 0], [24, 0], [24, 12], [0, 12]] } as const;
 * const oldWalk = { unit: 'ft', points: [[20, -6], [23, -6], [23, 18], [20, 18]] } as const;
 * const common = intersectOutlines({ outline: dig, other: oldWalk });
 * common.area.to('ft2').toString() //=> '36'
 * common.outlines.length //=> 1
 */
export function intersectOutlines(options: IntersectOutlinesOptions): IntersectedOutlines {
  const { outline, other } = readOptions(options, OPTIONS);
  const common = combineOutlines([outline, other], 'all', ['other']);
  const area = common.reduce((sum, one) => sum.plus(areaOf(one)), NO_AREA);
  return withWorking({ outlines: common.map(combinedOutline), area }, () => [
    procedureStep({
      title: 'Area that both outlines cover',
      procedure: 'intersectOutlines',
      method:
        'Cuts the edges of the two outlines where they cross, joins those that bound what both cover, and returns the area inside.',
      given: [
        given('A1', 'area of the outline', areaOf(outline)),
        given('A2', 'area of the other', areaOf(other)),
      ],
      result: given('A', 'area in common', area),
      source: 'derived',
    }),
  ]);
}
