import { float, quantity } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { RESILIENT_MODULUS, STRUCTURAL_NUMBER } from '../input/structure-ranges.js';
import type { PressureInput } from '../units/construct.js';
import {
  RELIABILITY_FIELDS,
  solved,
  termsOf,
  trafficOf,
  trafficStep,
  type EquationResult,
  type ReliabilityOptions,
} from './flexible-equation.js';

/** A pavement, to find its allowable traffic. */
export interface AllowableEsalsOptions extends ReliabilityOptions {
  /** Structural number per inch, more than 0 and at most 30; see {@link structuralNumber}. */
  readonly structuralNumber: number | string;
  /** Effective resilient modulus of the subgrade [pressure], more than 0 and at most 100 000 MPa. */
  readonly resilientModulus: PressureInput;
}

const OPTIONS = shapeOf<AllowableEsalsOptions>()({
  structuralNumber: float(STRUCTURAL_NUMBER),
  ...RELIABILITY_FIELDS,
  resilientModulus: quantity(RESILIENT_MODULUS),
});

/** Traffic that a flexible pavement carries over its life. */
export interface AllowableEsals extends EquationResult {
  /** Passes of the standard axle of 18 000 lb. */
  readonly esals: number;
}

/**
 *
 * Passes of the standard axle that a flexible pavement of a structural number carries:
 * `log10 W = Z s + 9.36 log10(SN + 1) - 0.20 + log10(dPSI / 2.7) / (0.40 + 1094 / (SN + 1)^5.19) + 2.32 log10 M - 8.07`,
 * M in psi. In floats, to `1e-13` of the traffic. The deviate Z is that of the normal distribution,
 * rounded to three places as in printed tables.
 *
 * @param options - see {@link AllowableEsalsOptions}
 * @returns passes of the standard axle, the deviate used, which figures are beyond the chart,
 * cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-sheet
 * @example
 * const road = allowableEsals({
 *   structuralNumber: '5.04',
 *   reliability: 90,
 *   overallDeviation: '0.5',
 *   serviceabilityLoss: 2,
 *   resilientModulus: '10000 psi',
 * });
 * Math.round(road.esals) //=> 26128077
 */
export function allowableEsals(options: AllowableEsalsOptions): AllowableEsals {
  const read = readOptions(options, OPTIONS);
  const { structuralNumber, resilientModulus } = read;
  const terms = termsOf(read);
  const psi = resilientModulus.toNumber('psi');
  const esals = trafficOf(structuralNumber, psi, terms);
  return solved({ esals }, { terms, esals, psi }, () => [
    trafficStep('Traffic that the pavement carries', terms, {
      structuralNumber,
      resilientModulus,
      esals,
    }),
  ]);
}
