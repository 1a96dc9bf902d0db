import { widen } from '../../../outline/widen-outline.js';
import { max } from '../../../units/aggregate.js';
import type { Outline } from '../../../outline/ring.js';
import type { Area, Length, Volume } from '../../../units/quantity.js';
import { NO_LENGTH, NO_VOLUME } from '../../../units/zero.js';
import { boxOf, isApart } from './box.js';
import { outlineOf, type LaidOut } from '../lay-out.js';
import { planSides, type PlannedSides } from '../earth/plan-sides.js';
import { topAt } from '../plan-edges.js';
import { areaOfRegions, without } from './regions.js';
import { isDeeper } from './share-out.js';

/** Number of even layers between the depths of the bottoms. The only error is in the layer where sides meet. */
const LAYERS = 16;

/**
 * Plans the sloped sides of every dig. Soil inside the dig of another pavement is counted there, and
 * soil that two sides share is counted with the deeper dig, as in {@link shareOut}. Internal.
 */
export function planAllSides(laid: readonly LaidOut[]): readonly PlannedSides[] {
  const alone = laid.map((one) =>
    planSides(one.pavement.outline, {
      edges: one.edges,
      depth: one.dig.depth,
      bottom: one.dug.area,
      path: [...one.path, 'outline'],
    }),
  );
  return alone.map((sides, index) => {
    const one = laid[index];
    if (sides.top === null || one === undefined) return sides;
    const top = boxOf(outlineBelow(one, NO_LENGTH));
    const others = laid.filter(
      (other) => other !== one && !isApart(top, boxOf(outlineBelow(other, NO_LENGTH))),
    );
    return others.length === 0 ? sides : { ...sides, extra: extraBeside(one, others) };
  });
}

/** Outline of a dig at a depth below the ground; that of its bottom if all its sides are vertical. */
function outlineBelow({ pavement, edges, dig, bottom, path }: LaidOut, below: Length): Outline {
  if (edges.every(({ batter }) => batter === null)) return bottom;
  const height = dig.depth.minus(below);
  const outward = edges.map((edge) => topAt(edge, height));
  return outlineOf(widen(pavement.outline, outward, [...path, 'outline']));
}

/** Volume that sides add, in layers: each by its areas at the top, half way down and at the bottom. */
function extraBeside(one: LaidOut, others: readonly LaidOut[]): Volume {
  const { depth } = one.dig;
  const bottoms = others
    .map((other) => other.dig.depth)
    .filter((other) => other.compare(NO_LENGTH) > 0 && other.compare(depth) < 0)
    .sort((a, b) => a.compare(b));
  const stops = [...bottoms, depth];
  return stops.reduce((total, stop, index) => {
    const start = stops[index - 1] ?? NO_LENGTH;
    const present = others.filter((other) => other.dig.depth.compare(stop) >= 0);
    return total.plus(inLayers((below) => sideArea(one, present, below), start, stop));
  }, NO_VOLUME);
}

/** Volume between two depths: exact if one layer and two agree, because areas then grow evenly; else in even layers. */
function inLayers(areaAt: (below: Length) => Area, start: Length, stop: Length): Volume {
  const of = (count: number): Volume => layered(areaAt, [start, stop], count);
  const [one, two] = [of(1), of(2)];
  return one.minus(two).abs().compare(two.times('1e-12')) <= 0 ? two : of(LAYERS);
}

function layered(
  areaAt: (below: Length) => Area,
  [start, stop]: readonly [Length, Length],
  count: number,
): Volume {
  const half = stop.minus(start).dividedBy(2 * count);
  const areas = Array.from({ length: 2 * count + 1 }, (_, k) => areaAt(start.plus(half.times(k))));
  return areas.reduce((total, area, k) => {
    const isEnd = k === 0 || k === 2 * count;
    const weight = isEnd ? 1 : k % 2 === 0 ? 2 : 4;
    return total.plus(area.times(half).times(weight).dividedBy(3));
  }, NO_VOLUME);
}

/** Area between the side and the bottom of a dig that is outside all other digs. */
function sideArea(one: LaidOut, others: readonly LaidOut[], below: Length): Area {
  const taken = others.map((other) =>
    isDeeper(partOf(other), partOf(one)) ? outlineBelow(other, below) : other.bottom,
  );
  const free = (outline: Outline): Area => areaOfRegions(without(outline, taken));
  return max([free(outlineBelow(one, below)).minus(free(one.bottom)), free(one.bottom).times(0)]);
}

const partOf = ({ pavement, dig }: LaidOut) => ({ id: pavement.id, depth: dig.depth });
