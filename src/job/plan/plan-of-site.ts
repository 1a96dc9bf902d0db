import type { EdgeRestraint } from '../../materials/edging/edge-restraint.js';
import type { GeotextileOver } from '../../materials/fabric/geotextile.js';
import type { JointSand } from '../../materials/joints/joint-sand.js';
import type { ExcavationGates } from '../../site/excavation/excavation-gates.js';
import type { DrawnHandDig } from '../../site/utilities/across-drawn-dig.js';
import type { RootZone } from '../../site/trees/root-zone.js';
import type { UtilityCover } from '../../site/utilities/utility-cover.js';
import type { Area, Length, Volume } from '../../units/quantity.js';
import type { SiteDepth } from '../../volumes/site-volumes.js';
import type { StateVolume } from '../../volumes/state-volume.js';

/** A closed outline of the dig. */
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

/** Joint sand, edge restraint and geotextile for one pavement; each is null if the job does not include it. */
export interface SuppliesPlan {
  /** Joint sand. */
  readonly jointSand: Omit<JointSand, 'working'> | null;
  /** Edge restraint and its spikes. */
  readonly edgeRestraint: Omit<EdgeRestraint, 'working'> | null;
  /** Geotextile under the base. */
  readonly geotextile: Omit<GeotextileOver, 'working'> | null;
}

/** A marked line beside or in a dig. */
export interface UtilityPlan {
  /** Id of the line. */
  readonly id: string;
  /** Area of its zone inside the dig, to dig by hand. */
  readonly handDigArea: Area;
  /**
   * Ground left between the line and the bottom of the dig, where the dig along it is deepest; negative
   * where the line lies above the bottom; null where it was not found in a test hole, or is clear of the dig.
   */
  readonly left: Length | null;
  /** Cover against the minimum of its owner; null where that or the depth of the line is not given, or nothing is dug there. */
  readonly cover: Omit<UtilityCover, 'working'> | null;
}

/** A tree beside a dig. */
export interface TreePlan {
  /** Id of the tree. */
  readonly id: string;
  /** Root zone of the tree, and the part that the dig cuts. */
  readonly zone: Omit<RootZone, 'working'>;
}

/** Marked lines, trees and excavation rules near the dig of one pavement. */
export interface NearbyPlan {
  /** Marked lines with a zone that reaches into the dig, or with known cover. */
  readonly utilities: readonly UtilityPlan[];
  /**
   * Hand dig, all zones, with overlaps counted once; null if no line is given. Its volume takes the
   * zones at the deepest dig, so no more is dug.
   */
  readonly handDig: Omit<DrawnHandDig, 'working'> | null;
  /** Trees near the dig. */
  readonly trees: readonly TreePlan[];
  /** Excavation rules that apply to an open dig of this depth; null if no soil type is given. */
  readonly gates: Omit<ExcavationGates, 'working'> | null;
}

/** Deepest point of a dig or a fill. */
export type DeepestPlan = SiteDepth;

/** Cut and fill of a dig after stripping. Ground shared by several digs is counted once. */
export interface EarthPlan {
  /** Source of finished grade; `sampled` if it was split into small triangles; null if one depth is used. */
  readonly finish: 'plane' | 'spot-heights' | 'sampled' | 'stakes' | null;
  /** Old paving stripped, in place. */
  readonly stripped: Volume;
  /** Soil above the subgrade, including that of sloped sides. */
  readonly cut: StateVolume<'bank'>;
  /** Soil that sloped sides add to the cut, at the average depth of the dig. Soil inside another dig counts there. */
  readonly sides: Volume;
  /** Fill in low ground up to the subgrade. */
  readonly fill: StateVolume<'compacted'>;
  /** Area of cut; null if one depth is used. */
  readonly cutArea: Area | null;
  /** Area of fill; null if one depth is used. */
  readonly fillArea: Area | null;
  /** Area of the dig that no ground levels cover, counted at the average depth of the rest. */
  readonly uncovered: Area;
  /**
   * How far cut or fill of the whole dig is open, because four levels on one circle, such as the corners
   * of a grid cell, can be joined along either diagonal: both count, and this is half the difference.
   */
  readonly diagonalDoubt: Volume;
  /** Deepest dig from the existing surface, old paving included; null if nothing is dug or one depth is used. */
  readonly deepestCut: DeepestPlan | null;
  /** Point where the existing surface is farthest below the subgrade; null if nothing is filled or one depth is used. */
  readonly deepestFill: DeepestPlan | null;
}
