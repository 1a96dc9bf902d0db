import { float } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { ESALS, STRUCTURAL_NUMBER } from '../input/structure-ranges.js';
import { fromNumber } from '../units/construct.js';
import type { Pressure } from '../units/quantity.js';
import { formulaStep, given } from '../working.js';
import {
  constantTerm,
  givenTerms,
  MODULUS_FORMULA,
  modulusOf,
  RELIABILITY_FIELDS,
  solved,
  structureTerm,
  termsOf,
  type EquationResult,
  type ReliabilityOptions,
} from './flexible-equation.js';
import { onePsi } from './printed-units.js';

/** A pavement and its traffic. */
export interface RequiredModulusOptions extends ReliabilityOptions {
  /** Passes of the standard axle over the life, more than 0 and at most 10 000 million. */
  readonly esals: number | string;
  /** Structural number per inch, more than 0 and at most 30; see {@link structuralNumber}. */
  readonly structuralNumber: number | string;
}

const OPTIONS = shapeOf<RequiredModulusOptions>()({
  esals: float(ESALS),
  structuralNumber: float(STRUCTURAL_NUMBER),
  ...RELIABILITY_FIELDS,
});

/** Modulus that the subgrade must have. */
export interface RequiredModulus extends EquationResult {
  /** Resilient modulus of the subgrade. */
  readonly resilientModulus: Pressure;
}

/**
 *
 * Resilient modulus that the subgrade must have for a pavement of a structural number to carry given
 * traffic: the equation of {@link allowableEsals} solved for M.
 *
 * @param options - see {@link RequiredModulusOptions}
 * @returns modulus [pressure], the deviate used, which figures are beyond the chart, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED`, `WRONG_TYPE` and the reading codes
 * @source flexible-pavement-sheet
 * @example
 * const ground = requiredModulus({
 *   esals: '4124067.84',
 *   structuralNumber: '4.24',
 *   reliability: 70,
 *   overallDeviation: '0.5',
 *   serviceabilityLoss: 2,
 * });
 * ground.resilientModulus.to('psi').toFixed(2) //=> '5250.31'
 */
export function requiredModulus(options: RequiredModulusOptions): RequiredModulus {
  const read = readOptions(options, OPTIONS);
  const { esals, structuralNumber } = read;
  const terms = termsOf(read);
  const psi = modulusOf(
    Math.log10(esals) - constantTerm(terms) - structureTerm(structuralNumber, terms),
  );
  const resilientModulus = fromNumber(psi, 'psi');
  return solved({ resilientModulus }, { terms, esals, psi }, () => [
    formulaStep({
      title: 'Modulus that the subgrade must have',
      formula: MODULUS_FORMULA,
      given: [
        given('W', 'passes of the standard axle', esals),
        given('SN', 'structural number', structuralNumber),
        ...givenTerms(terms),
        onePsi(),
      ],
      result: given('M', 'resilient modulus', resilientModulus),
      source: 'flexible-pavement-sheet',
    }),
  ]);
}
