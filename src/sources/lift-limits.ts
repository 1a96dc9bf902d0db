import { printed, type ReferenceValue } from './reference-value.js';

/**
 * Maximum lift of base stone by equipment, from examples ("such as") in two publications. Neither
 * says whether the lift is loose or compacted. Choose; there is no default. Sources:
 * `equipment-operator` (roller, tamper), `block-paving-guide` (plate). They differ from
 * {@link PLANT_LIFTS}, which gives a tamper 100 to 150 mm where the first gives 3 in.
 */
export const LIFT_LIMITS = Object.freeze({
  roller: printed('6', 'in', 'equipment-operator'),
  tamper: printed('3', 'in', 'equipment-operator'),
  plate: printed('100', 'mm', 'block-paving-guide'),
});

/** A compacted lift of granular fill and its passes. */
export interface PlantLift {
  /** Thickness once compacted, no more than this. */
  readonly lift: ReferenceValue;
  /** Minimum passes over it. */
  readonly passes: number;
}

const lifts = (...rows: readonly (readonly [millimetres: string, passes: number])[]) =>
  Object.freeze(
    rows.map(([millimetres, passes]): PlantLift =>
      Object.freeze({ lift: printed(millimetres, 'mm', 'reinstatement-lifts'), passes }),
    ),
  );

/**
 * Compacted lifts of granular fill by plant, with the passes for each; a lift thicker than the last
 * is not permitted. Plates are rated by mass over area of the base plate. Source:
 * `reinstatement-lifts`.
 */
export const PLANT_LIFTS = Object.freeze({
  'vibrotamper, 50 kg': lifts(['100', 4], ['150', 8]),
  'vibrotamper, 25 kg': lifts(['100', 6]),
  'plate, 1400 to 1800 kg/m2': lifts(['100', 5]),
  'plate, over 1800 kg/m2': lifts(['100', 3], ['150', 5], ['200', 7]),
});
