import {
  addRatios,
  compareRatios,
  greaterRatio,
  lesserRatio,
  subtractRatios,
  type Ratio,
} from '../../units/ratio.js';
import type { OutlineSide } from './outline-sides.js';

/** From where to where along a direction. Internal. */
export type Stretch = readonly [from: Ratio, to: Ratio];

/**
 * Where an outline lies between two lines along a direction: the stretches that its sides and the two
 * lines between them cover. What only touches a line does not count. Each stretch is made longer by
 * `more` at both ends; stretches that then meet are one. Internal.
 */
export function stretchesIn(
  sides: readonly OutlineSide[],
  [low, high]: Stretch,
  more: Ratio,
): Stretch[] {
  const own = sides
    .filter((side) => compareRatios(side.high, low) > 0 && compareRatios(side.low, high) < 0)
    .map((side) => side.range(greaterRatio(side.low, low), lesserRatio(side.high, high)));
  const above = sides.filter(
    (side) => compareRatios(side.low, low) <= 0 && compareRatios(side.high, low) > 0,
  );
  const below = sides.filter(
    (side) => compareRatios(side.low, high) < 0 && compareRatios(side.high, high) >= 0,
  );
  const all = [...own, ...chordsAt(above, low), ...chordsAt(below, high)]
    .map(([from, to]): Stretch => [subtractRatios(from, more), addRatios(to, more)])
    .sort(([a], [b]) => compareRatios(a, b));
  const joined: Stretch[] = [];
  for (const stretch of all) {
    const last = joined.at(-1);
    if (last === undefined || compareRatios(stretch[0], last[1]) > 0) joined.push(stretch);
    else joined[joined.length - 1] = [last[0], greaterRatio(last[1], stretch[1])];
  }
  return joined;
}

/** What lies inside the outline on a line that these sides cross: from each odd crossing to the next. */
function chordsAt(crossed: readonly OutlineSide[], level: Ratio): Stretch[] {
  const places = crossed.map((side) => side.at(level)).sort(compareRatios);
  return places.flatMap((from, k): Stretch[] => {
    const to = places[k + 1];
    return k % 2 === 0 && to !== undefined ? [[from, to]] : [];
  });
}
