import { printed, type ReferenceValue } from './reference-value.js';

/** Weight of old paving in place and broken out, per cubic yard. */
export interface OldPavingWeight {
  /** Weight in place. */
  readonly inPlace: ReferenceValue;
  /** Weight broken out and loose. */
  readonly loose: ReferenceValue;
}

/** Old paving by material. Sources: `debris-training-sheet` (in place), `state-debris-weights` (loose). */
export const OLD_PAVING_WEIGHTS: Readonly<Record<'asphalt' | 'concrete', OldPavingWeight>> =
  Object.freeze({
    asphalt: Object.freeze({
      inPlace: printed('4140', 'lb/yd3', 'debris-training-sheet'),
      loose: printed('2400', 'lb/yd3', 'state-debris-weights'),
    }),
    concrete: Object.freeze({
      inPlace: printed('4050', 'lb/yd3', 'debris-training-sheet'),
      loose: printed('2400', 'lb/yd3', 'state-debris-weights'),
    }),
  });

/** The kinds of old paving in the table. */
export type OldPaving = keyof typeof OLD_PAVING_WEIGHTS;

/** Loose weights of truck loads. Source: `army-truck-weights`. */
export const TRUCK_WEIGHTS = Object.freeze({
  'earth, dry loose': printed('2025', 'lb/yd3', 'army-truck-weights'),
  'earth, moist packed': printed('2565', 'lb/yd3', 'army-truck-weights'),
  gravel: printed('2970', 'lb/yd3', 'army-truck-weights'),
  'gravel and sand, dry loose': printed('2565', 'lb/yd3', 'army-truck-weights'),
  'gravel and sand, wet': printed('3240', 'lb/yd3', 'army-truck-weights'),
  'limestone, crushed': printed('2700', 'lb/yd3', 'army-truck-weights'),
  'mud, wet': printed('3240', 'lb/yd3', 'army-truck-weights'),
});

/** Dry weights of base stone, in the truck and compacted. Source: `state-aggregate-weights`. */
export const AGGREGATE_WEIGHTS = Object.freeze({
  'crushed surfacing top course': Object.freeze({
    truck: printed('2850', 'lb/yd3', 'state-aggregate-weights'),
    compacted: printed('3700', 'lb/yd3', 'state-aggregate-weights'),
  }),
  'crushed surfacing base course': Object.freeze({
    truck: printed('2950', 'lb/yd3', 'state-aggregate-weights'),
    compacted: printed('3700', 'lb/yd3', 'state-aggregate-weights'),
  }),
  ballast: Object.freeze({
    truck: printed('3100', 'lb/yd3', 'state-aggregate-weights'),
    compacted: printed('3900', 'lb/yd3', 'state-aggregate-weights'),
  }),
});
