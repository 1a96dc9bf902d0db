import { float, optional } from '../input/field.js';
import type { Values } from '../input/shape.js';
import {
  DEVIATE,
  OVERALL_DEVIATION,
  RELIABILITY,
  SERVICEABILITY_LOSS,
} from '../input/structure-ranges.js';
import { normalDeviate } from '../geometry/statistics/normal-deviate.js';
import { FLEXIBLE_CHART, FLEXIBLE_EQUATION } from '../sources/flexible-pavements.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { Pressure } from '../units/quantity.js';
import {
  formulaStep,
  given,
  type Step,
  type StepInput,
  withWorking,
  type Worked,
} from '../working.js';
import { onePsi } from './printed-units.js';

/** Reliability and wear of the design. */
export interface ReliabilityOptions {
  /** Reliability in percent, 50 to 99.99. */
  readonly reliability: number | string;
  /**
   * Standard normal deviate to use instead of the one for the reliability, such as the value of a
   * printed table: -4 to 0. Default: the value of the normal distribution, rounded to three places.
   */
  readonly standardNormalDeviate?: number | string;
  /** Standard deviation of log10 of traffic, 0 to 1; 0.40 to 0.50 is usual for asphalt (from memory). */
  readonly overallDeviation: number | string;
  /** Loss of serviceability: when new less at the end of the design life, 0.2 to 4. */
  readonly serviceabilityLoss: number | string;
}

/** The fields of {@link ReliabilityOptions}. Internal. */
export const RELIABILITY_FIELDS = {
  reliability: float(RELIABILITY),
  standardNormalDeviate: optional(float(DEVIATE)),
  overallDeviation: float(OVERALL_DEVIATION),
  serviceabilityLoss: float(SERVICEABILITY_LOSS),
} as const;

/** The terms common to all forms of the equation. Internal. */
export interface Terms {
  readonly reliability: number;
  /** 0 or negative. */
  readonly deviate: number;
  readonly overallDeviation: number;
  readonly serviceabilityLoss: number;
}

/** A figure beyond the chart of the equation. */
export type BeyondChart = 'esals' | 'resilient-modulus';

/** Fields common to all three forms of the equation. */
export interface EquationResult extends Cautioned, Worked {
  /** The deviate used, 0 or negative: the one given, or the one for the reliability. */
  readonly standardNormalDeviate: number;
  /** Figures beyond the chart that is printed with the equation; empty for none. */
  readonly beyondChart: readonly BeyondChart[];
}

const inWords = (name: keyof typeof FLEXIBLE_EQUATION): string =>
  FLEXIBLE_EQUATION[name].value.replace('-', '- ');

/** What the structure adds to log10 of the traffic, with the constant beside it. */
const STRUCTURE = [
  `${inWords('structureFactor')} * log10(SN + 1) ${inWords('constant')}`,
  `+ log10(dPSI / ${inWords('lossRange')})`,
  `/ (${inWords('lossConstant')} + ${inWords('lossFactor')} / (SN + 1)^${inWords('lossPower')})`,
].join(' ');

/** The equation for the traffic. */
const TRAFFIC_FORMULA = [
  `W = 10^(Z * s + ${STRUCTURE}`,
  `+ ${inWords('modulusFactor')} * log10(M / u) ${inWords('modulusConstant')})`,
].join(' ');

/** The equation solved for the modulus. Internal. */
export const MODULUS_FORMULA = [
  `M = u * 10^((log10(W) - Z * s - (${STRUCTURE})`,
  `- (${FLEXIBLE_EQUATION.modulusConstant.value})) / ${inWords('modulusFactor')})`,
].join(' ');

const figure = (name: keyof typeof FLEXIBLE_EQUATION): number =>
  Number(FLEXIBLE_EQUATION[name].value);

