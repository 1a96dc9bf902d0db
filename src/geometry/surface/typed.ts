/** An entry of a list of floats that is known to be there. Internal. */
export const at = (list: Float64Array, index: number): number => list[index] ?? 0;
