/**
 * The error function of a number from 0 up, by its series
 * `erf(x) = 2 / sqrt(pi) e^(-x^2) (x + 2 x^3 / 3 + 4 x^5 / 15 + ...)`, to `1e-15`. Internal.
 */
export function errorFunction(x: number): number {
  if (x > 6) return 1;
  let term = x;
  let sum = x;
  for (let k = 3; term > 1e-17 * sum; k += 2) {
    term *= (2 * x * x) / k;
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}
