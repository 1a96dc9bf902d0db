import type { OldPaving } from '../../sources/material-weights.js';
import type { Area, Density, Mass } from '../../units/quantity.js';
import type { Loads } from '../../volumes/loads.js';
import type { StateVolume } from '../../volumes/state-volume.js';

/** Number of one paver to order. */
export interface UnitsPlan {
  /** Id of the paver in the materials of the job. */
  readonly paver: string;
  /** Pavers to order, with cuts and breakage, rounded up. */
  readonly order: number;
}

/** A material hauled in loads, over the whole job. */
export interface StreamPlan {
  /** Loose volume, including waste. */
  readonly loose: StateVolume<'loose'>;
  /** Mass in the truck. */
  readonly mass: Mass;
  /** Truck loads. */
  readonly loads: Loads;
}

/** A material that comes loose, over the whole job. */
export interface LooseTotalPlan extends StreamPlan {
  /** Id of the stone or sand in the materials of the job. */
  readonly material: string;
  /** Name on the order. */
  readonly name: string;
  /** Compacted volume in place. */
  readonly compacted: StateVolume<'compacted'>;
  /** Part of the compacted volume that fills low ground up to the subgrade; null if nothing is filled. */
  readonly fill: StateVolume<'compacted'> | null;
}

/** Old paving of one material and density, over the whole job. */
export interface OldPavingTotalPlan extends StreamPlan {
  /** Material of the old paving. */
  readonly material: OldPaving;
  /** Density in place. */
  readonly density: Density;
}

/** Number of one paver to order, over the whole job. */
export interface PaverTotalPlan extends UnitsPlan {
  /** Name on the order. */
  readonly name: string;
}

/** Orders and loads of the whole job. */
export interface JobTotals {
  /** Area of all digs, with overlaps counted once. */
  readonly digArea: Area;
  /** Area of all bases, with overlaps counted once. */
  readonly baseArea: Area;
  /** Stones to order, one entry each, in the order of the materials. */
  readonly stones: readonly LooseTotalPlan[];
  /** Sands to order, one entry each, in the order of the materials. */
  readonly sands: readonly LooseTotalPlan[];
  /** Soil to haul away; null if there is none. */
  readonly spoil:
    | (StreamPlan & {
        /** Soil in place. */
        readonly bank: StateVolume<'bank'>;
      })
    | null;
  /** Old paving to haul away. */
  readonly oldPaving: readonly OldPavingTotalPlan[];
  /** Pavers to order, one entry each, in the order of the materials. */
  readonly pavers: readonly PaverTotalPlan[];
}
