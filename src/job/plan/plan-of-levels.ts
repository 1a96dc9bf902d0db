import type { RodTarget } from '../../levelling/rod-targets.js';
import type { Angle, Length, Slope } from '../../units/quantity.js';

/** A level that finished grade is laid through. */
export interface GradeLevelPlan {
  /** What cannot move. */
  readonly name: string;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** The level itself. */
  readonly elevation: Length;
  /** Finished grade there. */
  readonly finish: Length;
  /** Level less finished grade: zero where the grade meets it. */
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
  /** Rise along it; negative where it falls. */
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
  /** How the surface was laid. */
  readonly kind: 'line' | 'plane' | 'warped';
  /** The levels it has to meet. */
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
  /** `pass` where the flattest slope is at least the minimum fall. */
  readonly verdict: 'pass' | 'fail';
  /** Edges at a building, counted from 0, over which water runs at the building. */
  readonly shedAtBuilding: readonly number[];
}

/** What the rod reads on one surface at a stake. */
export type RodPlan = RodTarget;

/** The level as it stands. */
export interface LevellingPlan {
  /** Name of the benchmark. */
  readonly benchmark: string;
  /** Elevation of the benchmark. */
  readonly elevation: Length;
  /** Reading on the benchmark. */
  readonly backsight: Length;
  /** Elevation of the line of sight. */
  readonly instrumentHeight: Length;
  /** The benchmark read again at the end of the day; null where it was not. */
  readonly closing: {
    /** Reading at the end of the day. */
    readonly reading: Length;
    /** By how much it may differ. */
    readonly tolerance: Length;
    /** Last reading less backsight. */
    readonly drift: Length;
    /** `pass` where the drift is within the tolerance. */
    readonly verdict: 'pass' | 'fail';
  } | null;
}
