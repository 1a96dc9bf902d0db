import { choice, number, optional } from '../../input/field.js';
import { BEARING_RATIO } from '../../input/structure-ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { statusOf, type SourceId } from '../../sources/catalogue.js';
import type { SourceStatus } from '../../sources/source.js';
import { GEOTEXTILE_OVERLAPS } from '../../sources/geotextile-overlaps.js';
import type { ReferenceValue } from '../../sources/reference-value.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';

/** The soil under the geotextile, and the table to use. */
export interface GeotextileOverlapOptions {
  /** California bearing ratio of the soil in percent, more than 0 and at most 200: 3 means 3%. */
  readonly cbr: number | string;
  /**
   * Which table: a supplier's note that was read (`geotextile-overlap-note`), or highway practice from
   * memory (`highway-geotextiles`). Default: `geotextile-overlap-note`.
   */
  readonly table?: keyof typeof GEOTEXTILE_OVERLAPS;
}

const OPTIONS = shapeOf<GeotextileOverlapOptions>()({
  cbr: number(BEARING_RATIO),
  table: optional(
    choice(['geotextile-overlap-note', 'highway-geotextiles']),
    'geotextile-overlap-note',
  ),
});

/** Published overlap of geotextile for one strength of soil. */
export interface GeotextileOverlap {
  /** Minimum overlap; null where only a sewn seam will do. */
  readonly minimum: Length | null;
  /** Maximum overlap; null where one figure is given, or only a sewn seam will do. */
  readonly maximum: Length | null;
  /** Whether a sewn seam may or must replace the overlap. */
  readonly sewn: 'no' | 'or' | 'must';
  /** Where it is printed. */
  readonly source: SourceId;
  /** How far the figures can be traced. */
  readonly status: SourceStatus;
}

/**
 *
 * Looks up published overlaps of geotextile by strength of the subgrade. Exactly 3% and exactly 1%
 * take the weaker row; exactly 0.5% is not below 0.5%, so it may still be lapped. For information
 * only: one table is secondary and the other from memory, so choose the overlap with the maker of
 * the fabric.
 *
 * @param options - see {@link GeotextileOverlapOptions}
 * @returns minimum and maximum overlap [length], whether sewn, source and status
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `REQUIRED` and the reading codes
 * @source geotextile-overlap-note
 * @source highway-geotextiles
 * @example
 * const lap = geotextileOverlap({ cbr: 2 });
 * lap.minimum?.to('ft').toString() //=> '1.9'
 * lap.status //=> 'read'
 * geotextileOverlap({ cbr: 0.4 }).sewn //=> 'must'
 */
export function geotextileOverlap(options: GeotextileOverlapOptions): GeotextileOverlap {
  const { cbr, table } = readOptions(options, OPTIONS);
  const rows = GEOTEXTILE_OVERLAPS[table];
  const row = rows.find(({ cbrFrom, sewn }) =>
    sewn === 'or' ? cbr.gte(cbrFrom.value) : cbr.gt(cbrFrom.value),
  );
  return Object.freeze({
    minimum: figure(row?.minimum),
    maximum: figure(row?.maximum),
    sewn: row?.sewn ?? 'must',
    source: table,
    status: statusOf(table),
  });
}

const figure = (value: ReferenceValue | undefined): Length | null =>
  value === undefined ? null : length(`${value.value} ${value.unit}`);
