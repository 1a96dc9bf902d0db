import { list, quantity } from '../input/field.js';
import { forEachOf, oneOrMany, refuseMismatch } from '../input/one-or-many.js';
import { AREA_OR_NONE, DISTANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { sum } from '../units/aggregate.js';
import type { Area, Volume } from '../units/quantity.js';

/** Sections along a strip and their spacing. */
export interface AverageEndAreaOptions {
  /** Areas of two sections or more, in order [area], not negative. */
  readonly areas: readonly AreaInput[];
  /** Distance between neighbours [length], more than 0: one for all, or a list with one fewer than `areas`. */
  readonly spacing: LengthInput | readonly LengthInput[];
}

const OPTIONS = shapeOf<AverageEndAreaOptions>()({
  areas: list(quantity(AREA_OR_NONE), { of: 'areas', least: 2 }),
  spacing: oneOrMany(quantity(DISTANCE), 'spacings'),
});

const countsMatch: Check<typeof OPTIONS> = (reader, { areas, spacing }) => {
  if (areas === undefined || spacing === undefined) return;
  const strips = { of: 'spacings', expected: areas.length - 1, things: 'strips between sections' };
  refuseMismatch(reader, spacing, { path: ['spacing'], ...strips });
};

/**
 * Volume along a strip by average end areas: `V = sum(L (A1 + A2) / 2)` over neighbours. It is exact
 * if the area changes evenly along the strip. Toward an end that runs out to nothing it is too large:
 * use `endAreaVolumes` there. On a curve, give spacings along the centroids of the sections.
 *
 * @param options - see {@link AverageEndAreaOptions}
 * @returns the volume, in the state of the sections: bank for a dig [volume]
 * @throws `TOO_FEW`, `COUNT_MISMATCH`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source derived
 * @example
 * const dig = averageEndArea({ areas: ['114.3 ft2', '232.4 ft2'], spacing: '75 ft' });
 * dig.to('ft3').toString() //=> '13001.25'
 * averageEndArea({ areas: ['2 m2', '4 m2', '3 m2'], spacing: ['5 m', '10 m'] }).to('m3').toString() //=> '50'
 */
export function averageEndArea(options: AverageEndAreaOptions): Volume {
  const { areas, spacing } = readOptions(options, OPTIONS, countsMatch);
  const spacings = forEachOf(spacing, areas.length - 1);
  return sum(spacings.map((one, k) => between(areas[k], areas[k + 1]).times(one)));
}

/** The mean of two end areas. */
function between(first: Area | undefined, second: Area | undefined): Area {
  return sum([first, second].filter((area) => area !== undefined)).dividedBy(2);
}
