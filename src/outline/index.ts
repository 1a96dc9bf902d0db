export { outlineArea, type OutlineArea, type OutlineAreaOptions } from './outline-area.js';
export type { ArcInput, HoleInput, OutlineInput, RingInput } from './read-outline.js';
export type { Corners } from './corner.js';
export {
  widenOutline,
  type WidenedArc,
  type WidenedHole,
  type WidenedOutline,
  type WidenOutlineOptions,
} from './widen-outline.js';
export {
  intersectOutlines,
  type IntersectedOutlines,
  type IntersectOutlinesOptions,
} from './intersect-outlines.js';
export { uniteOutlines, type UnitedOutlines, type UniteOutlinesOptions } from './unite-outlines.js';
export type { CombinedOutline } from './combined-outline.js';
export {
  areaByBearings,
  type AreaByBearings,
  type AreaByBearingsOptions,
  type TraverseCourse,
  type TraverseCourseInput,
  type TraverseStartInput,
} from './area-by-bearings.js';
export { areaByOffsets, type AreaByOffsets, type AreaByOffsetsOptions } from './area-by-offsets.js';
