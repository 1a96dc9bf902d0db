import { errorFunction } from '../../geometry/statistics/error-function.js';

/**
 * Coefficient of the modified Berggren depth in closed form: `1 / sqrt(1 + mu (alpha + 0.5))`. It
 * is 1 where the heat of the soil counts for nothing. Internal.
 */
export const closedCoefficient = (fusion: number, thermal: number): number =>
  1 / Math.sqrt(1 + fusion * (thermal + 0.5));

/**
 * The same coefficient for frozen and unfrozen soil that conduct and hold heat alike, from the
 * conduction of heat in both zones: `lambda = c sqrt(2 / mu)`, c solving
 * `e^(-c^2) / erf(c) - alpha e^(-c^2) / erfc(c) = sqrt(pi) c / mu`. Internal.
 */
export function twoZoneCoefficient(fusion: number, thermal: number): number {
  if (fusion < 1e-9) return 1;
  let low = 0;
  let high = Math.sqrt(fusion / 2);
  for (let k = 0; k < 100; k += 1) {
    const middle = (low + high) / 2;
    if (isTooSmall(middle, fusion, thermal)) low = middle;
    else high = middle;
  }
  return ((low + high) / 2) * Math.sqrt(2 / fusion);
}

/** Whether more heat goes up than the freezing and the ground below give. */
function isTooSmall(c: number, fusion: number, thermal: number): boolean {
  const erf = errorFunction(c);
  if (erf === 0) return true;
  const gauss = Math.exp(-c * c);
  return gauss / erf - (thermal * gauss) / (1 - erf) > (Math.sqrt(Math.PI) * c) / fusion;
}
