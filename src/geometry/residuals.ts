import { fault } from '../errors.js';
import { isFloats } from './floats.js';
import { readOptions } from './read-options.js';

/** Optional array for the residuals of a bulk fit. */
export interface ResidualOptions {
  /**
   * Array to write the residuals [metres] into, one float for each point. It saves a new array for
   * every fit. It must not share its memory with the points. Default: none.
   */
  readonly residualsInto?: Float64Array;
}

/** The array that you gave for residuals, if any. Internal. */
export function givenResiduals(count: number, options: unknown): Float64Array | undefined {
  if (options === undefined) return undefined;
  const { residualsInto } = readOptions(options, ['residualsInto']);
  if (residualsInto === undefined) return undefined;
  if (isFloats(residualsInto) && residualsInto.length === count) return residualsInto;
  throw fault('WRONG_TYPE', `expected a Float64Array of ${count}, one float for each point`, {}, [
    'residualsInto',
  ]);
}

/** The array that you gave for residuals, or a new one. Internal. */
export const residualsFor = (count: number, options: unknown): Float64Array =>
  givenResiduals(count, options) ?? new Float64Array(count);
