import { exactOf, type Length } from '../../units/quantity.js';
import { divideRatios, ratioToDecimal } from '../../units/ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { given } from '../../working.js';
import { shareBeyond } from './circle-cut.js';
import type { DigAtTree } from './dig-at-tree.js';

/** A straight dig past a tree, from its near edge to its far edge or past the zone. Internal. */
export function digPastTree(near: Length, far: Length | undefined): DigAtTree {
  return {
    cut: (radius) => {
      const beyond = (edge: Length) =>
        shareBeyond(ratioToDecimal(divideRatios(exactOf(edge), exactOf(radius))));
      const share = far === undefined ? beyond(near) : beyond(near).minus(beyond(far));
      return { distance: distanceTo(near, far), share };
    },
    formula: 'A = R^2 acos(d / R) - d sqrt(R^2 - d^2), near edge less far edge',
    given: [
      given('d1', 'near edge', near),
      ...(far === undefined ? [] : [given('d2', 'far edge', far)]),
    ],
  };
}

/** Distance from the trunk to the nearest edge; none if the dig runs under the trunk. */
function distanceTo(near: Length, far: Length | undefined): Length {
  if (!near.isNegative()) return near;
  return far?.isNegative() === true ? far.negated() : NO_LENGTH;
}
