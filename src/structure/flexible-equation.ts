import type { Reader } from '../input/reader.js';
import { FLEXIBLE_CHART, FLEXIBLE_EQUATION } from '../sources/flexible-pavements.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { PressureInput } from '../units/construct.js';
import type { Pressure } from '../units/quantity.js';
import { given, type StepInput, type Worked } from '../working.js';
import { DEVIATE, DEVIATION, LOSS, MODULUS, RELIABILITY } from './limits.js';
import { normalDeviate } from './normal-deviate.js';

/** How sure the pavement is to last, and how much it may lose until then. */
export interface ReliabilityOptions {
  /** Percent, 50 to 99.99. */
  readonly reliability: number | string;
  /**
   * The deviate to use instead of that of the reliability, such as the value of a printed table: 0 or
   * negative. Default: the distribution's own value, rounded to three places.
   */
  readonly standardNormalDeviate?: number | string;
  /** Of the logarithm of the traffic; 0.40 to 0.50 is usual for asphalt (from memory). */
  readonly overallDeviation: number | string;
  /** Serviceability at first less that at the end, 0.2 to 4. */
  readonly serviceabilityLoss: number | string;
}

/** Reliability and loss, read; the deviate is 0 or negative. Internal. */
export interface Terms {
  readonly reliability: number;
  readonly deviate: number;
  readonly deviation: number;
  readonly loss: number;
}

/** Where an answer lies beyond the chart of the equation. */
export type BeyondChart = 'esals' | 'resilient-modulus';

/** What every form of the equation tells beside its answer. */
export interface EquationResult extends Worked {
  /** The deviate used: that of the reliability or the one given, 0 or negative. */
  readonly standardNormalDeviate: number;
  readonly beyondChart: readonly BeyondChart[];
  readonly cautions: readonly Caution[];
}

const inWords = (name: keyof typeof FLEXIBLE_EQUATION): string =>
  FLEXIBLE_EQUATION[name].value.replace('-', '- ');

/** The equation in words. Internal. */
export const EQUATION = [
  `log10 W = Z s + ${inWords('structureFactor')} log10(SN + 1) ${inWords('constant')}`,
  `+ log10(dPSI / ${inWords('lossRange')})`,
  `/ (${inWords('lossConstant')} + ${inWords('lossFactor')} / (SN + 1)^${inWords('lossPower')})`,
  `+ ${inWords('modulusFactor')} log10 M ${inWords('modulusConstant')}`,
].join(' ');

const figure = (name: keyof typeof FLEXIBLE_EQUATION): number =>
  Number(FLEXIBLE_EQUATION[name].value);

/** Reads what all forms of the equation need. Internal. */
export function readTerms(reader: Reader, fields: Readonly<Record<string, unknown>>): Terms {
  const read = (name: string, rule: Parameters<Reader['number']>[2]): number =>
    reader.number(fields[name], [name], rule).toNumber();
  const reliability = read('reliability', RELIABILITY);
  const deviation = read('overallDeviation', DEVIATION);
  const loss = read('serviceabilityLoss', LOSS);
  const deviate =
    fields['standardNormalDeviate'] === undefined
      ? -normalDeviate(reliability)
      : read('standardNormalDeviate', DEVIATE);
  return { reliability, deviate: deviate === 0 ? 0 : deviate, deviation, loss };
}

/** What the structural number adds to the logarithm of the traffic. Internal. */
export function structureTerm(structuralNumber: number, { loss }: Terms): number {
  const more = Math.log10(structuralNumber + 1);
  // (SN + 1)^-5.19, by its logarithm
  const thinner = figure('lossFactor') * Math.exp(-figure('lossPower') * more * Math.LN10);
  const lost = Math.log10(loss / figure('lossRange'));
  return figure('structureFactor') * more + lost / (figure('lossConstant') + thinner);
}

/** What is the same whatever the structural number. Internal. */
export const constantTerm = ({ deviate, deviation }: Terms): number =>
  deviate * deviation + figure('constant') + figure('modulusConstant');

/** What the modulus [psi] adds. Internal. */
export const modulusTerm = (psi: number): number => figure('modulusFactor') * Math.log10(psi);

/** The modulus [psi] that adds so much. Internal. */
export const modulusOf = (term: number): number =>
  Math.exp((term / figure('modulusFactor')) * Math.LN10);

/** Reads the modulus of what lies below. Internal. */
export const readModulus = (reader: Reader, fields: Readonly<Record<string, unknown>>): Pressure =>
  reader.quantity('pressure', fields['resilientModulus'], ['resilientModulus'], MODULUS);

/** What stands beside an answer for a traffic on a modulus [psi]. Internal. */
export const beside = (terms: Terms, esals: number, psi: number) => ({
  standardNormalDeviate: terms.deviate,
  beyondChart: beyondChart(esals, psi),
  cautions: cautionsFor('pavement-design'),
});

/** Which of the two lie beyond the chart. */
function beyondChart(esals: number, psi: number): BeyondChart[] {
  const outside = (value: number, least: { value: string }, most: { value: string }): boolean =>
    value < Number(least.value) || value > Number(most.value);
  const { leastEsals, mostEsals, leastModulus, mostModulus } = FLEXIBLE_CHART;
  return [
    ...(outside(esals, leastEsals, mostEsals) ? (['esals'] as const) : []),
    ...(outside(psi, leastModulus, mostModulus) ? (['resilient-modulus'] as const) : []),
  ];
}

/** The terms as they stand in the working. Internal. */
export const givenTerms = ({ reliability, deviate, deviation, loss }: Terms): StepInput[] => [
  given('R', 'reliability, percent', reliability),
  given('Z', 'standard normal deviate', deviate),
  given('s', 'overall deviation', deviation),
  given('dPSI', 'loss of serviceability', loss),
];

/** Options that every form of the equation takes, with the modulus of the ground. */
export interface EquationOptions extends ReliabilityOptions {
  /** Effective resilient modulus of the subgrade [pressure]. */
  readonly resilientModulus: PressureInput;
}
