import type { WaterAction } from '../../ground/soil/lift-water.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { FrostGroup } from '../../sources/frost-figures.js';
import type { Flow, Length, Volume } from '../../units/quantity.js';
import type { Verdict } from '../../verdict.js';

/** A rule that requires a thickness. */
export interface ThicknessRule {
  /**
   * `published`: the minimum of the trade association; `poor-ground`: with what is added for clay, wet
   * ground and frost; `frost-limited` and `frost-free`: base against frost; `foundation`: a county's
   * foundation under roads, by the strength of the ground.
   */
  readonly rule: 'published' | 'poor-ground' | 'frost-limited' | 'frost-free' | 'foundation';
  /** Thickness that it requires. */
  readonly thickness: Length;
  /** What is planned less than that; 0 if it is enough. */
  readonly shortfall: Length;
  /** Where the rule is printed. */
  readonly source: SourceId;
}

/** The thickness of a part of a pavement, and the rules for it. */
export interface GovernedThickness {
  /** Part of the pavement; the base is base and sub-base together. */
  readonly part: 'paver' | 'bedding' | 'base';
  /** Planned thickness. */
  readonly planned: Length;
  /** The rule that requires the most; complete protection from frost is shown but never governs. */
  readonly governs: ThicknessRule['rule'];
  /** Every rule, the published minimum first. */
  readonly rules: readonly ThicknessRule[];
}

/** Frost under a pavement. */
export interface FrostPlan {
  /** Depth of frost below finished grade; pavers and bedding are counted as base. */
  readonly depth: Length;
  /** Depth with the coefficient of heat conduction in both zones. */
  readonly twoZoneDepth: Length;
  /** How far frost goes into the subgrade; 0 for not at all. */
  readonly intoSubgrade: Length;
  /** Frost group of the subgrade; null if the job gives none. */
  readonly group: FrostGroup | null;
  /** True if a figure is beyond the equations. */
  readonly extrapolated: boolean;
}

/** Water and passes for a lift. */
export interface LiftGroundPlan {
  /** Number of the lift, from 1 at the subgrade. */
  readonly lift: number;
  /** Water to add, negative to lose it; null if no optimum moisture is given. */
  readonly water: Volume | null;
  /** What to do about the moisture; null if no optimum moisture is given. */
  readonly action: WaterAction | null;
  /** Passes by the published method; null without a machine, or if the lift is too thick for it. */
  readonly passes: number | null;
  /** Whether the method permits the lift for the machine; null if no machine is given. */
  readonly verdict: Verdict | null;
}

/** What the ground means for one pavement. */
export interface PavementGroundPlan {
  /** Thickness of each part, and the rule that governs it. */
  readonly thicknesses: readonly GovernedThickness[];
  /** Frost under it; null if the job gives no winter. */
  readonly frost: FrostPlan | null;
  /** Strength of the subgrade in percent, through the thaw; null if no bearing ratio is given. */
  readonly strength: number | null;
  /** Water and passes for each lift, from the subgrade up. */
  readonly lifts: readonly LiftGroundPlan[];
  /** Thickest lift of the machine by the published method; null for no machine, or none permitted. */
  readonly thickestLift: Length | null;
  /** Runoff of the paving in the storm; null if the job gives no storm. */
  readonly runoff: Flow | null;
}
