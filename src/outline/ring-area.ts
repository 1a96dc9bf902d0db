import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { minus, norm, plus, scaled, turnedRight, type Vector } from '../units/vector.js';
import { makeArc } from './arc.js';
import { isOutwardRight } from './chords.js';
import { doubleArea } from './double-area.js';
import { forEachEdge, type Ring } from './ring.js';

/** Twice the area of a ring, arcs included, positive. Internal. */
export function enclosed(ring: Ring, isHole: boolean): Ratio {
  let twice = doubleArea(ring.points);
  if (ring.bulges !== undefined) {
    const isRight = isOutwardRight(ring, isHole);
    forEachEdge(ring.points, (a, b, edge) => {
      const bulge = ring.bulges?.[edge];
      if (bulge !== undefined) twice = addRatios(twice, segmentOf(a, b, { bulge, isRight }).twice);
    });
  }
  return signOfRatio(twice) < 0 ? negateRatio(twice) : twice;
}

/** Segment between an arc and its chord, positive to the right of a-b. Internal. */
export function segmentOf(
  a: Vector,
  b: Vector,
  { bulge, isRight }: { readonly bulge: Ratio; readonly isRight: boolean },
) {
  const along = minus(b, a);
  const arc = makeArc(norm(along), bulge);
  const isToRight = signOfRatio(bulge) > 0 === isRight;
  const signed = (value: Ratio) => (isToRight ? value : negateRatio(value));
  const twice = signed(multiplyRatios(arc.area, wholeRatio(2)));
  // six areas at the middle of the chord, plus the moment of the segment square to it
  const atChord = scaled(
    plus(a, b),
    multiplyRatios(twice, divideRatios(wholeRatio(3), wholeRatio(2))),
  );
  const right = turnedRight(along);
  const sixMoments = divideRatios(multiplyRatios(arc.moment, wholeRatio(6)), arc.chord);
  return { twice, sixfold: plus(atChord, scaled(right, sixMoments)), length: arc.length };
}
