import { max, min } from '../../units/aggregate.js';
import { exactOf, type Area, type Length } from '../../units/quantity.js';
import { divideRatios, ratioToDecimal } from '../../units/ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, type Step } from '../../working.js';
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
    steps: (radius, area) => stepsPast([near, far], radius, area),
  };
}

type Edges = readonly [near: Length, far: Length | undefined];

function stepsPast([near, far]: Edges, radius: Length, area: Area): Step[] {
  const R = given('R', 'radius', radius);
  const within = (edge: Length): Length => max([radius.negated(), min([edge, radius])]);
  const edgeStep = (which: 'near' | 'far', edge: Length, symbol: string): Step =>
    derivedStep({
      title: `Distance of the ${which} edge from the trunk, within the root zone`,
      formula: `${symbol} = max(-R, min(d, R))`,
      given: [R, given('d', `${which} edge`, edge)],
      result: given(symbol, `${which} edge, within the root zone`, within(edge)),
    });
  const n = given('n', 'near edge, within the root zone', within(near));
  const result = given('A', 'area cut', area);
  const title = 'Root zone that the dig cuts';
  if (far === undefined) {
    const formula = 'A = R^2 * acos(n / R) - n * sqrt(R^2 - n^2)';
    const cut = derivedStep({ title, formula, given: [R, n], result });
    return [edgeStep('near', near, 'n'), cut];
  }
  const formula =
    'A = R^2 * (acos(n / R) - acos(f / R)) - n * sqrt(R^2 - n^2) + f * sqrt(R^2 - f^2)';
  const f = given('f', 'far edge, within the root zone', within(far));
  return [
    edgeStep('near', near, 'n'),
    edgeStep('far', far, 'f'),
    derivedStep({ title, formula, given: [R, n, f], result }),
  ];
}

/** Distance from the trunk to the nearest edge; none if the dig runs under the trunk. */
function distanceTo(near: Length, far: Length | undefined): Length {
  if (!near.isNegative()) return near;
  return far?.isNegative() === true ? far.negated() : NO_LENGTH;
}
