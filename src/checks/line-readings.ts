import { custom, list, object, optional, quantity, text } from '../input/field.js';
import { ELEVATION, SITE_OFFSET, STATION } from '../input/ranges.js';
import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { compareRatios } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';

/** A reading on a profile. */
export interface ProfileReadingInput {
  /** Name of the reading. Default: its number in the list, from 1. */
  readonly id?: string;
  /**
   * Distance along the line [length], up to 100 km either way. Increases from reading to reading.
   */
  readonly station: LengthInput;
  /** Height above any level line [length], up to 10 km either way. */
  readonly height: LengthInput;
}

/** A joint along a bond line. */
export interface BondReadingInput {
  /** Name of the reading. Default: its number in the list, from 1. */
  readonly id?: string;
  /**
   * Distance along the line [length], up to 100 km either way. Increases from reading to reading.
   */
  readonly station: LengthInput;
  /** Distance from any straight base line along the stations, + left of travel [length]. */
  readonly offset: LengthInput;
}

/** A reading along a line: its station in x, its height or offset in y. Internal. */
export interface LineReading {
  readonly id: string;
  readonly station: Length;
  readonly value: Length;
  readonly at: Vector;
}

const PROFILE = object(
  shapeOf<ProfileReadingInput>()({
    id: optional(text()),
    station: quantity(STATION),
    height: quantity(ELEVATION),
  }),
);

const BOND = object(
  shapeOf<BondReadingInput>()({
    id: optional(text()),
    station: quantity(STATION),
    offset: quantity(SITE_OFFSET),
  }),
);

/** Readings on a profile, two or more. Internal. */
export const profileField: Field<readonly LineReading[]> = lineField(PROFILE, (one) => one.height);

/** Joints along a bond line, two or more. Internal. */
export const bondField: Field<readonly LineReading[]> = lineField(BOND, (one) => one.offset);

function lineField<T extends { readonly id: string | undefined; readonly station: Length }>(
  entry: Field<T>,
  valueOf: (read: T) => Length,
): Field<readonly LineReading[]> {
  const entries = list(entry, { of: 'readings', least: 2 });
  return custom((reader, value, path) => {
    // a reading that could not be read is undefined
    const read: readonly (T | undefined)[] = entries.read(reader, value, path);
    const readings = read.map((one, index): LineReading | undefined => {
      if (one === undefined) return undefined;
      const [station, height] = [one.station, valueOf(one)];
      const id = one.id ?? `${index + 1}`;
      return { id, station, value: height, at: { x: exactOf(station), y: exactOf(height) } };
    });
    checkLine(reader, readings, path);
    return readings.filter((one) => one !== undefined);
  });
}

/** Each id is used once, default numbers included, and each station is beyond the one before. */
function checkLine(
  reader: Reader,
  readings: readonly (LineReading | undefined)[],
  path: FieldPath,
): void {
  const ids = new Map<string, number>();
  readings.forEach((reading, index) => {
    if (reading === undefined) return;
    const earlier = ids.get(reading.id);
    if (earlier !== undefined) {
      const message = `"${reading.id.slice(0, 37)}" is already used by entry ${earlier + 1} of this list. Give each reading its own`;
      reader.fail('DUPLICATE_ID', [...path, index, 'id'], message, { earlier });
    }
    ids.set(reading.id, index);
    const before = readings[index - 1];
    if (before === undefined || compareRatios(reading.at.x, before.at.x) > 0) return;
    const message =
      'is not beyond the station of the reading before it. List readings in order along the line';
    reader.fail('NOT_INCREASING', [...path, index, 'station'], message);
  });
}
