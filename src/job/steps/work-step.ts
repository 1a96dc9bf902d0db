import type { Caution } from '../../sources/cautions.js';
import type { AnyQuantity, Area, Length, Mass, Time, Volume } from '../../units/quantity.js';
import type { StateVolume } from '../../volumes/state-volume.js';
import { mark, requireMarked } from '../mark.js';
import type { MaterialKind } from '../order/material-list.js';

/** What is done in a step of work. */
export type WorkStepKind =
  | 'locate-lines'
  | 'set-strings'
  | 'mark-dig'
  | 'strip'
  | 'dig'
  | 'fill'
  | 'subgrade'
  | 'geotextile'
  | 'lift'
  | 'base-check'
  | 'edge-restraint'
  | 'bedding'
  | 'pavers'
  | 'border'
  | 'cuts'
  | 'compact-pavers'
  | 'joint-sand'
  | 'hand-over';

/** Something that must be true before a step starts. */
export interface WorkCondition {
  /** What it is, as a code. */
  readonly code:
    | 'STEP_DONE'
    | 'SIGNED'
    | 'SURFACE_PASSES'
    | 'STAKES_IN_LINE'
    | 'LINES_OPENED'
    | 'LINE_OWNER_AGREES'
    | 'TREES_AGREED'
    | 'DIG_IS_SAFE'
    | 'GROUND_IS_SOUND'
    | 'PAVERS_ARE_DRY';
  /** Id of the step that must be done or signed; null for what is no step. */
  readonly step: string | null;
  /** Name of the surface that must pass, as `checkJob` names it; null for what is no surface. */
  readonly surface: string | null;
  /** The condition in words. */
  readonly note: string;
}

/** A height to work to, below one string. */
export interface WorkHeight {
  /** Id of the string. */
  readonly string: string;
  /** Name of the surface, as `checkJob` names it. */
  readonly surface: string;
  /** Below the string as placed, before the plate; null where it is not known, or nothing is placed. */
  readonly placed: Length | null;
  /** Below the string as finished and compacted. */
  readonly finished: Length;
}

/** A figure of a step. */
export interface WorkFigure {
  /** What it is, as a code. */
  readonly code:
    | 'string-height'
    | 'stake-move'
    | 'dig-line'
    | 'set-out-step'
    | 'dig-area'
    | 'hand-dig-area'
    | 'hand-dig-volume'
    | 'slope-run'
    | 'spoil-distance'
    | 'maximum-lift'
    | 'thickness'
    | 'depth'
    | 'area'
    | 'placed'
    | 'finished'
    | 'rails'
    | 'settlement'
    | 'count'
    | 'passes'
    | 'water';
  /** What it is, in words. */
  readonly name: string;
  /** The figure. */
  readonly value: AnyQuantity | number;
}

/** The truck loads of an amount, among those of the whole job. */
export interface WorkLoads {
  /** The first load it takes, counted from 1 over the job; it may share it with the step before. */
  readonly first: number;
  /** The last load it takes. */
  readonly last: number;
  /** Loads that come for it: those of all steps add up to the loads of the job. */
  readonly count: number;
  /** Loads of the whole job. */
  readonly of: number;
}

/** What is hauled away or placed in a step. */
export interface WorkAmount {
  /** What is done with it. */
  readonly action: 'haul-away' | 'place';
  /** What it is. */
  readonly kind: MaterialKind | 'soil' | 'old-paving';
  /** Id in the materials of the job, of old paving what it is; null for what has none. */
  readonly material: string | null;
  /** Name on the order. */
  readonly name: string;
  /** Name of the layer; null for what is no layer. */
  readonly layer: string | null;
  /** What `inPlace` says: soil in the bank, solid paving, compacted stone; null where there is none. */
  readonly state: 'bank' | 'solid' | 'compacted' | null;
  /** Volume in place, waste left out; null for what is not measured so. */
  readonly inPlace: Volume | null;
  /** The same loose, as ordered or hauled; null for what is not measured so. */
  readonly loose: StateVolume<'loose'> | null;
  /** What it weighs, as delivered or hauled; null where it is not known. */
  readonly mass: Mass | null;
  /** Area of a fabric; null for what is not measured so. */
  readonly area: Area | null;
  /** Number of pieces, or of rolls that this pavement takes by itself; null for what is not counted so. */
  readonly pieces: number | null;
  /** The line of `materialList(plan).lines` it is ordered by, counted from 1; null for what is hauled away. */
  readonly orderLine: number | null;
  /** Truck loads; null for what does not come loose. */
  readonly loads: WorkLoads | null;
}

/** Hours of a step, by the rates of the job; null where the job gives no rate, or none is needed. */
export interface WorkHours {
  /** The digging machine. */
  readonly machine: Time | null;
  /** Digging by hand, at the rate of the crew. */
  readonly byHand: Time | null;
  /** The plate or roller. */
  readonly plate: Time | null;
  /** All trucks together. */
  readonly trucks: Time | null;
  /** Trucks that keep the loading machine busy. */
  readonly trucksNeeded: number | null;
}

/** What someone has to sign before the work goes on. */
export interface HoldPoint {
  /** What is signed, as a code. */
  readonly code:
    'lines-located' | 'dig-checked' | 'subgrade-accepted' | 'layer-accepted' | 'final-levels';
  /** Who signs. */
  readonly who: 'crew leader' | 'competent person' | 'person who accepts the work';
  /** Name of the surface that is signed, as `checkJob` names it; null for what is no surface. */
  readonly surface: string | null;
  /** What is signed, in words. */
  readonly note: string;
}

/** One step of work. */
export interface WorkStep {
  /** Unique in the job: `dig/court`, `lift-2/court`. */
  readonly id: string;
  /** What is done. */
  readonly kind: WorkStepKind;
  /** What is done, in words. */
  readonly title: string;
  /** Id of the pavement; null where the step is about the whole job. */
  readonly pavement: string | null;
  /** What must be true before it starts. */
  readonly before: readonly WorkCondition[];
  /** Heights to work to, string by string. */
  readonly heights: readonly WorkHeight[];
  /** Other figures that the crew needs. */
  readonly figures: readonly WorkFigure[];
  /** What is hauled away or placed. */
  readonly amounts: readonly WorkAmount[];
  /** Hours of machine, hands, plate and trucks. */
  readonly hours: WorkHours;
  /** How it is done. */
  readonly notes: readonly string[];
  /** What someone has to sign before the next step. */
  readonly holdPoints: readonly HoldPoint[];
  /** What can hurt someone, and who decides. */
  readonly cautions: readonly Caution[];
}

const STEP = Symbol.for('settline.step');

/** Marks a step of work before it is frozen. Internal. */
export const markStep = <T extends object>(step: T): T => mark(step, STEP);

/**
 * Refuses what is no step of work. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireStep(value: unknown): asserts value is WorkStep {
  requireMarked(value, STEP, 'a step of workSteps()');
}
