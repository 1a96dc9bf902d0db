import type { SoilType } from '../../sources/excavation-rules.js';
import type { OutlineInput } from '../../outline/read-outline.js';
import type { OldPaving } from '../../sources/material-weights.js';
import type { DensityInput, LengthInput, MassInput } from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';

/** A point in plan. */
export interface JobPointInput {
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
}

/** A marked line: a pipe, cable or duct. Values set by law or by the utility owner have no default. */
export interface JobUtilityInput {
  /** Id of the line, unique in the job. */
  readonly id: string;
  /** Points of the line as marked on the ground, 2 to 50. */
  readonly path: readonly JobPointInput[];
  /** Outside diameter or width of the line. */
  readonly width: LengthInput;
  /** Width of the zone to dig by hand on each side, as the law where you dig requires. */
  readonly tolerance: LengthInput;
  /** Depth to the top of the line, measured in a test hole. Never use a usual or a marked depth. Optional. */
  readonly found?: LengthInput;
  /** Minimum cover that the utility owner requires. Optional. */
  readonly minimumCover?: LengthInput;
}

/** A tree near the dig. Values set by an authority have no default. */
export interface JobTreeInput {
  /** Id of the tree, unique in the job. */
  readonly id: string;
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Diameter of the trunk at 4.5 ft (1.4 m) above ground. */
  readonly trunkDiameter: LengthInput;
  /** Root zone radius over trunk diameter, as the authority requires, 1 to 40. */
  readonly radiusPerDiameter: NumberInput;
  /** Minimum radius of the root zone. Optional. */
  readonly minimumRadius?: LengthInput;
}

/** Old paving to strip: inside an outline, or over a share of the dig of one pavement. */
export interface JobOldPavingInput {
  /** Material of the old paving. */
  readonly material: OldPaving;
  /** Thickness of the old paving, measured at a cut. */
  readonly thickness: LengthInput;
  /** Density in place. Default: a published density of the material. */
  readonly density?: DensityInput;
  /** Outline of the old paving; or give `pavement`. Only the part in a dig is stripped. In its arcs, `edge` counts from 1. */
  readonly outline?: OutlineInput;
  /** Id of the pavement whose dig contains it; or give `outline`. */
  readonly pavement?: string;
  /** Share of the dig of `pavement` that it covers, more than 0, maximum 1. Default: 1. */
  readonly share?: NumberInput;
}

/** A competent person's findings on the ground. */
export interface JobExcavationInput {
  /** Soil type, as classified by the competent person. */
  readonly soil: SoilType;
  /** Distance from the edge of the dig to spoil and gear. Optional. */
  readonly spoilDistance?: LengthInput;
}

/** Joint sand. */
export interface JobJointSandInput {
  /** Dry density in the joint. */
  readonly density: DensityInput;
  /** Depth from the top of the paver to the joint sand. Default: none. */
  readonly recess?: LengthInput;
  /** Height of the joint that bedding sand fills from below. Default: none. */
  readonly riseFromBed?: LengthInput;
  /** Allowance added to the order, as a fraction. Default: 0. */
  readonly waste?: NumberInput;
  /** Mass of a bag. Optional. */
  readonly bag?: MassInput;
}

/** Edge restraint, in pieces held by spikes. */
export interface JobEdgeRestraintInput {
  /** Length of a piece. */
  readonly piece: LengthInput;
  /** Maximum spacing of spikes on straight runs. */
  readonly spikeSpacing: LengthInput;
  /** Maximum spacing of spikes on curves. Default: the spacing on straight runs. */
  readonly curvedSpikeSpacing?: LengthInput;
  /** Length by which pieces overlap. Default: none. */
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
  /** Height of fabric turned up the sides of the dig. Default: none. */
  readonly upturn?: LengthInput;
  /** Overlap of pieces end to end. Default: the same as side by side. */
  readonly endLap?: LengthInput;
}
