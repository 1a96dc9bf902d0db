import { printed } from './reference-value.js';

/**
 * Maximum lift of base stone by equipment, from examples ("such as") in two publications. Neither
 * says whether the lift is loose or compacted. Choose; there is no default. Sources:
 * `equipment-operator` (roller, tamper), `block-paving-guide` (plate). They differ from
 * {@link COMPACTION_METHOD}, which gives a tamper 100 to 150 mm where the first gives 3 in.
 */
export const LIFT_LIMITS = Object.freeze({
  roller: printed('6', 'in', 'equipment-operator'),
  tamper: printed('3', 'in', 'equipment-operator'),
  plate: printed('100', 'mm', 'block-paving-guide'),
});
