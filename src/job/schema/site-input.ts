import type { SoilType } from '../../sources/excavation-rules.js';
import type { DensityInput, LengthInput, MassInput, VolumeInput } from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';

/** A point in plan. */
export interface JobPointInput {
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
}

/** A marked line: a pipe, a cable, a duct. What a law or an owner sets has no default. */
export interface JobUtilityInput {
  /** Id of the line, unique in the job. */
  readonly id: string;
  /** The line as it is marked, 2 to 50 points. */
  readonly path: readonly JobPointInput[];
  /** Outside diameter or width. */
  readonly width: LengthInput;
  /** Zone to dig by hand on each side, as the law where you dig sets it. */
  readonly tolerance: LengthInput;
  /** Depth of its top, measured in a test hole. Never a usual or a marked depth. Optional. */
  readonly found?: LengthInput;
  /** Minimum cover that its owner requires. Optional. */
  readonly leastCover?: LengthInput;
}

/** A tree near the dig. What an authority sets has no default. */
export interface JobTreeInput {
  /** Id of the tree, unique in the job. */
  readonly id: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Diameter of the trunk at 4.5 ft (1.4 m) above ground. */
  readonly trunkDiameter: LengthInput;
  /** Radius of the root zone over trunk diameter, as the authority sets it, 1 to 40. */
  readonly radiusPerDiameter: NumberInput;
  /** The zone is never smaller than this. Optional. */
  readonly leastRadius?: LengthInput;
}

/** What a competent person says about the ground. */
export interface JobExcavationInput {
  /** Class of the soil. */
  readonly soil: SoilType;
  /** From the edge of the dig to spoil and gear. Optional. */
  readonly spoilDistance?: LengthInput;
}

/** Joint sand. */
export interface JobJointSandInput {
  /** Dry density in the joint. */
  readonly density: DensityInput;
  /** Top of the paver down to the fill. Default: none. */
  readonly recess?: LengthInput;
  /** Joint filled from below by the bedding. Default: none. */
  readonly riseFromBed?: LengthInput;
  /** Added to the order, as a fraction. Default: 0. */
  readonly waste?: NumberInput;
  /** What a bag holds. Optional. */
  readonly bag?: MassInput;
}

/** Edge restraint in pieces with spikes. */
export interface JobEdgeRestraintInput {
  /** Length of a piece. */
  readonly piece: LengthInput;
  /** Maximum spacing of spikes on straight runs. */
  readonly spikeSpacing: LengthInput;
  /** Maximum spacing of spikes on curves. Default: that of straight runs. */
  readonly curvedSpikeSpacing?: LengthInput;
  /** Lap of the pieces. Default: none. */
  readonly lap?: LengthInput;
}

/** Geotextile under the base. */
export interface JobGeotextileInput {
  /** Width of a roll. */
  readonly rollWidth: LengthInput;
  /** Length of a roll. Optional. */
  readonly rollLength?: LengthInput;
  /** Overlap of strips side by side. */
  readonly overlap: LengthInput;
  /** Fabric turned up the sides of the dig. Default: none. */
  readonly upturn?: LengthInput;
  /** Overlap of pieces end to end. Default: that of the sides. */
  readonly endLap?: LengthInput;
}

/** A pack of stone or sand, by volume or by mass. */
export interface JobPackInput {
  /** What a pack is called: yard, bag, truck. */
  readonly name: string;
  /** What a pack holds, loose; or give `mass`. */
  readonly volume?: VolumeInput;
  /** What a pack weighs; or give `volume`. */
  readonly mass?: MassInput;
  /** Minimum order, in packs. Default: none. */
  readonly minimum?: NumberInput;
}

/** A pack of pavers. */
export interface JobPaverPackInput {
  /** What a pack is called: band, pallet. */
  readonly name: string;
  /** Pavers in the pack; of a larger pack, how many of the pack before. */
  readonly holds: NumberInput;
}

/** The packs things are sold in. */
export interface JobPacksInput {
  /** Packs of base stone. Optional. */
  readonly base?: JobPackInput;
  /** Packs of bedding sand. Optional. */
  readonly bedding?: JobPackInput;
  /** Packs of pavers, from the smallest up, 1 to 5. Optional. */
  readonly pavers?: readonly JobPaverPackInput[];
}

/** What is ordered besides stone, sand and pavers, and the packs things are sold in. */
export interface JobSuppliesInput {
  /** Joint sand. Optional. */
  readonly jointSand?: JobJointSandInput;
  /** Edge restraint. Optional. */
  readonly edgeRestraint?: JobEdgeRestraintInput;
  /** Geotextile under the base. Optional. */
  readonly geotextile?: JobGeotextileInput;
  /** The packs things are sold in. Optional. */
  readonly packs?: JobPacksInput;
}
