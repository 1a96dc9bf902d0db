import { fault } from '../errors.js';
import { float, quantity } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { ESALS, RESILIENT_MODULUS, STRUCTURAL_NUMBER } from '../input/structure-ranges.js';
import type { PressureInput } from '../units/construct.js';
import { given, procedureStep } from '../working.js';
import {
  constantTerm,
  givenTerms,
  modulusTerm,
  RELIABILITY_FIELDS,
  solved,
  structureTerm,
  termsOf,
  trafficOf,
  trafficStep,
  type EquationResult,
  type ReliabilityOptions,
  type Terms,
} from './flexible-equation.js';

/** Traffic, and the soil below the pavement. */
export interface RequiredStructuralNumberOptions extends ReliabilityOptions {
  /** Passes of the standard axle over the life, more than 0 and at most 10 000 million. */
  readonly esals: number | string;
  /**
   * Resilient modulus of the soil or layer below [pressure], more than 0 and at most 100 000 MPa.
   */
  readonly resilientModulus: PressureInput;
}

const OPTIONS = shapeOf<RequiredStructuralNumberOptions>()({
  esals: float(ESALS),
  ...RELIABILITY_FIELDS,
  resilientModulus: quantity(RESILIENT_MODULUS),
});

/** Structural number that carries the traffic. */
export interface RequiredStructuralNumber extends EquationResult {
  /** Structural number per inch; 0 if the ground alone carries the traffic. */
  readonly structuralNumber: number;
}

/**
 *
 * Structural number that a flexible pavement needs for its ESALs: the equation of
 * {@link allowableEsals} solved for SN, to the last digit of a float. For the layers over a base or
 * sub-base, give its modulus instead of that of the subgrade.
 *
 * @param options - see {@link RequiredStructuralNumberOptions}
 * @returns structural number, the deviate used, which figures are beyond the chart, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` (also where more than 30 would be needed),
 *   `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-sheet
 * @example
 * const needed = requiredStructuralNumber({
 *   esals: 26128077,
 *   reliability: 90,
 *   overallDeviation: '0.5',
 *   serviceabilityLoss: 2,
 *   resilientModulus: '10000 psi',
 * });
 * needed.structuralNumber.toFixed(6) //=> '5.040000'
 */
export function requiredStructuralNumber(
  options: RequiredStructuralNumberOptions,
): RequiredStructuralNumber {
  const read = readOptions(options, OPTIONS);
  const { esals, resilientModulus } = read;
  const terms = termsOf(read);
  const psi = resilientModulus.toNumber('psi');
  const structuralNumber = solve(Math.log10(esals) - constantTerm(terms) - modulusTerm(psi), terms);
  return solved({ structuralNumber }, { terms, esals, psi }, () => [
    procedureStep({
      title: 'Structural number that carries the traffic',
      procedure: 'requiredStructuralNumber',
      method:
        'Finds the structural number for which the equation of the next step gives the traffic: the range from 0 to 30 is halved until no smaller part is left. Returns 0 if the ground alone carries the traffic.',
      given: [
        given('W', 'passes of the standard axle', esals),
        ...givenTerms(terms),
        given('M', 'resilient modulus', resilientModulus),
      ],
      result: given('SN', 'structural number', structuralNumber),
      source: 'flexible-pavement-sheet',
    }),
    trafficStep('Traffic that this structural number carries', terms, {
      structuralNumber,
      resilientModulus,
      esals: trafficOf(structuralNumber, psi, terms),
    }),
  ]);
}

/** Bisects until no float is left between the ends; the term only rises. */
function solve(needed: number, terms: Terms): number {
  const { most } = STRUCTURAL_NUMBER;
  if (structureTerm(most, terms) < needed) {
    const message = `this traffic needs a structural number over ${most}. Check the digits and the unit of the modulus`;
    throw fault('OUT_OF_RANGE', message, { most }, ['esals']);
  }
  if (structureTerm(0, terms) >= needed) return 0;
  let low = 0;
  let high: number = most;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return high;
    if (structureTerm(middle, terms) < needed) low = middle;
    else high = middle;
  }
}
