import type { EdgeRestraint } from '../../materials/edging/edge-restraint.js';
import type { Geotextile } from '../../materials/fabric/geotextile.js';
import type { JointSand } from '../../materials/joints/joint-sand.js';
import type { ExcavationGates } from '../../site/excavation/excavation-gates.js';
import type { DrawnHandDig } from '../../site/utilities/across-drawn-dig.js';
import type { RootZone } from '../../site/trees/root-zone.js';
import type { UtilityCover } from '../../site/utilities/utility-cover.js';
import type { Area, Length, Volume } from '../../units/quantity.js';
import type { SiteDepth } from '../../volumes/site-volumes.js';
import type { StateVolume } from '../../volumes/state-volume.js';

/** A closed line of the dig. */
export interface DigRing {
  /** Corners in order. */
  readonly points: readonly {
    /** Plan coordinate. */
    readonly x: Length;
    /** Plan coordinate. */
    readonly y: Length;
  }[];
  /** Edges that are arcs. */
  readonly arcs: readonly {
    /** The edge, counted from 0. */
    readonly edge: number;
    /** Height of the arc over the middle of its chord, + outward. */
    readonly bulgeMiddleOrdinate: Length;
  }[];
}

/** Joint sand, edge restraint and fabric for one pavement; null where the job does not ask for it. */
export interface SuppliesPlan {
  /** Joint sand. */
  readonly jointSand: Omit<JointSand, 'working'> | null;
  /** Edge restraint and its spikes. */
  readonly edgeRestraint: Omit<EdgeRestraint, 'working'> | null;
  /** Geotextile under the base. */
  readonly geotextile: Omit<Geotextile, 'working'> | null;
}

/** A marked line beside or in a dig. */
export interface UtilityPlan {
  /** Id of the line. */
  readonly id: string;
  /** The part of its zone that lies in the dig: to dig by hand. */
  readonly handDigArea: Area;
  /** Ground left over it; null where it was not found in a test hole, or no cover is asked for. */
  readonly cover: Omit<UtilityCover, 'working'> | null;
}

/** A tree beside a dig. */
export interface TreePlan {
  /** Id of the tree. */
  readonly id: string;
  /** Its root zone and what the dig cuts of it. */
  readonly zone: Omit<RootZone, 'working'>;
}

/** What lies near the dig of one pavement. */
export interface NearbyPlan {
  /** Marked lines whose zone reaches into the dig, or whose cover is known. */
  readonly utilities: readonly UtilityPlan[];
  /** All zones together, each spot counted once; null where no line is given. */
  readonly handDig: Omit<DrawnHandDig, 'working'> | null;
  /** Trees near the dig. */
  readonly trees: readonly TreePlan[];
  /** The rules that an open dig of this depth comes under; null where no soil is given. */
  readonly gates: Omit<ExcavationGates, 'working'> | null;
}

/** The deepest place of a dig or a fill. */
export type DeepestPlan = SiteDepth;

/** Earth between the existing surface and the subgrade, by spot heights. */
export interface EarthworkPlan {
  /** What the finished surface was taken from; `sampled` where it is put in small triangles. */
  readonly finish: 'plane' | 'spot-heights' | 'sampled' | 'stakes';
  /** Existing above subgrade, old paving included; `uncovered` counts in at the mean depth. */
  readonly cut: StateVolume<'bank'>;
  /** Existing below subgrade: to fill, in place. */
  readonly fill: StateVolume<'compacted'>;
  /** Where there is cut. */
  readonly cutArea: Area;
  /** Where there is fill. */
  readonly fillArea: Area;
  /** The part of the dig that the spot heights do not reach. */
  readonly uncovered: Area;
  /** Where the cut is deepest; null where there is none. */
  readonly deepestCut: DeepestPlan | null;
  /** Where the fill is deepest; null where there is none. */
  readonly deepestFill: DeepestPlan | null;
  /** What a dig of one depth all over would have said. */
  readonly uniform: {
    /** The one depth. */
    readonly depth: Length;
    /** Area of the dig times that depth. */
    readonly volume: Volume;
    /** Measured at the stakes, or from the build-up. */
    readonly basis: 'measured' | 'uniform';
  };
  /** That less the cut here: how far it was off, + where it was too much. */
  readonly uniformOff: Volume;
}
