import type { FieldPath } from '../../errors.js';
import { custom, object, quantity, ratio } from '../../input/field.js';
import { isPlain } from '../../input/plain.js';
import { FRACTION, THICKNESS } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Values } from '../../input/shape.js';
import type { LengthInput } from '../../units/construct.js';
import { isDecimal } from '../../units/decimal.js';
import { exactOf } from '../../units/quantity.js';
import {
  divideRatios,
  ONE_RATIO,
  ratioToDecimal,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { formulaStep, given, type Step } from '../../working.js';

/**
 * Bulking of sand, measured in a straight-sided jar. Fill it with damp sand and read the height.
 * Flood the sand, stir, let it settle and read again. Flooded sand takes as much space as dry sand.
 */
export interface JarTestInput {
  /** Height of the damp sand [length], more than 0 and at most 5 m. */
  readonly damp: LengthInput;
  /** Height after flooding and settling [length], no more than `damp` and at least half of it. */
  readonly flooded: LengthInput;
}

const JAR_TEST = shapeOf<JarTestInput>()({
  damp: quantity(THICKNESS),
  flooded: quantity(THICKNESS),
});

/** Bulking of damp sand, and the jar test if there was one. Internal. */
export interface Bulking {
  readonly ratio: Ratio;
  readonly jar: Values<typeof JAR_TEST> | null;
}

/** No bulking. Internal. */
export const NO_BULKING: Bulking = Object.freeze({ ratio: ZERO_RATIO, jar: null });

/** A fraction, or the readings of a jar test. Internal. */
export const bulking = custom((reader: Reader, value: unknown, path: FieldPath): Bulking => {
  const isFraction = !isPlain(value) || isDecimal(value);
  if (isFraction) return { ratio: ratio(FRACTION).read(reader, value, path), jar: null };
  const before = reader.faults();
  const jar = jarTest.read(reader, value, path);
  return reader.faults() > before ? NO_BULKING : { ratio: bulkingOf(jar), jar };
});

const jarTest = object(JAR_TEST, (reader, { damp, flooded }, path) => {
  if (damp === undefined || flooded === undefined) return;
  const at = [...path, 'flooded'];
  if (flooded.compare(damp) > 0) {
    reader.fail(
      'OUT_OF_RANGE',
      at,
      'flooded sand cannot be higher than damp sand. Check which reading is which',
    );
  } else if (flooded.times(2).compare(damp) < 0) {
    reader.fail('OUT_OF_RANGE', at, 'no sand bulks to more than twice its height. Read it again');
  }
});

/** `(damp - flooded) / flooded` */
const bulkingOf = ({ damp, flooded }: Values<typeof JAR_TEST>): Ratio =>
  subtractRatios(divideRatios(exactOf(damp), exactOf(flooded)), ONE_RATIO);

/** The working of a jar test, if there was one. Internal. */
export const bulkingSteps = ({ ratio: bulked, jar }: Bulking): Step[] =>
  jar === null
    ? []
    : [
        formulaStep({
          title: 'Bulking of damp sand',
          formula: 'b = (h1 - h2) / h2',
          given: [given('h1', 'height damp', jar.damp), given('h2', 'height flooded', jar.flooded)],
          result: given('b', 'bulking', ratioToDecimal(bulked)),
          source: 'sand-bulking-course',
        }),
      ];
