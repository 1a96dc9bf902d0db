/**
 * The standard normal deviate that a share of all cases (percent, 50 or more) stays below, rounded to
 * three places. Printed tables of reliability are sometimes off by one in the last place, and by more
 * at 99.99 percent. It uses the series for the area,
 * `A(z) = 1/2 + phi(z) (z + z^3 / 3 + z^5 / 15 + ...)`. Internal.
 */
export function normalDeviate(percent: number): number {
  const share = percent / 100;
  let low = 0;
  let high = 6;
  for (let k = 0; k < 60; k += 1) {
    const middle = (low + high) / 2;
    if (areaBelow(middle) < share) low = middle;
    else high = middle;
  }
  return Math.round(1000 * low) / 1000;
}

function areaBelow(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > 1e-17 * sum; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}
