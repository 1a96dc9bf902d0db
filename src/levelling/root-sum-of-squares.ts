import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { addRatios, multiplyRatios, ZERO_RATIO } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';

/**
 * Random errors together, `sqrt(sum of squares)`: exact if the root is, else to 40 digits.
 * Internal.
 */
export const rootSumOfSquares = (errors: readonly Length[]): Length =>
  fromSI(
    'length',
    squareRoot(
      errors
        .map(exactOf)
        .reduce((sum, one) => addRatios(sum, multiplyRatios(one, one)), ZERO_RATIO),
    ),
  );
