import type { BuildUp } from '../../build-up/build-up.js';
import type { MinimumBuildUp } from '../../build-up/minimum-build-up.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { Source } from '../../sources/source.js';
import type { Caution } from '../../sources/cautions.js';
import type { OldPaving } from '../../sources/material-weights.js';
import type { LevelBook } from '../../levelling/reduce-levels.js';
import type { PavementUse, Subgrade } from '../../sources/minimum-thickness.js';
import type { StakeLine, StakeOffset } from '../../stakes/check-stake-line.js';
import type { RowFinding } from '../../stakes/row-finding.js';
import type { StakeMove } from '../../stakes/stake-move.js';
import type { StakeDepths } from '../../string-line/string-depths.js';
import type { AnyQuantity, Area, Length, Mass, Slope, Volume } from '../../units/quantity.js';
import type { BaseOrder } from '../../volumes/base-order.js';
import type { Loads } from '../../volumes/loads.js';
import type { StateVolume } from '../../volumes/state-volume.js';
import type { Step } from '../../working.js';
import type { GradePlan, LevellingPlan, RodPlan } from './plan-of-levels.js';
import type { DigRing, EarthworkPlan, NearbyPlan, SuppliesPlan } from './plan-of-site.js';
import type { JobInput } from '../schema/job-input.js';
import type { EdgeKind, LayerKind } from '../schema/pavement-input.js';

export type {
  GradeLevelPlan,
  GradePlan,
  GradeStretchPlan,
  LevellingPlan,
  RodPlan,
} from './plan-of-levels.js';
export type {
  DeepestPlan,
  DigRing,
  EarthworkPlan,
  NearbyPlan,
  SuppliesPlan,
  TreePlan,
  UtilityPlan,
} from './plan-of-site.js';

/** A step of working, and the part of the job it belongs to. */
export interface PlanStep extends Step {
  /** The pavement, string or part of the job it belongs to. */
  readonly subject: string;
}

/** Something that the crew should look at before they dig. */
export interface PlanWarning {
  /** What it is about, as a code. */
  readonly code: WarningCode;
  /** The pavement, string or stake it is about. */
  readonly subject: string;
  /** The figures behind it; {@link describeWarning} puts them into words. */
  readonly values: Readonly<Record<string, AnyQuantity | string | number>>;
}

/** Every warning a plan may carry. */
export type WarningCode =
  | 'PAVER_BELOW_MINIMUM'
  | 'BEDDING_OFF_NOMINAL'
  | 'BASE_BELOW_MINIMUM'
  | 'BASE_BELOW_PRACTICE'
  | 'STAKE_OUT_OF_LINE'
  | 'LINE_AMBIGUOUS'
  | 'LINE_NOT_CHECKED'
  | 'FALL_TOO_SMALL'
  | 'FILL_NEEDED'
  | 'OLD_SURFACE_DEEPER_THAN_DIG'
  | 'OLD_SURFACE_WIDER_THAN_DIG'
  | 'STAKE_IN_DIG'
  | 'DIG_CLOSES_UP'
  | 'DIG_RUNS_OUT'
  | 'UTILITY_IN_DIG'
  | 'UTILITY_COVER'
  | 'ROOTS_CUT'
  | 'UNIT_SHAPE'
  | 'NO_FINISHED_SURFACE'
  | 'SURFACE_GAP'
  | 'LOW_GROUND'
  | 'GRADE_MISSES_LEVEL'
  | 'FALLS_TO_BUILDING'
  | 'ROD_CANNOT_REACH'
  | 'ROD_NEEDS_FINISH'
  | 'LEVELS_DO_NOT_CLOSE'
  | 'INSTRUMENT_MOVED';

/** One lift of base stone. */
export interface LiftPlan {
  /** Number of the lift, from 1 at the subgrade. */
  readonly lift: number;
  /** Name of the layer it belongs to. */
  readonly layer: string;
  /** Thickness of the lift after compaction. */
  readonly compacted: Length;
  /** Thickness of the lift as spread. */
  readonly loose: Length;
  /** Compacted top above the subgrade. */
  readonly aboveSubgrade: Length;
  /** Compacted top below finished grade. */
  readonly belowFinish: Length;
  /** Compacted top below the string at the height of the job. */
  readonly belowString: Length;
  /** Top as spread, before compaction, below the string. */
  readonly looseBelowString: Length;
}

/** How far the dig goes beyond the paving along one edge. */
export interface EdgePlan {
  /** The edge, counted from 0; edge k runs from point k to the next. */
  readonly edge: number;
  /** What lies along it. */
  readonly kind: EdgeKind;
  /** Length of the edge. */
  readonly length: Length;
  /** Base beyond the paving: restraint and extension. */
  readonly base: Length;
  /** Dig beyond the paving: base and working room. */
  readonly dig: Length;
}

