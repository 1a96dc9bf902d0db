import { isSettlineError } from '../../../errors.js';
import { areaOf } from '../../../outline/outline-area.js';
import type { Outline } from '../../../outline/ring.js';
import type { Area, Length, Volume } from '../../../units/quantity.js';
import type { PlanPoint } from '../../../units/vector.js';
import { NO_AREA, NO_VOLUME } from '../../../units/zero.js';
import type { SiteDepth, SiteVolumes } from '../../../volumes/site-volumes.js';
import type { DigPlan } from '../plan.js';
import type { EarthPlan } from '../plan-of-site.js';

/**
 * Earth between the ground and the subgrade, in one outline or several. Areas without levels are
 * included in cut and fill at the mean of the dig. Internal.
 */
export interface Earth {
  readonly cut: Volume;
  readonly fill: Volume;
  readonly cutArea: Area;
  readonly fillArea: Area;
  /** Area with known ground. */
  readonly covered: Area;
  /** Area without. */
  readonly uncovered: Area;
}

/** Earth in one outline, and its deepest points. Internal. */
export interface Measured extends Earth {
  /** How far cut or fill is open, because spot heights can be joined in more than one way. */
  readonly doubt: Volume;
  readonly deepestCut: SiteDepth | null;
  readonly deepestFill: SiteDepth | null;
}

/** The ground of a pavement: its height above the subgrade, anywhere in the dig. Internal. */
export interface Ground {
  readonly basis: DigPlan['basis'];
  readonly finish: EarthPlan['finish'];
  /** One depth for the whole dig; null if it varies. */
  readonly depth: Length | null;
  /** Depth of dig at a place, from the existing surface; null where levels do not reach. */
  readonly depthAt: (place: PlanPoint) => Length | null;
  /** Elevation of the existing surface; null where it is not known. */
  readonly existingAt: (place: PlanPoint) => Length | null;
  /** The earth in a figure once so much is stripped from the ground. */
  readonly measure: (outline: Outline, stripped: Length) => Measured;
}

/** No earth. Internal. */
export const NO_EARTH: Earth = Object.freeze({
  cut: NO_VOLUME,
  fill: NO_VOLUME,
  cutArea: NO_AREA,
  fillArea: NO_AREA,
  covered: NO_AREA,
  uncovered: NO_AREA,
});

const NOWHERE = Object.freeze({
  ...NO_EARTH,
  doubt: NO_VOLUME,
  deepestCut: null,
  deepestFill: null,
});

/** Ground that is at one height above the subgrade. Internal. */
export function evenGround(basis: 'along-strings' | 'uniform', depth: Length): Ground {
  const measure = (outline: Outline, stripped: Length): Measured => {
    const area = areaOf(outline);
    const left = depth.minus(stripped);
    const known = { ...NOWHERE, covered: area };
    if (left.isZero()) return known;
    return left.isNegative()
      ? { ...known, fill: area.times(left.negated()), fillArea: area }
      : { ...known, cut: area.times(left), cutArea: area };
  };
  return {
    basis,
    finish: null,
    depth,
    depthAt: () => depth,
    existingAt: () => null,
    measure,
  };
}

/** The earth between two surfaces in an outline; all of it is uncovered if no level reaches it. Internal. */
export function earthOf(outline: Outline, find: (outline: Outline) => SiteVolumes): Measured {
  try {
    const found = find(outline);
    return {
      cut: found.cut.volume,
      fill: found.fill.volume,
      cutArea: found.cutArea,
      fillArea: found.fillArea,
      covered: found.area,
      uncovered: found.uncoveredArea,
      doubt: found.diagonalDoubt,
      deepestCut: found.deepestCut,
      deepestFill: found.deepestFill,
    };
  } catch (error) {
    if (!isSettlineError(error) || error.code !== 'SURFACES_APART') throw error;
    return { ...NOWHERE, uncovered: areaOf(outline) };
  }
}

/** Adds a share of some earth; a negative share deducts it. Internal. */
export const plusEarth = (total: Earth, part: Earth, share: number | string = 1): Earth => ({
  cut: total.cut.plus(part.cut.times(share)),
  fill: total.fill.plus(part.fill.times(share)),
  cutArea: total.cutArea.plus(part.cutArea.times(share)),
  fillArea: total.fillArea.plus(part.fillArea.times(share)),
  covered: total.covered.plus(part.covered.times(share)),
  uncovered: total.uncovered.plus(part.uncovered.times(share)),
});

/** Earth in an outline; areas without levels take the mean of the whole dig. Internal. */
export function filledUp(earth: Measured, wholeDig: () => Measured): Measured {
  if (earth.uncovered.isZero()) return earth;
  const { cut, fill, covered } = wholeDig();
  if (covered.isZero()) return earth;
  const share = earth.uncovered.dividedBy(covered);
  return {
    ...earth,
    cut: earth.cut.plus(cut.times(share)),
    fill: earth.fill.plus(fill.times(share)),
  };
}
