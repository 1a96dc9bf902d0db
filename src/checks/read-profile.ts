import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { compareRatios } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import { PLACE } from './limits.js';

/** A reading on a profile: where, and how high above any level line. */
export interface ProfileReadingInput {
  /** Default: its number in the list, from 1. */
  readonly id?: string;
  readonly station: LengthInput;
  readonly height: LengthInput;
}

/** A reading along a line: its station in x, its height or offset in y. Internal. */
export interface LineReading {
  readonly id: string;
  readonly station: Length;
  readonly value: Length;
  readonly at: Vector;
}

/**
 * Reads readings along a line, at least two, their stations growing; `name` is the field beside the
 * station. Internal.
 */
export function readLine(
  reader: Reader,
  list: unknown,
  { field, name }: { readonly field: string; readonly name: 'height' | 'offset' },
): readonly LineReading[] {
  const ids = new Set<string>();
  const readings = reader.list(list, [field]).map((item, index): LineReading => {
    const path = [field, index];
    const fields = reader.object(item, path);
    const read = (key: string) => reader.quantity('length', fields[key], [...path, key], PLACE);
    const [station, value] = [read('station'), read(name)];
    const id = reader.text(fields['id'] ?? `${index + 1}`, [...path, 'id']);
    if (ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the reading ${id} stands twice`);
    }
    ids.add(id);
    return { id, station, value, at: { x: exactOf(station), y: exactOf(value) } };
  });
  if (readings.length === 1) {
    reader.fail('TOO_FEW_POINTS', [field], 'a line needs two readings or more');
  }
  readings.slice(1).forEach((reading, k) => {
    if (compareRatios(reading.at.x, readings[k]?.at.x ?? reading.at.x) > 0) return;
    reader.fail('STATION_ORDER', [field, k + 1, 'station'], 'must lie beyond the one before');
  });
  return readings;
}
