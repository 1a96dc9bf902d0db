import { length, pressure } from '../units/construct.js';
import { given, type StepInput } from '../working.js';

/** The unit of the thickness in a structural number, for the working. Internal. */
export const oneInch = (): StepInput => given('u', 'one inch', length(1, 'in'));

/** The unit of a modulus in the printed equations, for the working. Internal. */
export const onePsi = (): StepInput => given('u', 'one pound per square inch', pressure(1, 'psi'));
