/** Engines may differ in the last digit of a sine: less than this is no difference. */
const HAIR = 1e-9;

/** True where two numbers differ by no more than float noise. Internal. */
export const isNear = (a: number, b: number): boolean =>
  Math.abs(a - b) <= HAIR * Math.max(1, Math.abs(a), Math.abs(b));
