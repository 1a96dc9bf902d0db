import { printed } from './reference-value.js';

/** Thickest compacted lift of base stone by what compacts it. Choose; there is no default. */
export const LIFT_LIMITS = Object.freeze({
  roller: printed('6', 'in', 'equipment-operator'),
  tamper: printed('3', 'in', 'equipment-operator'),
  plate: printed('100', 'mm', 'block-paving-guide'),
});
