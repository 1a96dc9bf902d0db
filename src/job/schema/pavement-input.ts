import type { Course } from '../../materials/border/course.js';
import type { OutlineInput } from '../../outline/read-outline.js';
import type { PavementUse, Subgrade } from '../../sources/minimum-thickness.js';
import type { LengthUnit } from '../../units/catalogue.js';
import type { LengthInput, SlopeInput } from '../../units/construct.js';
import type { NumberInput } from '../../units/read-number.js';
import type { JobGradeInput } from './level-input.js';

/** Kind of layer. */
export type LayerKind = 'paver' | 'bedding' | 'base' | 'sub-base';

/**
 * What is along an edge of the paving: nothing that stays (`open`), another pavement of the job
 * (`adjoining`), a kerb or other restraint that stays (`restraint`), a slab or floor that stays
 * (`slab`), or a building.
 */
export type EdgeKind = 'open' | 'adjoining' | 'restraint' | 'slab' | 'building';

/** An edge of the paving, and what is along it. */
export interface JobEdgeInput {
  /** Kind of edge: what is along it. */
  readonly along: EdgeKind;
  /** Slope of the side of the dig, run over rise, 0 (vertical) to 10; only for an open edge. Default: that of the pavement. */
  readonly batter?: NumberInput;
  /** Level of the floor at a slab or building, or of the paving it meets. Optional. */
  readonly level?: LengthInput;
  /** Depth from finished grade at the edge to the underside of a building's footing, if known. Optional. */
  readonly footing?: LengthInput;
}

/** A layer of a pavement, from the top down. */
export interface JobLayerInput {
  /** Kind of layer. */
  readonly kind: LayerKind;
  /** Name the crew uses. Default: the kind. */
  readonly name?: string;
  /** Compacted thickness. */
  readonly thickness: LengthInput;
  /** Id of its stone, sand or paver in `materials`. Only a layer of pavers may leave it out. */
  readonly material?: string;
}

/** A course of whole pavers along the edge. */
export interface JobBorderInput {
  /** Orientation of the pavers in the course. */
  readonly course: Course;
  /** Corner joint of the course. Default: `butt`. */
  readonly corner?: 'butt' | 'mitre';
  /** Edges with the course, counted from 1. Default: every edge. */
  readonly edges?: readonly NumberInput[];
  /** Id of the paver of the course in `materials`. Default: the paver of the field. */
  readonly paver?: string;
}

/** Two strings, for a table of the depths between them. */
export interface JobBetweenStringsInput {
  /** Id of a string over the pavement. */
  readonly from: string;
  /** Id of another string over the pavement. */
  readonly to: string;
  /** Distance between rows of the table, square to the first string. */
  readonly spacing: LengthInput;
}

/** Spot heights: numbers in one unit, or three lengths each. */
export type SpotHeightsInput = SpotTableInput | readonly SpotHeightInput[];

/** Spot heights in one unit. */
export interface SpotTableInput {
  /** Unit of all three numbers of every point. */
  readonly unit: LengthUnit;
  /** Points as x, y and elevation, 3 to 100 000. */
  readonly points: readonly (readonly [NumberInput, NumberInput, NumberInput])[];
}

/** A spot height as three lengths, each with its unit. */
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
  /** Traffic: the use of the paving. */
  readonly use: PavementUse;
  /** Subgrade: the soil it is built on. */
  readonly subgrade: Subgrade;
  /** True if the ground freezes below the base. Default: false. */
  readonly frost?: boolean;
  /** Layers from the top down, 1 to 20. */
  readonly layers: readonly JobLayerInput[];
  /** Edge of the finished paving. In its arcs, `edge` counts from 1. */
  readonly outline: OutlineInput;
  /**
   * What is along each edge, in order: the outer edges first, then those of the holes. Edge 1 runs from
   * the first point to the second. Write `null` for an edge that is not known yet: it is planned as
   * open, with a warning. Default: no edge is known.
   */
  readonly edges?: readonly (EdgeKind | JobEdgeInput | null)[];
  /** Slope of the sides of the dig along open edges, run over rise, 0 to 10. Default: vertical. */
  readonly batter?: NumberInput;
  /**
   * True if the stone beyond the edge restraint tapers, from its top at the restraint to its foot at
   * the outer edge of the base. Default: full thickness out to that edge.
   */
  readonly taperedBase?: boolean;
  /** Height of the existing surface above finished grade, negative if below. Default: level with it. */
  readonly existingAboveFinish?: LengthInput;
  /** Fall square to the strings. Optional. */
  readonly crossSlope?: SlopeInput;
  /** Finished grade by levels that cannot move, instead of stake by stake. Optional. */
  readonly grade?: JobGradeInput;
  /** A course of whole pavers along the edge. Optional. */
  readonly border?: JobBorderInput;
  /** Spot heights of the finished surface. Optional. */
  readonly finishedLevels?: SpotHeightsInput;
  /** Two strings, for a table of depths between them. Optional. */
  readonly betweenStrings?: JobBetweenStringsInput;
}
