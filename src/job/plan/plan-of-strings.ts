import type { StakeLine, StakeOffset } from '../../stakes/check-stake-line.js';
import type { RowFinding } from '../../stakes/row-finding.js';
import type { StakeMove } from '../../stakes/stake-move.js';
import type { StakeDepths } from '../../string-line/string-depths.js';
import type { Length, Slope } from '../../units/quantity.js';
import type { RodPlan } from './plan-of-levels.js';
import type { SurfaceKind } from './surface-kind.js';

/** A stake of a string: its depths below the string, and its offset from the line. */
export interface StakePlan extends StakeDepths {
  /** Distance out of line, + to the left. */
  readonly offset: Length;
  /** True if the stake is in line within the tolerance. */
  readonly inTolerance: boolean;
  /** Elevation of finished grade, given or through fixed levels; null if it is not known. */
  readonly finishElevation: Length | null;
  /** Source of finished grade; null if it is not known. */
  readonly finishFrom: 'stake' | 'fixed-levels' | null;
  /** True if the stake is beyond the fixed levels and the surface is extended to it. */
  readonly extrapolated: boolean;
  /** Elevation of the string; null if finished grade is not known. */
  readonly stringElevation: Length | null;
  /** Rod readings from the string down; null if there is no level or no finished grade. */
  readonly rods: readonly RodPlan[] | null;
}

/** The fall from one stake to the next. */
export interface SlopePlan {
  /** Id of the first stake. */
  readonly from: string;
  /** Id of the next stake. */
  readonly to: string;
  /** Distance in plan from stake to stake. */
  readonly run: Length;
  /** Rise from the first stake to the second; negative if finished grade falls. */
  readonly rise: Length;
  /** Slope along the string; negative if it falls. */
  readonly slope: Slope;
  /** Steepest fall, including the cross slope of the pavement; never negative. */
  readonly fall: Slope;
  /** `pass` if the fall is at least the minimum. */
  readonly verdict: 'pass' | 'fail';
}

/** The plan of one string and its stakes. */
export interface StringLinePlan {
  /** Id of the string. */
  readonly id: string;
  /** Id of the pavement that the string serves. */
  readonly pavement: string;
  /** Height of the string above finished grade. */
  readonly stringHeight: Length;
  /** Line that the stakes were checked against. */
  readonly reference: 'ends' | 'best-fit';
  /** Maximum distance of a stake out of line. */
  readonly tolerance: Length;
  /** True if every stake is in line. */
  readonly ok: StakeLine['ok'];
  /** Result of the line check, as a code. */
  readonly code: RowFinding;
  /** True if there is no way to tell which stake is off. */
  readonly ambiguous: boolean;
  /** Result of the line check, in words. */
  readonly note: string;
  /** Stake farthest out of line. */
  readonly worst: StakeOffset;
  /** Stakes to move, with the direction. */
  readonly moves: readonly StakeMove[];
  /** Depths and levels at each stake. */
  readonly stakes: readonly StakePlan[];
  /** Fall from each stake to the next. */
  readonly slopes: readonly SlopePlan[];
  /** Surfaces of the work below this string, from finished grade down. */
  readonly surfaces: readonly SurfacePlan[];
  /** Sag of the string between neighbouring stakes; empty if its weight and tension are not given. */
  readonly sags: readonly StringSagPlan[];
}

/** Depths below a line from one string to another. */
export interface BetweenStringsPlan {
  /** Id of the string that distances are measured from. */
  readonly from: string;
  /** Id of the other string. */
  readonly to: string;
  /** Distance between the strings, square to the first. */
  readonly width: Length;
  /** Rows of the table, from the first string to the other. */
  readonly rows: readonly {
    /** Distance from the first string. */
    readonly distance: Length;
    /** Vertical distance from a line between the strings down to finished grade. */
    readonly toFinish: Length;
    /** Vertical distance from the same line down to the subgrade. */
    readonly toSubgrade: Length;
  }[];
}

/** A surface of the work, with its depths below finished grade and below a string. */
export interface SurfacePlan {
  /** Name of the surface, such as `finished grade`, `base top`, `lift 1 top` or `subgrade`. */
  readonly surface: string;
  /** Kind of surface. */
  readonly kind: SurfaceKind;
  /** Depth below finished grade, as finished and compacted. */
  readonly belowFinish: Length;
  /** Depth below the string, as finished and compacted. */
  readonly belowString: Length;
  /**
   * Depth below the string as placed, before the plate: pavers laid high, screeded bedding, a loose
   * lift. It is null if it is not known or nothing is placed.
   */
  readonly placedBelowString: Length | null;
}

/** Sag of a string between two stakes. */
export interface StringSagPlan {
  /** Id of the first stake. */
  readonly from: string;
  /** Id of the next stake. */
  readonly to: string;
  /** Sag at the middle of the span, below the straight line between the ties. */
  readonly sag: Length;
}
