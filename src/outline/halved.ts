import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  HALF_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { minus, plus, scaled, turnedRight, type Vector } from '../units/vector.js';
import { arcOf, otherLeg } from './arc.js';
import { settled, to40Digits } from './corner.js';
import { forEachEdge, type Ring } from './ring.js';

/** A ring with the paving on its left and each arc cut into two equal arcs, to 40 digits. Internal. */
export function halved(ring: Ring): Ring {
  const points: Vector[] = [];
  const bulges: (Ratio | undefined)[] = [];
  forEachEdge(ring.points, (a, b, edge) => {
    const bulge = ring.bulges?.[edge];
    points.push(a);
    if (bulge === undefined) {
      bulges.push(undefined);
      return;
    }
    const half = halfOf(a, b, bulge);
    points.push(half.middle);
    bulges.push(half.bulge, half.bulge);
  });
  return { points, bulges };
}

/** Half an arc: `M' = R - sqrt(R^2 - (C^2 / 4 + M^2) / 4)`. */
function halfOf(a: Vector, b: Vector, bulge: Ratio) {
  const along = minus(b, a);
  const { chord, height, radius } = arcOf(a, b, bulge);
  const right = scaled(turnedRight(along), divideRatios(bulge, chord));
  const square = multiplyRatios(chord, chord);
  const leg = addRatios(divideRatios(square, wholeRatio(4)), multiplyRatios(height, height));
  const toChord = otherLeg(radius, divideRatios(leg, wholeRatio(4)));
  const rise = to40Digits(subtractRatios(radius, toChord));
  return {
    middle: settled(plus(scaled(plus(a, b), HALF_RATIO), right), true),
    bulge: signOfRatio(bulge) < 0 ? negateRatio(rise) : rise,
  };
}
