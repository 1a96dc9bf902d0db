import type { Course } from '../../materials/border/course.js';
import type { OutlineInput } from '../../outline/read-outline.js';
import type { OldPaving } from '../../sources/material-weights.js';
import type { PavementUse, Subgrade } from '../../sources/minimum-thickness.js';
import type { LengthUnit } from '../../units/catalogue.js';
import type { AreaInput, LengthInput, SlopeInput } from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';
import type { JobGradeInput } from './level-input.js';

/** What a layer is. */
export type LayerKind = 'paver' | 'bedding' | 'base' | 'sub-base';

/** What lies along an edge of the paving. */
export type EdgeKind = 'open' | 'restrained' | 'building';

/** A layer of a pavement, from the top down. */
export interface JobLayerInput {
  /** What the layer is. */
  readonly kind: LayerKind;
  /** What the crew calls it. Default: the kind. */
  readonly name?: string;
  /** Compacted thickness. */
  readonly thickness: LengthInput;
  /** What it is made of. Optional. */
  readonly material?: string;
}

/** Old paving to strip. */
export interface JobOldSurfaceInput {
  /** What it is. */
  readonly material: OldPaving;
  /** Thickness of the old paving, measured at a cut. */
  readonly thickness: LengthInput;
  /** Area of old paving to strip. Default: the area of the new paving. */
  readonly area?: AreaInput;
}

/** A course of whole units along the edge. */
export interface JobBorderInput {
  /** How the units of the course are turned. */
  readonly course: Course;
  /** How the course turns a corner. Default: `butt`. */
  readonly corner?: 'butt' | 'mitre';
  /** True for each edge that has the course. Default: every edge. */
  readonly edges?: readonly boolean[];
}

/** Spot heights: all in one unit, or of three lengths each. */
export type SpotHeightsInput = SpotTableInput | readonly SpotHeightInput[];

/** Spot heights that have one unit. */
export interface SpotTableInput {
  /** The unit of all three numbers of every point. */
  readonly unit: LengthUnit;
  /** Points as x, y and elevation, 3 to 5000. */
  readonly points: readonly (readonly [NumberInput, NumberInput, NumberInput])[];
}

/** A spot height with the unit on each of its three lengths. */
export interface SpotHeightInput {
  /** Plan coordinate. */
  readonly x: LengthInput;
  /** Plan coordinate. */
  readonly y: LengthInput;
  /** Elevation. */
  readonly z: LengthInput;
}

/** A pavement of a job. */
export interface JobPavementInput {
  /** Short id, unique in the job. */
  readonly id: string;
  /** Name on the sheet. Default: the id. */
  readonly name?: string;
  /** What runs over it. */
  readonly use: PavementUse;
  /** What it is built on. */
  readonly subgrade: Subgrade;
  /** True where the ground freezes below the base. Default: false. */
  readonly frost?: boolean;
  /** Layers from the top down, 1 to 20. */
  readonly layers: readonly JobLayerInput[];
  /** Edge of the finished paving. */
  readonly outline: OutlineInput;
  /** What lies along each edge: edge k runs from point k to the next. Default: open. */
  readonly edges?: readonly EdgeKind[];
  /** Old paving to strip. Optional. */
  readonly oldSurface?: JobOldSurfaceInput;
  /** Existing surface above finished grade, negative where it is below. Default: level with it. */
  readonly existingAboveFinish?: LengthInput;
  /** Fall square to the string lines. Optional. */
  readonly crossFall?: SlopeInput;
  /** Finished grade by levels that cannot move, instead of stake by stake. Optional. */
  readonly grade?: JobGradeInput;
  /** A course of whole units along the edge. Optional. */
  readonly border?: JobBorderInput;
  /** Spot heights of the finished surface. Optional. */
  readonly finishedLevels?: SpotHeightsInput;
}