/** Old paving to strip. */
export interface OldSurfacePlan {
  /** What it is. */
  readonly material: OldPaving;
  /** Its thickness. */
  readonly thickness: Length;
  /** Area to strip. */
  readonly area: Area;
  /** Solid, as it lies. */
  readonly inPlace: Volume;
  /** Broken out. */
  readonly loose: StateVolume<'loose'>;
  /** What it weighs. */
  readonly mass: Mass;
}

/** Soil to dig once the old paving is stripped. */
export interface SpoilPlan {
  /** Soil in place. */
  readonly bank: StateVolume<'bank'>;
  /** The same in the truck. */
  readonly loose: StateVolume<'loose'>;
  /** What it weighs. */
  readonly mass: Mass;
}

/** Units to order. */
export interface PaverPlan {
  /** Of the field: the paving without its border. */
  readonly area: Area;
  /** Area of one unit with its joint. */
  readonly module: Area;
  /** Units that fill the area, before cuts and breakage. */
  readonly whole: number;
  /** Units cut at the edges; null where no pattern tells. */
  readonly cut: number | null;
  /** Units of the border, breakage left out; 0 without one. */
  readonly border: number;
  /** With border, cuts and breakage, rounded up. */
  readonly order: number;
}

/** Depth of dig below the existing surface. */
export interface DigPlan {
  /** Depth of dig from the existing surface to the subgrade, on average; negative where fill is needed. */
  readonly depth: Length;
  /** Once the old surface is stripped. */
  readonly soil: Length;
  /** Subgrade below the string at the height of the job. */
  readonly belowString: Length;
  /** From spot heights (mean), measured at stakes (mean), or the same all over. */
  readonly basis: 'surface' | 'measured' | 'uniform';
  /** At how many stakes the ground was measured. */
  readonly measuredStakes: number;
}

/** Everything about one pavement. */
export interface PavementPlan {
  /** Id of the pavement. */
  readonly id: string;
  /** Name on the sheet. */
  readonly name: string;
  /** What runs over it. */
  readonly use: PavementUse;
  /** What it is built on. */
  readonly subgrade: Subgrade;
  /** True where the ground freezes below the base. */
  readonly frost: boolean;
  /** The layers from finished grade down to the subgrade. */
  readonly buildUp: BuildUp;
  /** The kind of each layer of the build-up, from the top down. */
  readonly layerKinds: readonly LayerKind[];
  /** Height of its first string above finished grade: depths below the string count from there. */
  readonly stringHeight: Length;
  /** Minimum thicknesses for its use and ground. */
  readonly minimum: MinimumBuildUp;
  /** Depth of the dig. */
  readonly dig: DigPlan;
  /** By spot heights; null where the job has none. */
  readonly earthwork: EarthworkPlan | null;
  /** Base carried past the restraint on open edges. */
  readonly extension: Length;
  /** How far base and dig go past each edge. */
  readonly edges: readonly EdgePlan[];
  /** Areas in plan. */
  readonly areas: {
    /** Area of the paving. */
    readonly paving: Area;
    /** Area of the base, past the paving on open edges. */
    readonly base: Area;
    /** Area of the dig. */
    readonly dig: Area;
  };
  /** Corner points of the dig, to paint. */
  readonly digOutline: DigRing['points'];
  /** The edges of it that are arcs, + bulging outward. */
  readonly digArcs: DigRing['arcs'];
  /** Islands left in the dig. */
  readonly digHoles: readonly DigRing[];
  /** True where notches or islands of the paving close up when the dig is widened. */
  readonly digClosesUp: boolean;
  /**
   * Corners of the paving (those of its holes follow) so sharp that the dig runs far out to a point:
   * corner k is where edge k starts.
   */
  readonly digLongMitres: readonly number[];
  /** Finished grade through fixed levels; null if the stakes give it. */
  readonly grade: GradePlan | null;
  /** Lifts of stone, from the subgrade up. */
  readonly lifts: readonly LiftPlan[];
  /** Base stone to order. */
  readonly base: BaseOrder;
  /** Bedding sand to order. */
  readonly bedding: BaseOrder;
  /** Pavers to order; null if the job does not describe them. */
  readonly pavers: PaverPlan | null;
  /** Joint sand, edge restraint and geotextile. */
  readonly supplies: SuppliesPlan;
  /** Marked lines, trees and rules of open digs. */
  readonly nearby: NearbyPlan;
  /** Old paving to strip; null if there is none. */
  readonly oldSurface: OldSurfacePlan | null;
  /** Soil to haul away. */
  readonly spoil: SpoilPlan;
}

