import type { RodTarget } from '../../levelling/rod-targets.js';
import type { Angle, Length, Slope } from '../../units/quantity.js';

/** A fixed level of finished grade, and the grade there. */
export interface GradeLevelPlan {
  /** Name of the thing that cannot move. */
  readonly name: string;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** Elevation of the fixed level. */
  readonly elevation: Length;
  /** Elevation of finished grade at the point. */
  readonly finish: Length;
  /** Fixed level less finished grade: zero if the grade meets it. */
  readonly miss: Length;
}

/** One stretch of a line of levels. */
export interface GradeStretchPlan {
  /** Name of the first level. */
  readonly from: string;
  /** Name of the next level. */
  readonly to: string;
  /** Distance in plan. */
  readonly length: Length;
  /** Rise along the stretch; negative if it falls. */
  readonly rise: Length;
  /** Slope along the line, + rising. */
  readonly grade: Slope;
  /** Slope square to the line, + rising to the left. */
  readonly crossSlope: Slope;
  /** Steepest slope, both combined; not negative. */
  readonly fall: Slope;
}

/** Finished grade of a pavement through fixed levels. */
export interface GradePlan {
  /** Type of surface. */
  readonly kind: 'line' | 'plane' | 'warped';
  /** Levels that it must meet. */
  readonly levels: readonly GradeLevelPlan[];
  /** Stretches between the levels of a line; empty for other surfaces. */
  readonly stretches: readonly GradeStretchPlan[];
  /** Distance of the corners of a warped surface out of one plane; null for other surfaces. */
  readonly twist: Length | null;
  /** Downhill direction of a plane, clockwise from +y; null if there is none. */
  readonly downhillAzimuth: Angle | null;
  /** Steepest slope of the surface, not negative. */
  readonly steepest: Slope;
  /** Flattest slope of the surface, not negative. It is compared with the minimum fall. */
  readonly flattest: Slope;
  /** `pass` if the flattest slope is at least the minimum fall. */
  readonly verdict: 'pass' | 'fail';
  /** Edges that drain toward a building or slab, counted from 1. */
  readonly shedAtBuilding: readonly number[];
}

/** Rod reading on one surface at a stake. */
export type RodPlan = RodTarget;

/** The level as set up for the day. */
export interface LevellingPlan {
  /** Name of the benchmark. */
  readonly benchmark: string;
  /** Elevation of the benchmark. */
  readonly elevation: Length;
  /** Reading on the benchmark. */
  readonly backsight: Length;
  /** Elevation of the line of sight. */
  readonly instrumentHeight: Length;
  /** The benchmark read again at the end of the day; null if it was not. */
  readonly closing: {
    /** Reading at the end of the day. */
    readonly reading: Length;
    /** Maximum difference. */
    readonly tolerance: Length;
    /** Last reading less backsight. */
    readonly drift: Length;
    /** `pass` if the drift is within the tolerance. */
    readonly verdict: 'pass' | 'fail';
  } | null;
}
