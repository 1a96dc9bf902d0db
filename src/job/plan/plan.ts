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
  readonly subject: string;
}

/** Something that the crew should look at before they dig. */
export interface PlanWarning {
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
  readonly lift: number;
  readonly layer: string;
  readonly compacted: Length;
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
  readonly edge: number;
  readonly kind: EdgeKind;
  readonly length: Length;
  /** Base beyond the paving: restraint and extension. */
  readonly base: Length;
  /** Dig beyond the paving: base and working room. */
  readonly dig: Length;
}

/** Old paving to strip. */
export interface OldSurfacePlan {
  readonly material: OldPaving;
  readonly thickness: Length;
  readonly area: Area;
  /** Solid, as it lies. */
  readonly inPlace: Volume;
  /** Broken out. */
  readonly loose: StateVolume<'loose'>;
  readonly mass: Mass;
}

/** Soil to dig once the old paving is stripped. */
export interface SpoilPlan {
  readonly bank: StateVolume<'bank'>;
  readonly loose: StateVolume<'loose'>;
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
  readonly depth: Length;
  /** Once the old surface is stripped. */
  readonly soil: Length;
  /** Subgrade below the string at the height of the job. */
  readonly belowString: Length;
  /** From spot heights (mean), measured at stakes (mean), or the same all over. */
  readonly basis: 'surface' | 'measured' | 'uniform';
  readonly measuredStakes: number;
}

/** Everything about one pavement. */
export interface PavementPlan {
  readonly id: string;
  readonly name: string;
  readonly use: PavementUse;
  readonly subgrade: Subgrade;
  readonly frost: boolean;
  readonly buildUp: BuildUp;
  /** The kind of each layer of the build-up, from the top down. */
  readonly layerKinds: readonly LayerKind[];
  /** Height of its first string above finished grade: depths below the string count from there. */
  readonly stringHeight: Length;
  readonly minimum: MinimumBuildUp;
  readonly dig: DigPlan;
  /** By spot heights; null where the job has none. */
  readonly earthwork: EarthworkPlan | null;
  /** Base carried past the restraint on open edges. */
  readonly extension: Length;
  readonly edges: readonly EdgePlan[];
  readonly areas: { readonly paving: Area; readonly base: Area; readonly dig: Area };
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
  readonly grade: GradePlan | null;
  readonly lifts: readonly LiftPlan[];
  readonly base: BaseOrder;
  readonly bedding: BaseOrder;
  readonly pavers: PaverPlan | null;
  readonly supplies: SuppliesPlan;
  readonly nearby: NearbyPlan;
  readonly oldSurface: OldSurfacePlan | null;
  readonly spoil: SpoilPlan;
}

/** A stake of a string: depths below the string, and whether it stands in line. */
export interface StakePlan extends StakeDepths {
  readonly offset: Length;
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
  readonly from: string;
  readonly to: string;
  readonly run: Length;
  /** Rise from the first stake to the second; negative where finished grade falls. */
  readonly rise: Length;
  /** Along the string: negative where it falls. */
  readonly slope: Slope;
  /** Steepest fall, the cross fall of the pavement included; never negative. */
  readonly fall: Slope;
  readonly verdict: 'pass' | 'fail';
}

/** One string and its stakes. */
export interface StringLinePlan {
  readonly id: string;
  readonly pavement: string;
  readonly stringHeight: Length;
  readonly reference: 'ends' | 'best-fit';
  readonly tolerance: Length;
  readonly ok: StakeLine['ok'];
  /** Whether the stakes are in line, in one word. */
  readonly code: RowFinding;
  readonly ambiguous: boolean;
  readonly note: string;
  readonly worst: StakeOffset;
  readonly moves: readonly StakeMove[];
  readonly stakes: readonly StakePlan[];
  readonly slopes: readonly SlopePlan[];
  /** Compacted lift tops below this string, lowest lift first. */
  readonly liftTops: readonly { readonly lift: number; readonly belowString: Length }[];
}

/** Material that travels in loads, over the whole job. */
export interface StreamPlan {
  readonly loose: StateVolume<'loose'>;
  readonly mass: Mass;
  readonly loads: Loads;
}

/** What the whole job orders and carts away. */
export interface JobTotals {
  readonly base: StreamPlan & { readonly compacted: StateVolume<'compacted'> };
  readonly bedding: StreamPlan & { readonly compacted: StateVolume<'compacted'> };
  readonly spoil: (StreamPlan & { readonly bank: StateVolume<'bank'> }) | null;
  readonly asphalt: StreamPlan | null;
  readonly concrete: StreamPlan | null;
  readonly pavers: number | null;
}

/** A source used by a plan. */
export interface PlanSource extends Source {
  readonly id: SourceId;
}

/** The plan of a job: plain data, frozen, and the same again after JSON. */
export interface JobPlan {
  readonly kind: 'settline-plan';
  readonly version: 1;
  readonly name: string;
  /** The job as it was read, every quantity in SI units: planning it again gives the same plan. */
  readonly job: JobInput;
  readonly stringHeight: Length;
  readonly minimumFall: Slope;
  readonly pavements: readonly PavementPlan[];
  readonly stringLines: readonly StringLinePlan[];
  readonly levelBook: Omit<LevelBook, 'working'> | null;
  readonly levelling: LevellingPlan | null;
  readonly totals: JobTotals;
  readonly warnings: readonly PlanWarning[];
  readonly cautions: readonly Caution[];
  readonly sources: readonly PlanSource[];
  /** How each number was come by; made when first asked for, not part of the JSON. */
  readonly working: readonly PlanStep[];
}
