/** True for a `Float64Array`, also one that another frame or test runner has made. Internal. */
export const isFloats = (value: unknown): value is Float64Array =>
  ArrayBuffer.isView(value) &&
  (value instanceof Float64Array ||
    Object.prototype.toString.call(value) === '[object Float64Array]');

/** An entry of a list of floats that is known to be there. Internal. */
export const at = (list: Float64Array, index: number): number => list[index] ?? Number.NaN;

/** Coordinates and distances [metres] beyond this would leave the range of floats. Internal. */
export const FAR = 1e100;
/** Products of smaller differences [metres] would come to nothing, and exact predicates fail. Internal. */
const LEAST = 1e-100;

/** True for a coordinate that can be multiplied without loss: 0, or of a size within limits. Internal. */
export function isInRange(value: number, most = FAR): boolean {
  const size = Math.abs(value);
  return size <= most && (size >= LEAST || size === 0);
}
