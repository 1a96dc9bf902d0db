import { printed, printedNumber } from './reference-value.js';

const fromMemory = (value: string) => printedNumber(value, 'flexible-pavement-guide', 'memory');

/**
 * The figures of the equation between traffic and structural number. Source:
 * `flexible-pavement-guide`, from memory; worked examples that print their answer to eight digits come
 * out with them.
 */
export const FLEXIBLE_EQUATION = Object.freeze({
  structureFactor: fromMemory('9.36'),
  constant: fromMemory('-0.20'),
  lossRange: fromMemory('2.7'),
  lossConstant: fromMemory('0.40'),
  lossFactor: fromMemory('1094'),
  lossPower: fromMemory('5.19'),
  modulusFactor: fromMemory('2.32'),
  modulusConstant: fromMemory('-8.07'),
});

/** Where the chart of the equation ends. Source: `flexible-pavement-guide`, from memory. */
export const FLEXIBLE_CHART = Object.freeze({
  leastEsals: fromMemory('50000'),
  mostEsals: fromMemory('50000000'),
  leastModulus: printed('1000', 'psi', 'flexible-pavement-guide', 'memory'),
  mostModulus: printed('40000', 'psi', 'flexible-pavement-guide', 'memory'),
});

/**
 * Resilient modulus [psi] over the bearing ratio [percent], for fine soils, and the ratio up to which
 * it holds. Source: `nomograph-notes`; the limit is from memory.
 */
export const MODULUS_PER_CBR = Object.freeze({
  perPercent: printed('1500', 'psi', 'nomograph-notes'),
  mostCbr: printedNumber('10', 'memory', 'memory'),
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