/** Adds the deviate for the reliability to the options. Internal. */
export function termsOf(read: Values<typeof RELIABILITY_FIELDS>): Terms {
  const deviate = read.standardNormalDeviate ?? -normalDeviate(read.reliability);
  return { ...read, deviate: deviate === 0 ? 0 : deviate };
}

/** Term of the structural number in the logarithm of traffic. Internal. */
export function structureTerm(structuralNumber: number, { serviceabilityLoss }: Terms): number {
  const more = Math.log10(structuralNumber + 1);
  // (SN + 1)^-5.19, by its logarithm
  const thinner = figure('lossFactor') * Math.exp(-figure('lossPower') * more * Math.LN10);
  const lost = Math.log10(serviceabilityLoss / figure('lossRange'));
  return figure('structureFactor') * more + lost / (figure('lossConstant') + thinner);
}

/** Terms that do not depend on the structural number. Internal. */
export const constantTerm = ({ deviate, overallDeviation }: Terms): number =>
  deviate * overallDeviation + figure('constant') + figure('modulusConstant');

/** Term of the modulus [psi]. Internal. */
export const modulusTerm = (psi: number): number => figure('modulusFactor') * Math.log10(psi);

/** Traffic by the equation. Internal. */
export function trafficOf(structuralNumber: number, psi: number, terms: Terms): number {
  const log = constantTerm(terms) + structureTerm(structuralNumber, terms) + modulusTerm(psi);
  return Math.exp(log * Math.LN10);
}

/** The modulus [psi] for a term. Internal. */
export const modulusOf = (term: number): number =>
  Math.exp((term / figure('modulusFactor')) * Math.LN10);

/** The traffic of a structural number and a modulus. Internal. */
export interface Crossing {
  readonly structuralNumber: number;
  readonly resilientModulus: Pressure;
  readonly esals: number;
}

/** Inputs and answer of one form of the equation. Internal. */
export interface Solution {
  readonly terms: Terms;
  readonly esals: number;
  /** Resilient modulus. */
  readonly psi: number;
}

/** An answer with its common fields; the steps are built when asked for. Internal. */
export function solved<T extends object>(
  answer: T,
  { terms, esals, psi }: Solution,
  makeSteps: () => readonly Step[],
): Readonly<T> & Readonly<EquationResult> {
  const all = {
    ...answer,
    standardNormalDeviate: terms.deviate,
    beyondChart: beyondChart(esals, psi),
    cautions: cautionsFor('pavement-design'),
  };
  return withWorking(all, makeSteps);
}

/** The common terms in the working. Internal. */
export const givenTerms = (terms: Terms): StepInput[] => [
  given('Z', `standard normal deviate, reliability ${terms.reliability} percent`, terms.deviate),
  given('s', 'overall deviation', terms.overallDeviation),
  given('dPSI', 'loss of serviceability', terms.serviceabilityLoss),
];

/** The step that gives the traffic of a structural number and a modulus. Internal. */
export const trafficStep = (
  title: string,
  terms: Terms,
  { structuralNumber, resilientModulus, esals }: Crossing,
): Step =>
  formulaStep({
    title,
    formula: TRAFFIC_FORMULA,
    given: [
      given('SN', 'structural number', structuralNumber),
      ...givenTerms(terms),
      given('M', 'resilient modulus', resilientModulus),
      onePsi(),
    ],
    result: given('W', 'passes of the standard axle', esals),
    source: 'flexible-pavement-sheet',
  });

function beyondChart(esals: number, psi: number): BeyondChart[] {
  const outside = (value: number, least: { value: string }, most: { value: string }): boolean =>
    value < Number(least.value) || value > Number(most.value);
  const { minimumEsals, maximumEsals, minimumModulus, maximumModulus } = FLEXIBLE_CHART;
  return [
    ...(outside(esals, minimumEsals, maximumEsals) ? (['esals'] as const) : []),
    ...(outside(psi, minimumModulus, maximumModulus) ? (['resilient-modulus'] as const) : []),
  ];
}
