import type { FieldPath } from '../../errors.js';
import type { BuildUp } from '../../build-up/build-up.js';
import type { MinimumBuildUp } from '../../build-up/minimum-build-up.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { Source } from '../../sources/source.js';
import type { Caution } from '../../sources/cautions.js';
import type { OldPaving } from '../../sources/material-weights.js';
import type { LevelBook } from '../../levelling/reduce-levels.js';
import type { PavementUse, Subgrade } from '../../sources/minimum-thickness.js';
import type {
  AnyQuantity,
  Area,
  Density,
  Length,
  Mass,
  Slope,
  Volume,
} from '../../units/quantity.js';
import type { BaseOrder } from '../../volumes/base-order.js';
import type { StateVolume } from '../../volumes/state-volume.js';
import type { Step } from '../../working.js';
import type { GradePlan, LevellingPlan } from './plan-of-levels.js';
import type { PavementGroundPlan } from './plan-of-ground.js';
import type { DigRing, EarthPlan, NearbyPlan, SuppliesPlan } from './plan-of-site.js';
import type { BetweenStringsPlan, StringLinePlan } from './plan-of-strings.js';
import type { Placing } from './placed.js';
import type { JobTotals, UnitsPlan } from './plan-of-totals.js';
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
  FrostPlan,
  GovernedThickness,
  LiftGroundPlan,
  PavementGroundPlan,
  ThicknessRule,
} from './plan-of-ground.js';
export type {
  DeepestPlan,
  DigRing,
  EarthPlan,
  NearbyPlan,
  SuppliesPlan,
  TreePlan,
  UtilityPlan,
} from './plan-of-site.js';

export type { Placing } from './placed.js';
export type {
  BetweenStringsPlan,
  SlopePlan,
  StakePlan,
  StringLinePlan,
  StringSagPlan,
  SurfacePlan,
} from './plan-of-strings.js';
export type {
  JobTotals,
  LooseTotalPlan,
  OldPavingTotalPlan,
  PaverTotalPlan,
  StreamPlan,
  UnitsPlan,
} from './plan-of-totals.js';

/** A step of working with the part of the job it belongs to. */
export type PlanStep = Step &
  Placing & {
    /** Pavement, string or other part of the job. */
    readonly subject: string;
    /** Path of that part in the plan. */
    readonly part: FieldPath;
  };

/** Something that the crew should check before they dig. */
export interface PlanWarning {
  /** Code of the warning. */
  readonly code: WarningCode;
  /** Pavement, string or stake concerned. */
  readonly subject: string;
  /** Figures of the warning; {@link describeWarning} puts them into words. */
  readonly values: Readonly<Record<string, AnyQuantity | string | number>>;
}

/** Code of a warning that a plan may contain. */
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
  | 'OLD_PAVING_DEEPER_THAN_DIG'
  | 'FILL_UNDER_OLD_PAVING'
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
  | 'INSTRUMENT_MOVED'
  | 'UTILITY_ABOVE_BOTTOM'
  | 'FALL_AWAY_TOO_SMALL'
  | 'PAVING_ABOVE_FLOOR'
  | 'DIG_BELOW_FOOTING'
  | 'FOOTING_NOT_KNOWN'
  | 'DIG_RULE'
  | 'SPOIL_TOO_NEAR'
  | 'SIDE_RUNS_INTO_DIG'
  | 'CROSS_SLOPE_DIFFERS'
  | 'GROUND_DIFFERS'
  | 'EXISTING_DIFFERS'
  | 'STRING_IN_GROUND'
  | 'STRING_SAGS'
  | 'STAKES_TOO_FAR_ON_CURVE'
  | 'LOW_POINT'
  | 'SLOPE_TOO_STEEP'
  | 'GRADE_EXTENDED'
  | 'DENSITY_UNLIKELY'
  | 'RATIO_UNLIKELY'
  | 'LIFT_TOO_THICK'
  | 'EDGE_NOT_SAID'
  | 'EDGES_SHARED'
  | 'NOTHING_ADJOINS'
  | 'STAKE_UNUSED'
  | 'OLD_PAVING_UNUSED'
  | 'FROST_IN_SUBGRADE'
  | 'FROST_NOT_SAID'
  | 'BASE_BELOW_FROST_RULE'
  | 'RUNOFF_OVER_INLET'
  | 'LIFT_BEYOND_PLANT';

