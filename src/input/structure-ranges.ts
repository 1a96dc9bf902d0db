import { upTo } from './ranges.js';
import type { NumberRule } from './reader.js';

// The section of the table of ranges (ranges.ts) for soil and traffic under flexible pavements.

type NumberRange = Readonly<Required<Omit<NumberRule, 'least'>>> & NumberRule;

const positive = (most: number, example: string): NumberRange =>
  Object.freeze({ sign: 'positive', most, example });
const notNegative = (most: number, example: string): NumberRange =>
  Object.freeze({ sign: 'not-negative', most, example });
const between = (least: number, most: number, example: string): NumberRange =>
  Object.freeze({ sign: least > 0 ? 'positive' : 'any', least, most, example });

/** California bearing ratio, in percent. */
export const BEARING_RATIO = /* #__PURE__ */ positive(200, '3.5 for 3.5%');
/** Resilient modulus of soil or stone. */
export const RESILIENT_MODULUS = /* #__PURE__ */ upTo(
  'pressure',
  'positive',
  [100_000, 'MPa'],
  '"5000 psi" or "35 MPa"',
);
/** Structural number, per inch. */
export const STRUCTURAL_NUMBER = /* #__PURE__ */ positive(30, '2.6');
/** Structural number of layers, which may be 0. */
export const STRUCTURAL_NUMBER_OR_NONE = /* #__PURE__ */ notNegative(30, '2.6');
/** Layer coefficient per inch. */
export const LAYER_COEFFICIENT = /* #__PURE__ */ positive(1, '0.14');
/** Drainage coefficient of an unbound layer. */
export const DRAINAGE = /* #__PURE__ */ between(0.2, 1.5, '0.9');
/** Passes of the standard axle, a day or over the life of a pavement. */
export const ESALS = /* #__PURE__ */ positive(1e10, '250000');
/** Axles or trucks a day. */
export const AXLES_PER_DAY = /* #__PURE__ */ notNegative(1_000_000, '14');
/** Damage of one pass over that of the standard axle. */
export const AXLE_FACTOR = /* #__PURE__ */ notNegative(10_000, '0.9');
/** Reliability in percent. Below 50 the pavement would be expected to fail. */
export const RELIABILITY = /* #__PURE__ */ between(50, 99.99, '80 for 80%');
/** Standard normal deviate of a reliability. */
export const DEVIATE = /* #__PURE__ */ between(-4, 0, '-0.842');
/** Standard deviation of the logarithm of traffic. */
export const OVERALL_DEVIATION = /* #__PURE__ */ notNegative(1, '0.45');
/** Loss of serviceability. Below 0.2 the equation no longer rises with the structural number. */
export const SERVICEABILITY_LOSS = /* #__PURE__ */ between(0.2, 4, '2');
/** Years of a pavement's life. */
export const YEARS = /* #__PURE__ */ positive(100, '20');
/** Years, which may be 0. */
export const YEARS_OR_NONE = /* #__PURE__ */ notNegative(100, '2');
/** Growth of traffic a year, as a fraction. */
export const GROWTH = /* #__PURE__ */ between(-0.5, 1, '0.03 for 3%');
/** Days of a year. */
export const DAYS = /* #__PURE__ */ positive(366, '300');
