import type { EdgeRestraint } from '../../materials/edging/edge-restraint.js';
import type { Geotextile } from '../../materials/fabric/geotextile.js';
import type { JointSand } from '../../materials/joints/joint-sand.js';
import type { ExcavationGates } from '../../site/excavation-gates.js';
import type { DrawnHandDig } from '../../site/hand-dig-in-outline.js';
import type { RootZone } from '../../site/root-zone.js';
import type { UtilityCover } from '../../site/utility-cover.js';
import type { Area, Length, Volume } from '../../units/quantity.js';
import type { StateVolume } from '../../volumes/state-volume.js';

/** A closed line of the dig. */
export interface DigRing {
  readonly points: readonly { readonly x: Length; readonly y: Length }[];
  readonly arcs: readonly { readonly edge: number; readonly bulgeMiddleOrdinate: Length }[];
}

/** Joint sand, edge restraint and fabric for one pavement; null where the job does not ask for it. */
export interface SuppliesPlan {
  readonly jointSand: Omit<JointSand, 'working'> | null;
  readonly edgeRestraint: Omit<EdgeRestraint, 'working'> | null;
  readonly geotextile: Omit<Geotextile, 'working'> | null;
}

/** A marked line beside or in a dig. */
export interface UtilityPlan {
  readonly id: string;
  /** The part of its zone that lies in the dig: to dig by hand. */
  readonly handDigArea: Area;
  /** Ground left over it; null where it was not found in a test hole, or no cover is asked for. */
  readonly cover: Omit<UtilityCover, 'working'> | null;
}

/** A tree beside a dig. */
export interface TreePlan {
  readonly id: string;
  readonly zone: Omit<RootZone, 'working'>;
}

/** What lies near the dig of one pavement. */
export interface NearbyPlan {
  readonly utilities: readonly UtilityPlan[];
  /** All zones together, each spot counted once; null where no line is given. */
  readonly handDig: Omit<DrawnHandDig, 'working'> | null;
  readonly trees: readonly TreePlan[];
  /** The rules that an open dig of this depth comes under; null where no soil is given. */
  readonly gates: Omit<ExcavationGates, 'working'> | null;
}

/** The deepest place of a dig or a fill. */
export interface DeepestPlan {
  readonly depth: Length;
  readonly x: Length;
  readonly y: Length;
}

/** Earth between the existing surface and the subgrade, by spot heights. */
export interface EarthworkPlan {
  /** What the finished surface was taken from; `sampled` where it is put in small triangles. */
  readonly finish: 'plane' | 'spot-heights' | 'sampled' | 'stakes';
  /** Existing above subgrade, old paving included; `uncovered` counts in at the mean depth. */
  readonly cut: StateVolume<'bank'>;
  /** Existing below subgrade: to fill, in place. */
  readonly fill: StateVolume<'compacted'>;
  readonly cutArea: Area;
  readonly fillArea: Area;
  /** The part of the dig that the spot heights do not reach. */
  readonly uncovered: Area;
  readonly deepestCut: DeepestPlan | null;
  readonly deepestFill: DeepestPlan | null;
  /** What a dig of one depth all over would have said. */
  readonly uniform: {
    readonly depth: Length;
    readonly volume: Volume;
    readonly basis: 'measured' | 'uniform';
  };
  /** That less the cut here: how far it was off, + where it was too much. */
  readonly uniformOff: Volume;
}
