import { makeReader } from '../input/reader.js';
import { fromNumber } from '../units/construct.js';
import type { Pressure } from '../units/quantity.js';
import { given, withWorking } from '../working.js';
import {
  beside,
  constantTerm,
  EQUATION,
  givenTerms,
  modulusOf,
  readTerms,
  structureTerm,
  type EquationResult,
  type ReliabilityOptions,
} from './flexible-equation.js';
import { ESALS, STRUCTURE } from './limits.js';

/** Modulus that the ground must have. */
export interface RequiredModulus extends EquationResult {
  readonly resilientModulus: Pressure;
}

/**
 * Resilient modulus that the subgrade must have for a pavement of a structural number to carry a
 * traffic: the equation of {@link allowableEsals} solved for M.
 *
 * @param options.esals - passes of the standard axle over the life, more than 0
 * @param options.structuralNumber - SN, per inch, more than 0 and at most 30
 * @param options.reliability - percent, 50 to 99.99
 * @param options.standardNormalDeviate - Z in the place of that of the reliability, -4 to 0
 * @param options.overallDeviation - s, 0 to 1
 * @param options.serviceabilityLoss - dPSI, 0.2 to 4
 * @returns modulus [pressure], the deviate used, what lies beyond the chart, cautions
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
export function requiredModulus(
  options: ReliabilityOptions & {
    readonly esals: number | string;
    readonly structuralNumber: number | string;
  },
): RequiredModulus {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const esals = reader.number(fields['esals'], ['esals'], ESALS).toNumber();
  const structure = reader
    .number(fields['structuralNumber'], ['structuralNumber'], STRUCTURE)
    .toNumber();
  const terms = readTerms(reader, fields);
  reader.finish();

  const left = Math.log10(esals) - constantTerm(terms) - structureTerm(structure, terms);
  const psi = modulusOf(left);
  const resilientModulus = fromNumber(psi, 'psi');
  const found = {
    resilientModulus,
    ...beside(terms, esals, psi),
  };
  return withWorking(found, () => [
    {
      title: 'Modulus that the ground must have',
      formula: `${EQUATION}, solved for M`,
      given: [
        given('W', 'passes of the standard axle', esals),
        given('SN', 'structural number', structure),
        ...givenTerms(terms),
      ],
      result: given('M', 'resilient modulus', resilientModulus),
      source: 'flexible-pavement-sheet',
    },
  ]);
}
