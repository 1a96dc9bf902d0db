import { exactOf, fromSI, type Length, type Slope } from '../../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../../../units/ratio.js';
import { between, cross, type Vector } from '../../../units/vector.js';
import type { SpotHeight } from '../../schema/spot-heights-field.js';

/** A plane: its level at x = y = 0 and its slopes. Internal. */
export interface ExactPlane {
  readonly z0: Length;
  readonly gradeX: Slope;
  readonly gradeY: Slope;
}

interface Step {
  readonly across: Vector;
  readonly rise: Ratio;
}

/**
 * The exact plane through all levels; `surface` if they form a surface but not a plane, `line` if they
 * are on one line in plan. Internal.
 */
export function planeOf(levels: readonly SpotHeight[]): ExactPlane | 'surface' | 'line' {
  const [first] = levels;
  if (first === undefined) return 'line';
  const steps = levels.map((level): Step => ({
    across: between(first, level),
    rise: exactOf(level.z.minus(first.z)),
  }));
  const ahead = steps.find(({ across: { x, y } }) => signOfRatio(x) !== 0 || signOfRatio(y) !== 0);
  const aside = steps.find(
    ({ across }) => ahead !== undefined && signOfRatio(cross(ahead.across, across)) !== 0,
  );
  if (ahead === undefined || aside === undefined) return 'line';
  const { x, y } = slopesOf(ahead, aside);
  const isFlat = steps.every(
    ({ across, rise }) =>
      compareRatios(addRatios(multiplyRatios(x, across.x), multiplyRatios(y, across.y)), rise) ===
      0,
  );
  if (!isFlat) return 'surface';
  const [gradeX, gradeY] = [fromSI('slope', x), fromSI('slope', y)];
  return { z0: first.z.minus(first.x.times(gradeX)).minus(first.y.times(gradeY)), gradeX, gradeY };
}

/** The slopes along x and y of the plane through three levels. */
function slopesOf(a: Step, b: Step): Vector {
  const whole = cross(a.across, b.across);
  const share = (one: Ratio, other: Ratio): Ratio =>
    divideRatios(subtractRatios(multiplyRatios(a.rise, other), multiplyRatios(b.rise, one)), whole);
  return {
    x: share(a.across.y, b.across.y),
    y: negateRatio(share(a.across.x, b.across.x)),
  };
}