/** One lift of stone. */
export interface LiftPlan {
  /** Number of the lift, from 1 at the subgrade. */
  readonly lift: number;
  /** Name of the layer it belongs to. */
  readonly layer: string;
  /** Thickness of the lift after compaction. */
  readonly compacted: Length;
  /** Loose thickness of the lift, before compaction. */
  readonly loose: Length;
  /** Height of the compacted top above the subgrade. */
  readonly aboveSubgrade: Length;
  /** Depth of the compacted top below finished grade. */
  readonly belowFinish: Length;
}

/** Distances of base and dig outside the paving along one edge. */
export interface EdgePlan {
  /** The edge, counted from 1; edge 1 runs from the first point to the second. */
  readonly edge: number;
  /** What is along the edge; null if the job does not say, and it is planned as open. */
  readonly kind: EdgeKind | null;
  /** Length of the edge. */
  readonly length: Length;
  /** Base outside the paving: restraint and extension. */
  readonly base: Length;
  /** Bottom of the dig outside the paving: base and working room. */
  readonly dig: Length;
  /** Top of the dig outside the paving: the bottom and the run of a sloped side. */
  readonly top: Length;
}

/** Old paving to strip from one dig. */
export interface OldPavingPlan {
  /** Material of the old paving. */
  readonly material: OldPaving;
  /** Thickness of the old paving. */
  readonly thickness: Length;
  /** Density in place. */
  readonly density: Density;
  /** Area to strip: the part in the dig. */
  readonly area: Area;
  /** Solid volume in place. */
  readonly inPlace: Volume;
  /** Volume when broken out. */
  readonly loose: StateVolume<'loose'>;
  /** Mass of the old paving. */
  readonly mass: Mass;
}

/** Soil to dig after stripping. */
export interface SpoilPlan {
  /** Soil in place. */
  readonly bank: StateVolume<'bank'>;
  /** The same in the truck. */
  readonly loose: StateVolume<'loose'>;
  /** Mass of the soil. */
  readonly mass: Mass;
}

/** A stone or sand to order for one layer. */
export interface LooseOrderPlan {
  /** Id of the stone or sand in the materials of the job. */
  readonly material: string;
  /** Name of the layer; `fill` for stone that fills low ground. */
  readonly layer: string;
  /** Volumes and masses to order. */
  readonly order: BaseOrder;
}

/** Pavers of one pavement, to order. */
export interface PaverPlan {
  /** Area of the field: the paving without its border. */
  readonly area: Area;
  /** Area of one paver with its joint. */
  readonly module: Area;
  /** Pavers, net: those that fill the area, before cuts and breakage. */
  readonly whole: number;
  /** Pavers cut at the edges; null if no pattern is given. */
  readonly cut: number | null;
  /** Pavers in the border, without breakage; 0 if there is no border. */
  readonly border: number;
  /** Number of each paver to order: that of the field, and that of a border with its own paver. */
  readonly orders: readonly UnitsPlan[];
}

/** Depth of dig below the existing surface. */
export interface DigPlan {
  /** Mean depth from the existing surface, old paving included, to the subgrade; negative if fill is needed. */
  readonly depth: Length;
  /** Mean depth of soil to dig after stripping. */
  readonly soil: Length;
  /**
   * Source of the depth: spot heights, readings at stakes used as spot heights, readings at stakes
   * weighted along their strings, or one depth for the whole dig.
   */
  readonly basis: 'spot-heights' | 'stake-levels' | 'along-strings' | 'uniform';
  /** Stakes whose ground was measured. */
  readonly measured: readonly string[];
  /** Stakes whose ground was not measured. */
  readonly unmeasured: readonly string[];
}

/** Top edge of a dig with sloped sides. */
export interface DigTopPlan extends DigRing {
  /** Islands left in the dig. */
  readonly holes: readonly DigRing[];
  /** Area at the top. */
  readonly area: Area;
}

