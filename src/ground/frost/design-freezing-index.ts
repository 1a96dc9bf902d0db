import { list, optional, whole } from '../../input/field.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';
import {
  asDegreeDays,
  degreeDays,
  type DegreeDays,
  type DegreeDaysInput,
} from './thermal-units.js';

/** Freezing indexes of past winters. */
export interface DesignFreezingIndexOptions {
  /** Index of each winter, the last one last, 1 to 200. */
  readonly winters: readonly DegreeDaysInput[];
  /**
   * Winters to average of the last 30, 1 to 10; more than 1 needs 30 winters. Default: 3; a building is
   * designed for the coldest.
   */
  readonly coldest?: number | string;
}

const COLDEST = { sign: 'positive', least: 1, most: 10, example: '3' } as const;

const OPTIONS = shapeOf<DesignFreezingIndexOptions>()({
  winters: list(degreeDays, { of: 'winters', most: 200 }),
  coldest: optional(whole(COLDEST), 3),
});

/** How cold a winter to design for. */
export interface DesignFreezingIndex extends Worked {
  /** The index. */
  readonly index: DegreeDays;
  /** Winters that it is taken from: the last 30, or the last 10. */
  readonly winters: number;
  /** Winters averaged. */
  readonly averaged: number;
  /** True for fewer than 10 winters: too few for either rule. */
  readonly extrapolated: boolean;
}

/**
 * Design freezing index: the mean of the three coldest of the last 30 winters; where there are no 30,
 * the coldest of the last 10. With fewer than 10 winters the coldest is given and `extrapolated` is
 * true.
 *
 * @param options - see {@link DesignFreezingIndexOptions}
 * @returns index in C-days, how many winters it is from
 * @throws `EMPTY_LIST`, `TOO_MANY`, `TOO_FEW`, `NOT_WHOLE`, `REQUIRED`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source freezing-index-terms
 * @source freezing-index-course
 * @example
 * const winters = [300, 420, 380, 250, 610, 330, 290, 400, 350, 310].map((value) => {
 *   return { value, unit: 'C-days' } as const;
 * });
 * designFreezingIndex({ winters }).index.value //=> 610
 */
export function designFreezingIndex(options: DesignFreezingIndexOptions): DesignFreezingIndex {
  const { winters, coldest } = readOptions(options, OPTIONS, checkCount);
  const isLong = winters.length >= LONG;
  const used = winters.slice(isLong ? -LONG : -SHORT);
  const averaged = isLong ? coldest : 1;
  const top = [...used].sort((a, b) => b - a).slice(0, averaged);
  const index = top.reduce((sum, value) => sum + value, 0) / averaged;
  const found = {
    index: asDegreeDays(index),
    winters: used.length,
    averaged,
    extrapolated: winters.length < SHORT,
  };
  return withWorking(found, () => [
    formulaStep({
      title: 'Freezing index to design for',
      formula: 'I = mean(F)',
      given: [
        given(
          'F',
          `freezing index of the ${averaged === 1 ? 'coldest winter' : 'coldest winters'}, in C-days`,
          top,
        ),
      ],
      result: given('I', 'design freezing index, in C-days', index),
      source: 'freezing-index-terms',
    }),
  ]);
}

const LONG = 30;
const SHORT = 10;

/** Without 30 winters the coldest one is taken, so a mean of several has no effect. */
const checkCount: Check<typeof OPTIONS> = (reader, { winters, coldest }, path, raw) => {
  if (raw['coldest'] === undefined || coldest === undefined || coldest === 1) return;
  if (winters === undefined || winters.length >= LONG) return;
  const message = `a mean of ${coldest} winters needs ${LONG}, got ${winters.length}. Leave out coldest`;
  reader.fail('TOO_FEW', [...path, 'winters'], message, { got: winters.length, least: LONG });
};
