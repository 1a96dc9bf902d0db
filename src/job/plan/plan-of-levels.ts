import type { RodTarget } from '../../levelling/rod-targets.js';
import type { Angle, Length, Slope } from '../../units/quantity.js';

/** A level that finished grade is laid through. */
export interface GradeLevelPlan {
  readonly name: string;
  readonly x: Length;
  readonly y: Length;
  readonly elevation: Length;
  /** Finished grade there. */
  readonly finish: Length;
  /** Level less finished grade: zero where the grade meets it. */
  readonly miss: Length;
}

/** One stretch of a line of levels. */
export interface GradeStretchPlan {
  readonly from: string;
  readonly to: string;
  readonly length: Length;
  readonly rise: Length;
  /** Along the line, + rising. */
  readonly grade: Slope;
  /** Square to it, + rising to the left. */
  readonly crossSlope: Slope;
  /** Steepest, both together; not negative. */
  readonly fall: Slope;
}

/** Finished grade of a pavement by levels that cannot move. */
export interface GradePlan {
  readonly kind: 'line' | 'plane' | 'warped';
  readonly levels: readonly GradeLevelPlan[];
  /** Of a line. */
  readonly stretches: readonly GradeStretchPlan[];
  /** Of a warped surface: how far its corners are out of one plane. */
  readonly twist: Length | null;
  /** Of a plane: the way water runs, clockwise from +y. */
  readonly downhillAzimuth: Angle | null;
  /** Steepest slope of the surface, not negative. */
  readonly steepest: Slope;
  /** Flattest slope of the surface, not negative: what the least fall is held against. */
  readonly flattest: Slope;
  readonly verdict: 'pass' | 'fail';
  /** Edges at a building, counted from 0, over which water runs at the building. */
  readonly shedAtBuilding: readonly number[];
}

/** What the rod reads on one surface at a stake. */
export type RodPlan = RodTarget;

/** The level as it stands. */
export interface LevellingPlan {
  readonly benchmark: string;
  readonly elevation: Length;
  readonly backsight: Length;
  /** Elevation of the line of sight. */
  readonly instrumentHeight: Length;
  /** The benchmark read again at the end of the day; null where it was not. */
  readonly closing: {
    readonly reading: Length;
    readonly tolerance: Length;
    /** Last reading less backsight. */
    readonly drift: Length;
    readonly verdict: 'pass' | 'fail';
  } | null;
}