/** The plan of one pavement. */
export interface PavementPlan {
  /** Id of the pavement. */
  readonly id: string;
  /** Name on the sheet. */
  readonly name: string;
  /** Traffic: the use of the paving. */
  readonly use: PavementUse;
  /** Subgrade: the soil it is built on. */
  readonly subgrade: Subgrade;
  /** True if the ground freezes below the base. */
  readonly frost: boolean;
  /** Layers from finished grade down to the subgrade. */
  readonly buildUp: BuildUp;
  /** Kind of each layer of the build-up, from the top down. */
  readonly layerKinds: readonly LayerKind[];
  /** Settlement of the bedding under the plate: pavers and screed are set high by it; null if it is not known. */
  readonly settlement: Length | null;
  /** Minimum thicknesses for its use and ground. */
  readonly minimum: MinimumBuildUp;
  /** Depth of the dig. */
  readonly dig: DigPlan;
  /** Cut and fill of the dig after stripping. */
  readonly earth: EarthPlan;
  /** Base extended past the restraint on open edges. */
  readonly extension: Length;
  /** Distances of base and dig outside each edge. */
  readonly edges: readonly EdgePlan[];
  /** Areas in plan. */
  readonly areas: {
    /** Area of the paving. */
    readonly paving: Area;
    /** Area of the base, with its extension on open edges. */
    readonly base: Area;
    /** Area of the bottom of the dig. */
    readonly dig: Area;
    /** Area of the base that is not counted with another pavement. */
    readonly ownBase: Area;
    /** Area of the dig that is not counted with another pavement. */
    readonly ownDig: Area;
  };
  /** Corners of the bottom of the dig, to mark on the ground. */
  readonly digOutline: DigRing['points'];
  /** Edges of the dig outline that are arcs, + if they bulge outward. */
  readonly digArcs: DigRing['arcs'];
  /** Islands left in the dig. */
  readonly digHoles: readonly DigRing[];
  /** True if notches or islands of the paving close up in the dig. */
  readonly digClosesUp: boolean;
  /** Top edge of the dig if any side is sloped; null if all sides are vertical. */
  readonly top: DigTopPlan | null;
  /**
   * Corners of the paving so sharp that the dig runs far out to a point, counted from 1: corner k is at
   * the start of edge k. The corners of the holes follow.
   */
  readonly digLongMitres: readonly number[];
  /** Finished grade through fixed levels; null if the stakes give it. */
  readonly grade: GradePlan | null;
  /** Depths below a line between two strings, row by row; null if the job includes none. */
  readonly betweenStrings: BetweenStringsPlan | null;
  /** Lifts of stone from the subgrade up. */
  readonly lifts: readonly LiftPlan[];
  /** Stone to order, layer by layer from the top down, with fill last. */
  readonly stones: readonly LooseOrderPlan[];
  /** Bedding sand to order. */
  readonly bedding: LooseOrderPlan;
  /** Pavers to order; null if the job does not describe them. */
  readonly pavers: PaverPlan | null;
  /** Joint sand, edge restraint and geotextile. */
  readonly supplies: SuppliesPlan;
  /** Marked lines, trees and excavation rules near the dig. */
  readonly nearby: NearbyPlan;
  /** Old paving to strip from the dig. */
  readonly oldPaving: readonly OldPavingPlan[];
  /** Soil to haul away. */
  readonly spoil: SpoilPlan;
  /** What the ground means for it; null if the job says nothing of the ground. */
  readonly ground: PavementGroundPlan | null;
}

/** A source used by a plan. */
export interface PlanSource extends Source {
  /** Id in `SOURCES`. */
  readonly id: SourceId;
}

/** The plan of a job: plain frozen data that survives JSON unchanged. */
export interface JobPlan {
  /** Distinguishes a plan from other results. */
  readonly kind: 'settline-plan';
  /** Version of the plan format. */
  readonly version: 1;
  /** Version of the library that worked out the figures. */
  readonly libraryVersion: string;
  /**
   * How the figures came about: `planned` from the job by this library; `altered` if the plan was saved
   * and differs from what its job gives; `unchecked` if it was saved and was not planned again.
   */
  readonly figures: 'planned' | 'altered' | 'unchecked';
  /** Paths of the figures that differ from what the job gives; empty unless `figures` is `altered`. */
  readonly altered: readonly FieldPath[];
  /** Name of the site. */
  readonly name: string;
  /** The job as read, with every quantity in SI units. Planning it again gives the same plan. */
  readonly job: JobInput;
  /** Minimum fall for drainage, which falls are checked against. */
  readonly minimumFall: Slope;
  /** Plan of each pavement, in the order of the job. */
  readonly pavements: readonly PavementPlan[];
  /** Plan of each string and its stakes, in the order of the job. */
  readonly stringLines: readonly StringLinePlan[];
  /** Reduced level book; null if the job has none. */
  readonly levelBook: Omit<LevelBook, 'working'> | null;
  /** The level as set up for the day; null if the job has none. */
  readonly levelling: LevellingPlan | null;
  /** Orders and loads of the whole job. */
  readonly totals: JobTotals;
  /** What the crew should check before they dig. */
  readonly warnings: readonly PlanWarning[];
  /** What to have checked before anyone digs, and by whom. */
  readonly cautions: readonly Caution[];
  /** Publications whose figures are used. */
  readonly sources: readonly PlanSource[];
  /** The working of every number. Built on first access and left out of the JSON. */
  readonly working: readonly PlanStep[];
}
