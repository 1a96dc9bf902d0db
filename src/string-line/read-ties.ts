import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { Length } from '../units/quantity.js';
import { STATION } from './limits.js';

/** A stake of a string that has been read. Internal. */
export interface Tie {
  readonly id: string;
  readonly station: Length;
}

/** Reads stakes of a string, each id once; `readRest` reads what else stands on one. Internal. */
export function readTies<T extends object>(
  reader: Reader,
  value: unknown,
  readRest: (fields: Readonly<Record<string, unknown>>, path: FieldPath) => T,
): (T & Tie)[] {
  const ids = new Set<string>();
  return reader.list(value, ['stakes']).map((item, index) => {
    const path = ['stakes', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the stake ${id} stands twice`);
    }
    ids.add(id);
    const at = [...path, 'station'];
    const station = reader.quantity('length', fields['station'], at, STATION);
    return { id, station, ...readRest(fields, path) };
  });
}

/** Refuses a string of one stake, and stations that do not run forward. Internal. */
export function requireForward(reader: Reader, stakes: readonly Tie[]): void {
  if (stakes.length === 1) {
    reader.fail('TOO_FEW_STAKES', ['stakes'], 'a string needs two stakes or more');
  }
  stakes.forEach(({ station }, index) => {
    const before = stakes[index - 1];
    if (before === undefined || station.compare(before.station) > 0) return;
    const why = 'must be beyond the station of the stake before';
    reader.fail('STATION_ORDER', ['stakes', index, 'station'], why);
  });
}
