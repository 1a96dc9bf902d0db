import { makeReader, type Reader } from '../input/reader.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { sum } from '../units/aggregate.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import { AREA, SPACING } from './limits.js';

/**
 * Volume along a strip from areas of its sections: `V = sum(L (A1 + A2) / 2)` over neighbours. It is
 * exact where the area changes evenly along the strip; toward an end that runs out to nothing it is
 * too large (see `endAreaVolumes`). On a curve, give spacings along the centroids of the sections.
 *
 * @param options.areas - of two sections or more, in order [area], not negative
 * @param options.spacing - between neighbours [length]: one for all, or a list, one fewer than areas
 * @returns the volume, in the state of the sections: bank for a dig [volume]
 * @throws `TOO_FEW_SECTIONS`, `SECTION_COUNT`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source derived
 * @example
 * const dig = averageEndArea({ areas: ['114.3 ft2', '232.4 ft2'], spacing: '75 ft' });
 * dig.to('ft3').toString() //=> '13001.25'
 * averageEndArea({ areas: ['2 m2', '4 m2', '3 m2'], spacing: ['5 m', '10 m'] }).to('m3').toString() //=> '50'
 */
export function averageEndArea(options: {
  readonly areas: readonly AreaInput[];
  readonly spacing: LengthInput | readonly LengthInput[];
}): Volume {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const areas = reader
    .list(fields['areas'], ['areas'])
    .map((value, index) => reader.quantity('area', value, ['areas', index], AREA));
  if (areas.length === 1) {
    reader.fail('TOO_FEW_SECTIONS', ['areas'], 'needs the areas of two sections or more');
  }
  const spacings = readSpacings(reader, fields['spacing'], areas.length);
  reader.finish();
  return sum(spacings.map((spacing, k) => between(areas[k], areas[k + 1]).times(spacing)));
}

/** The mean of two end areas. */
function between(first: Area | undefined, second: Area | undefined): Area {
  return sum([first, second].filter((area) => area !== undefined)).dividedBy(2);
}

function readSpacings(reader: Reader, value: unknown, areas: number): readonly Length[] {
  const count = Math.max(0, areas - 1);
  if (!Array.isArray(value)) {
    const one = reader.quantity('length', value, ['spacing'], SPACING);
    return Array.from({ length: count }, () => one);
  }
  if (value.length !== count && areas > 1) {
    const words = `${value.length} spacings for ${areas} areas: expected ${count}`;
    reader.fail('SECTION_COUNT', ['spacing'], words, { expected: count, got: value.length });
  }
  return value.map((item: unknown, index) =>
    reader.quantity('length', item, ['spacing', index], SPACING),
  );
}
