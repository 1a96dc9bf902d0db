import { printed, printedNumber } from './reference-value.js';

const inEquation = (value: string) => printedNumber(value, 'flexible-pavement-sheet');
const onChart = (value: string) => printedNumber(value, 'flexible-pavement-guide');

/**
 * The figures of the equation between traffic and structural number. Source:
 * `flexible-pavement-sheet`, a working sheet that prints the equation; the guide itself was not read.
 * Worked examples that print their answer to eight digits come out with them.
 */
export const FLEXIBLE_EQUATION = Object.freeze({
  structureFactor: inEquation('9.36'),
  constant: inEquation('-0.20'),
  lossRange: inEquation('2.7'),
  lossConstant: inEquation('0.40'),
  lossFactor: inEquation('1094'),
  lossPower: inEquation('5.19'),
  modulusFactor: inEquation('2.32'),
  modulusConstant: inEquation('-8.07'),
});

/** Where the chart of the equation ends. Source: `flexible-pavement-guide`, from memory. */
export const FLEXIBLE_CHART = Object.freeze({
  minimumEsals: onChart('50000'),
  maximumEsals: onChart('50000000'),
  minimumModulus: printed('1000', 'psi', 'flexible-pavement-guide'),
  maximumModulus: printed('40000', 'psi', 'flexible-pavement-guide'),
});

/**
 * Resilient modulus [psi] over the bearing ratio [percent], for fine soils, and the ratio up to which
 * it holds. Source: `nomograph-notes`. The limit of 10 is from memory: `flexible-pavement-sheet` ends
 * the rule below 5 and goes on with 2555 CBR^0.64, which makes 11 153 psi of 15 000 at 10.
 */
export const MODULUS_PER_CBR = Object.freeze({
  perPercent: printed('1500', 'psi', 'nomograph-notes'),
  maximumCbr: printedNumber('10', 'memory'),
});

/**
 * Layer coefficient per inch of unbound stone by its modulus E [psi]: `a = factor log10(E) +
 * constant`. Source: `layer-coefficient-sheet`.
 */
export const LAYER_COEFFICIENTS = Object.freeze({
  base: Object.freeze({
    factor: printedNumber('0.249', 'layer-coefficient-sheet'),
    constant: printedNumber('-0.977', 'layer-coefficient-sheet'),
  }),
  'sub-base': Object.freeze({
    factor: printedNumber('0.227', 'layer-coefficient-sheet'),
    constant: printedNumber('-0.839', 'layer-coefficient-sheet'),
  }),
});
