import { makeReader } from '../input/reader.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { GEOTEXTILE_OVERLAPS } from '../sources/geotextile-overlaps.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import { length } from '../units/construct.js';
import type { Length } from '../units/quantity.js';

/** What is published on the overlap of geotextile for one strength of soil. */
export interface GeotextileOverlap {
  /** Null where only a sewn seam will do. */
  readonly least: Length | null;
  /** Null where one figure is given, or only a sewn seam will do. */
  readonly most: Length | null;
  /** Whether a sewn seam may or must take the place of the overlap. */
  readonly sewn: 'no' | 'or' | 'must';
  readonly source: SourceId;
  readonly status: SourceStatus;
}

/**
 * Looks up what is published on the overlap of geotextile by strength of the subgrade. Exactly 3 % and
 * exactly 1 % take the weaker row; exactly 0.5 % is not below 0.5 %, so it may still be lapped. It only
 * informs: one table is secondary and the other from memory, so choose the overlap with the maker of
 * the fabric.
 *
 * @param options.cbr - bearing ratio (CBR) of the soil in percent, as a plain number: 3 means 3 %
 * @param options.table - `geotextile-overlap-note` (read, secondary; the default) or
 *   `highway-geotextiles` (from memory)
 * @returns least and most overlap [length], whether sewn, source and status
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `REQUIRED` and the reading codes
 * @source geotextile-overlap-note
 * @source highway-geotextiles
 * @example
 * const lap = geotextileOverlap({ cbr: 2 });
 * lap.least?.to('ft').toString() //=> '1.9'
 * lap.status //=> 'read'
 * geotextileOverlap({ cbr: 0.4 }).sewn //=> 'must'
 */
export function geotextileOverlap(options: {
  readonly cbr: number | string;
  readonly table?: keyof typeof GEOTEXTILE_OVERLAPS;
}): GeotextileOverlap {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const cbr = reader.number(fields['cbr'], ['cbr'], { sign: 'not-negative', most: 200 });
  const table = reader.choice(fields['table'] ?? TABLES[0], ['table'], TABLES);
  reader.finish();
  const rows = GEOTEXTILE_OVERLAPS[table];
  const row = rows.find(({ cbrFrom, sewn }) =>
    sewn === 'or' ? cbr.gte(cbrFrom.value) : cbr.gt(cbrFrom.value),
  );
  const found = row ?? rows.at(-1);
  const figure = (value: ReferenceValue | undefined): Length | null =>
    value === undefined ? null : length(`${value.value} ${value.unit}`);
  return Object.freeze({
    least: figure(found?.least),
    most: figure(found?.most),
    sewn: found?.sewn ?? 'must',
    source: table,
    status: statusOf(table),
  });
}

const TABLES = ['geotextile-overlap-note', 'highway-geotextiles'] as const;
