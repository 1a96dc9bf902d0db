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
  type Terms,
} from './flexible-equation.js';
import { ESALS, MOST_STRUCTURE } from './limits.js';

/** Structural number that a traffic asks for. */
export interface RequiredStructuralNumber extends EquationResult {
  /** Per inch; 0 where the ground alone carries the traffic. */
  readonly structuralNumber: number;
}

/**
 * Structural number of a flexible pavement that carries a traffic: the equation of
 * {@link allowableEsals} solved for SN, to the last digit of a float. Over a base or a sub-base, put
 * in its modulus for that of the subgrade.
 *
 * @param options.esals - passes of the standard axle over the life, more than 0
 * @param options.reliability - percent, 50 to 99.99
 * @param options.standardNormalDeviate - Z in the place of that of the reliability, -4 to 0
 * @param options.overallDeviation - s, 0 to 1
 * @param options.serviceabilityLoss - dPSI, 0.2 to 4
 * @param options.resilientModulus - M of what lies below [pressure]
 * @returns structural number, the deviate used, what lies beyond the chart, cautions
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
  options: EquationOptions & { readonly esals: number | string },
): RequiredStructuralNumber {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const esals = reader.number(fields['esals'], ['esals'], ESALS).toNumber();
  const terms = readTerms(reader, fields);
  const modulus = readModulus(reader, fields);
  reader.finish();

  const psi = modulus.toNumber('psi');
  const asked = Math.log10(esals) - constantTerm(terms) - modulusTerm(psi);
  if (structureTerm(MOST_STRUCTURE, terms) < asked) {
    const words = `so much traffic would ask for a structural number over ${MOST_STRUCTURE}: a slip of a digit or of a unit?`;
    reader.fail('OUT_OF_RANGE', ['esals'], words, { most: MOST_STRUCTURE });
    reader.finish();
  }
  const structuralNumber = solve(asked, terms);
  const found = {
    structuralNumber,
    ...beside(terms, esals, psi),
  };
  return withWorking(found, () => [
    {
      title: 'Structural number that the traffic asks for',
      formula: `${EQUATION}, solved for SN`,
      given: [
        given('W', 'passes of the standard axle', esals),
        ...givenTerms(terms),
        given('M', 'resilient modulus, in psi', modulus),
      ],
      result: given('SN', 'structural number', structuralNumber),
      source: 'flexible-pavement-sheet',
    },
  ]);
}

/** Halves the span until no float is left in it: the term only rises. */
function solve(asked: number, terms: Terms): number {
  let [low, high] = [0, MOST_STRUCTURE];
  if (structureTerm(low, terms) >= asked) return 0;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return high;
    if (structureTerm(middle, terms) < asked) low = middle;
    else high = middle;
  }
}
