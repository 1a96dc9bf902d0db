import { custom, list } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { Area, Length } from '../units/quantity.js';
import { NO_AREA, NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { combineOutlines } from './combine-outlines.js';
import { combinedOutline, type CombinedOutline } from './combined-outline.js';
import { areaOf, measureOutline } from './outline-area.js';
import { readOutline, type OutlineInput } from './read-outline.js';

/** Outlines to unite. */
export interface UniteOutlinesOptions {
  /** One or more outlines, each as in `outlineArea`. They may overlap, touch or be apart. */
  readonly outlines: readonly OutlineInput[];
}

const OPTIONS = shapeOf<UniteOutlinesOptions>()({
  outlines: list(custom(readOutline), { of: 'outlines' }),
});

/** The area that outlines cover together. */
export interface UnitedOutlines extends Worked {
  /** One outline for each connected part; parts that meet only at a corner are separate. */
  readonly outlines: readonly CombinedOutline[];
  /** Area covered, counted once, without the holes. */
  readonly area: Area;
  /** Perimeter of all parts and their holes. */
  readonly perimeter: Length;
  /** Sum of the areas of the outlines less `area`: 0 if they touch or are apart. */
  readonly overlap: Area;
}

/**
 * Unites outlines, arcs and holes included: `A = area covered by any of them`,
 * `overlap = sum(A(k)) - A`. An area that outlines share is counted once, and an edge between two of
 * them disappears. Ground that they enclose is a hole.
 *
 * Crossings of straight edges are exact, so their areas are exact. Crossings on arcs are kept to 40
 * digits, and arcs stay arcs. The edges that bound the result are found in floats: outlines closer
 * than 1e-11 of the distance from the first point to the farthest count as touching. Such a gap makes
 * `overlap` negative by the area of the gap.
 *
 * @param options - see {@link UniteOutlinesOptions}
 * @returns the outlines of the parts, their area, perimeter and overlap
 * @throws `OUTLINE_UNRESOLVED`, `TOO_MANY` and the codes of {@link outlineArea}
 * @source derived
 * @example
 * const drive = { unit: 'm', points: [[0, 0], [9, 0], [9, 4], [0, 4]] } as const;
 * const walk = { unit: 'm', points: [[8, 3], [10, 3], [10, 12], [8, 12]] } as const;
 * const dig = uniteOutlines({ outlines: [drive, walk] });
 * dig.area.to('m2').toString() //=> '53'
 * dig.overlap.to('m2').toString() //=> '1'
 * dig.outlines.length //=> 1
 */
export function uniteOutlines(options: UniteOutlinesOptions): UnitedOutlines {
  const { outlines } = readOptions(options, OPTIONS);
  const united = combineOutlines(outlines, 'any', ['outlines']);
  const own = outlines.map(areaOf);
  const area = united.reduce((sum, one) => sum.plus(areaOf(one)), NO_AREA);
  const perimeter = united.reduce((sum, one) => sum.plus(measureOutline(one).perimeter), NO_LENGTH);
  const overlap = own.reduce((sum, one) => sum.plus(one), NO_AREA).minus(area);
  return withWorking({ outlines: united.map(combinedOutline), area, perimeter, overlap }, () => [
    derivedStep({
      title: 'Overlap of the outlines',
      formula: 'D = sum(A) - U',
      given: [
        given('A', 'area of each outline, in order', own),
        given('U', 'area covered, counted once', area),
      ],
      result: given('D', 'covered more than once', overlap),
    }),
  ]);
}
