import type { Outline } from '../../../outline/ring.js';
import type { Area, Length, Volume } from '../../../units/quantity.js';
import { NO_LENGTH, NO_VOLUME } from '../../../units/zero.js';
import { inState } from '../../../volumes/state-volume.js';
import { NO_EARTH, plusEarth, type Earth, type Ground, type Measured } from './ground.js';
import type { LaidOldPaving } from '../plan-old-paving.js';
import type { EarthPlan } from '../plan-of-site.js';
import { within, type SignedOutline } from '../areas/regions.js';

/** Ground and outlines for measuring the earth of a dig. Internal. */
export interface EarthBasis {
  readonly ground: Ground;
  /** The whole bottom of the dig. */
  readonly dig: Outline;
  /** The part counted with this pavement: the dig less the parts counted with others. */
  readonly regions: readonly SignedOutline[];
  readonly oldPaving: readonly LaidOldPaving[];
  /** Old paving in the dig, in place. */
  readonly stripped: Volume;
  /** Volume that sloped sides add. */
  readonly sides: Volume;
}

/** Cut and fill of a dig after stripping, and the area where the ground is known. Internal. */
export function planEarth(basis: EarthBasis): {
  readonly plan: EarthPlan;
  readonly covered: Area;
} {
  const { ground, sides, stripped } = basis;
  const earth = strippedEarth(ground, basis.regions, basis.oldPaving);
  const { cut, fill } = earth;
  const isEven = ground.depth !== null;
  const whole: Measured | null = isEven ? null : ground.measure(basis.dig, NO_LENGTH);
  const plan: EarthPlan = {
    finish: ground.finish,
    stripped,
    cut: inState(notNegative(cut).plus(sides), 'bank'),
    sides,
    fill: inState(notNegative(fill), 'compacted'),
    cutArea: isEven ? null : earth.cutArea,
    fillArea: isEven ? null : earth.fillArea,
    uncovered: earth.uncovered,
    diagonalDoubt: whole?.doubt ?? NO_VOLUME,
    deepestCut: whole?.deepestCut ?? null,
    deepestFill: whole?.deepestFill ?? null,
  };
  return { plan, covered: earth.covered };
}

/** Rounding in sums of floats can give a result slightly below zero. */
const notNegative = (volume: Volume): Volume => (volume.isNegative() ? NO_VOLUME : volume);

/**
 * The earth of signed outlines after stripping. Under each piece of old paving the earth is counted
 * again from its underside. Pieces on top of each other are stripped one after the other.
 */
function strippedEarth(
  ground: Ground,
  regions: readonly SignedOutline[],
  oldPaving: readonly LaidOldPaving[],
  stripped: Length = NO_LENGTH,
): Earth {
  const [first, ...rest] = oldPaving;
  if (first === undefined) {
    return regions.reduce(
      (total, { outline, sign }) => plusEarth(total, ground.measure(outline, stripped), sign),
      NO_EARTH,
    );
  }
  const before = strippedEarth(ground, regions, rest, stripped);
  const { outline, share, thickness } = first;
  const under = outline === null ? regions : within(regions, outline);
  if (under.length === 0) return before;
  const left = strippedEarth(ground, under, rest, stripped.plus(thickness));
  const instead = outline === null ? before : strippedEarth(ground, under, rest, stripped);
  return plusEarth(plusEarth(before, left, share), instead, `-${share}`);
}
