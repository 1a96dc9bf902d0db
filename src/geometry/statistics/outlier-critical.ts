import { fault } from '../../errors.js';
import { readNumber, readOptions } from '../read-options.js';
import { LEAST_TAIL, MOST_DEGREES, studentQuantile } from './student-quantile.js';

/** A row of stakes to search for outliers. */
export interface OutlierCriticalOptions {
  /** Number of stakes: a whole number from 4 to 10 000 003. */
  readonly count: number;
  /**
   * Probability of calling a stake of a good row an outlier, more than 0 and less than 1. Default:
   * 0.05 (common practice, no source).
   */
  readonly significance?: number;
}

/**
 * Number of standard errors that a stake may be off the line of the others before it counts as an
 * outlier, if every stake of a row is tested. It is Student's t for a tail of `significance / (2 n)`
 * (the share of one of n stakes, both sides) and `n - 1 - parameters` degrees of freedom. A line has
 * two parameters.
 *
 * @returns the critical value of the externally studentized residual
 * @throws `OUT_OF_RANGE`, `TOO_FEW`, `NOT_WHOLE`, `REQUIRED`, `WRONG_TYPE`, `NOT_FINITE`,
 *   `UNKNOWN_FIELD`
 * @source outlier-guidance
 * @example
 * outlierCritical({ count: 11 }).toFixed(2) //=> '3.90'
 */
export function outlierCritical(options: OutlierCriticalOptions): number {
  const fields = readOptions(options, ['count', 'significance']);
  const count = readNumber(fields['count'], ['count']);
  const significance =
    fields['significance'] === undefined
      ? SIGNIFICANCE
      : readNumber(fields['significance'], ['significance']);
  if (count < LEAST_COUNT) {
    throw fault('TOO_FEW', 'fewer than four stakes cannot show an outlier. Set more stakes', {}, [
      'count',
    ]);
  }
  if (!Number.isInteger(count)) throw fault('NOT_WHOLE', 'must be a whole number', {}, ['count']);
  if (count - 3 > MOST_DEGREES) {
    throw fault('OUT_OF_RANGE', `must be ${MOST_DEGREES + 3} or less`, {}, ['count']);
  }
  const tail = significance / (2 * count);
  if (!(tail >= LEAST_TAIL && significance < 1)) {
    throw fault('OUT_OF_RANGE', 'must be more than 0 and less than 1', {}, ['significance']);
  }
  return studentQuantile({ tail, degreesOfFreedom: count - 3 });
}

/** Common practice, no source. */
const SIGNIFICANCE = 0.05;
/** A line takes two of them, and one is left out. */
const LEAST_COUNT = 4;