/** A stake of a string: depths below the string, and whether it stands in line. */
export interface StakePlan extends StakeDepths {
  /** How far it is out of line, + to the left. */
  readonly offset: Length;
  /** True where the stake is in line. */
  readonly inTolerance: boolean;
  /** Elevation of finished grade, where it is given or laid through fixed levels. */
  readonly finishElevation: Length | null;
  /** Where finished grade comes from; null where it is not known. */
  readonly finishFrom: 'stake' | 'fixed-levels' | null;
  /** True where the stake stands beyond the fixed levels and the surface is carried on to it. */
  readonly carriedOn: boolean;
  /** Elevation of the string, where finished grade is known. */
  readonly stringElevation: Length | null;
  /** Rod readings from the string down; null without an instrument or without finished grade. */
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
  /** Rise from the first stake to the second; negative where finished grade falls. */
  readonly rise: Length;
  /** Along the string: negative where it falls. */
  readonly slope: Slope;
  /** Steepest fall, the cross fall of the pavement included; never negative. */
  readonly fall: Slope;
  /** `pass` where the fall is at least the minimum. */
  readonly verdict: 'pass' | 'fail';
}

/** One string and its stakes. */
export interface StringLinePlan {
  /** Id of the string. */
  readonly id: string;
  /** Id of the pavement that the string serves. */
  readonly pavement: string;
  /** String above finished grade. */
  readonly stringHeight: Length;
  /** The line the stakes were checked against. */
  readonly reference: 'ends' | 'best-fit';
  /** How far a stake may be out of line. */
  readonly tolerance: Length;
  /** True where every stake is in line. */
  readonly ok: StakeLine['ok'];
  /** Whether the stakes are in line, in one word. */
  readonly code: RowFinding;
  /** True where there is no way to tell which stake is off. */
  readonly ambiguous: boolean;
  /** What the check of the stakes says, in words. */
  readonly note: string;
  /** The stake farthest out of line. */
  readonly worst: StakeOffset;
  /** Stakes to move, and which way. */
  readonly moves: readonly StakeMove[];
  /** Depths and levels at each stake. */
  readonly stakes: readonly StakePlan[];
  /** The fall from each stake to the next. */
  readonly slopes: readonly SlopePlan[];
  /** Compacted lift tops below this string, lowest lift first. */
  readonly liftTops: readonly {
    /** Number of the lift, from 1 at the subgrade. */
    readonly lift: number;
    /** Compacted top of the lift below this string. */
    readonly belowString: Length;
  }[];
}

/** Material that travels in loads, over the whole job. */
export interface StreamPlan {
  /** Loose volume, waste included. */
  readonly loose: StateVolume<'loose'>;
  /** What it weighs. */
  readonly mass: Mass;
  /** Truck loads. */
  readonly loads: Loads;
}

/** What the whole job orders and carts away. */
export interface JobTotals {
  /** Base stone to order. */
  readonly base: StreamPlan & {
    /** Base in place, compacted. */
    readonly compacted: StateVolume<'compacted'>;
  };
  /** Bedding sand to order. */
  readonly bedding: StreamPlan & {
    /** Bedding in place, compacted. */
    readonly compacted: StateVolume<'compacted'>;
  };
  /** Soil to haul away; null if there is none. */
  readonly spoil:
    | (StreamPlan & {
        /** Soil in place. */
        readonly bank: StateVolume<'bank'>;
      })
    | null;
  /** Old asphalt to haul away; null if there is none. */
  readonly asphalt: StreamPlan | null;
  /** Old concrete to haul away; null if there is none. */
  readonly concrete: StreamPlan | null;
  /** Pavers to order; null if the job does not describe them. */
  readonly pavers: number | null;
}

/** A source used by a plan. */
export interface PlanSource extends Source {
  /** Id in `SOURCES`. */
  readonly id: SourceId;
}

/** The plan of a job: plain data, frozen, and the same again after JSON. */
export interface JobPlan {
  /** Tells a plan from other results. */
  readonly kind: 'settline-plan';
  /** Version of the form of the plan. */
  readonly version: 1;
  /** Name of the site. */
  readonly name: string;
  /** The job as it was read, every quantity in SI units: planning it again gives the same plan. */
  readonly job: JobInput;
  /** String above finished grade, as the job gives it. */
  readonly stringHeight: Length;
  /** Minimum fall for drainage that falls are checked against. */
  readonly minimumFall: Slope;
  /** Everything about each pavement, in the order of the job. */
  readonly pavements: readonly PavementPlan[];
  /** Each string and its stakes, in the order of the job. */
  readonly stringLines: readonly StringLinePlan[];
  /** The level book, reduced; null if the job has none. */
  readonly levelBook: Omit<LevelBook, 'working'> | null;
  /** The instrument as it stands; null if the job has none. */
  readonly levelling: LevellingPlan | null;
  /** What the whole job orders and hauls away. */
  readonly totals: JobTotals;
  /** What the crew should look at before they dig. */
  readonly warnings: readonly PlanWarning[];
  /** What to have checked, and by whom. */
  readonly cautions: readonly Caution[];
  /** Publications whose figures are used. */
  readonly sources: readonly PlanSource[];
  /** How each number was come by; made when first asked for, not part of the JSON. */
  readonly working: readonly PlanStep[];
}
