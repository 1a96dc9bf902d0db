import { makeReader } from '../input/reader.js';
import { given, withWorking } from '../working.js';
import {
  beside,
  constantTerm,
  EQUATION,
  givenTerms,
  modulusTerm,
  readModulus,
  readTerms,
  structureTerm,
  type EquationOptions,
  type EquationResult,
} from './flexible-equation.js';
import { STRUCTURE } from './limits.js';

/** Traffic that a flexible pavement carries until it is worn. */
export interface AllowableEsals extends EquationResult {
  /** Passes of the standard axle of 18 000 lb. */
  readonly esals: number;
}

/**
 * Passes of the standard axle that a flexible pavement of a structural number carries:
 * `log10 W = Z s + 9.36 log10(SN + 1) - 0.20 + log10(dPSI / 2.7) / (0.40 + 1094 / (SN + 1)^5.19) +
 * 2.32 log10 M - 8.07`, M in psi. In floats, to `1e-13` of the traffic. The deviate Z is that of the
 * normal distribution, rounded to three places as tables print it.
 *
 * @param options.structuralNumber - SN, per inch, more than 0 and at most 30; see
 *   {@link structuralNumber}
 * @param options.reliability - percent, 50 to 99.99
 * @param options.standardNormalDeviate - Z in the place of that of the reliability, -4 to 0
 * @param options.overallDeviation - s, 0 to 1
 * @param options.serviceabilityLoss - dPSI, 0.2 to 4
 * @param options.resilientModulus - M of the subgrade [pressure]
 * @returns passes of the standard axle, the deviate used, what lies beyond the chart, cautions
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
export function allowableEsals(
  options: EquationOptions & { readonly structuralNumber: number | string },
): AllowableEsals {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const structure = reader
    .number(fields['structuralNumber'], ['structuralNumber'], STRUCTURE)
    .toNumber();
  const terms = readTerms(reader, fields);
  const modulus = readModulus(reader, fields);
  reader.finish();

  const psi = modulus.toNumber('psi');
  const log = constantTerm(terms) + structureTerm(structure, terms) + modulusTerm(psi);
  const esals = Math.exp(log * Math.LN10);
  const found = {
    esals,
    ...beside(terms, esals, psi),
  };
  return withWorking(found, () => [
    {
      title: 'Traffic that the pavement carries',
      formula: EQUATION,
      given: [
        given('SN', 'structural number', structure),
        ...givenTerms(terms),
        given('M', 'resilient modulus, in psi', modulus),
      ],
      result: given('W', 'passes of the standard axle', esals),
      source: 'flexible-pavement-sheet',
    },
  ]);
}
