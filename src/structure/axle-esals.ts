import { number, text } from '../input/field.js';
import { shapeOf, type Values } from '../input/shape.js';
import { AXLE_FACTOR, AXLES_PER_DAY } from '../input/structure-ranges.js';
import { ZERO, type Decimal } from '../units/decimal.js';
import { formulaStep, given, type Step } from '../working.js';

/** Axles or trucks of one kind. */
export interface AxleCountInput {
  /** Name of the kind, such as `20 kip single`. */
  readonly name: string;
  /** Number per day, 0 to 1 000 000. */
  readonly perDay: number | string;
  /** Damage of one pass over that of the standard axle, 0 to 10 000, from the tables of a guide. */
  readonly factor: number | string;
}

/** The fields of {@link AxleCountInput}. Internal. */
export const AXLE_COUNT = shapeOf<AxleCountInput>()({
  name: text(),
  perDay: number(AXLES_PER_DAY),
  factor: number(AXLE_FACTOR),
});

type AxleCount = Values<typeof AXLE_COUNT>;

/** Axles or trucks of one kind, in passes of the standard axle. */
export interface AxleEsals {
  /** Name of the kind. */
  readonly name: string;
  /** Number per day. */
  readonly perDay: number;
  /** Damage of one pass over that of the standard axle. */
  readonly factor: number;
  /** Passes of the standard axle per day with the same damage. */
  readonly esals: number;
}

const esalsOf = ({ perDay, factor }: AxleCount): Decimal => perDay.times(factor);

/** Passes of the standard axle per day with the damage of all axles. Internal. */
export const sumOfEsals = (axles: readonly AxleCount[]): Decimal =>
  axles.map(esalsOf).reduce((sum, esals) => sum.plus(esals), ZERO);

/** The damage of one kind of axle. Internal. */
export const axleEsals = (axle: AxleCount): AxleEsals => ({
  name: axle.name,
  perDay: axle.perDay.toNumber(),
  factor: axle.factor.toNumber(),
  esals: esalsOf(axle).toNumber(),
});

const namesOf = (axles: readonly AxleEsals[]): string => axles.map(({ name }) => name).join(', ');

/** The working of a day's traffic. Internal. */
export const dayStep = (axles: readonly AxleEsals[], perDay: number): Step =>
  formulaStep({
    title: 'Traffic of a day',
    formula: 'E = sum(n[i] * f[i])',
    given: [
      given(
        'n',
        `number a day: ${namesOf(axles)}`,
        axles.map(({ perDay: number }) => number),
      ),
      given(
        'f',
        `factor: ${namesOf(axles)}`,
        axles.map(({ factor }) => factor),
      ),
    ],
    result: given('E', 'passes of the standard axle a day', perDay),
    source: 'flexible-pavement-guide',
  });
