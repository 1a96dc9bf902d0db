import { signOfRatio } from '../../units/ratio.js';
import { between, cross, isZero, minus, type PlanPoint } from '../../units/vector.js';

/** True for the four corners of a rectangle or a skewed rectangle, in order. Internal. */
export function areCorners(levels: readonly PlanPoint[]): boolean {
  const [a, b, c, d] = levels;
  if (levels.length !== 4 || !a || !b || !c || !d) return false;
  const isAskew = isZero(minus(between(a, b), between(d, c)));
  return isAskew && signOfRatio(cross(between(a, b), between(a, d))) !== 0;
}
