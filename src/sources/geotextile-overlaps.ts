import { printed, type ReferenceValue } from './reference-value.js';

/** Overlap of geotextile on one strength of subgrade. */
export interface GeotextileOverlapRow {
  /** Bearing ratio (CBR) of the soil, in percent: from this. */
  readonly cbrFrom: ReferenceValue;
  /** To this; absent if there is no upper end. */
  readonly cbrTo?: ReferenceValue;
  /** Absent where only a sewn seam will do. */
  readonly minimum?: ReferenceValue;
  /** Absent where the source gives one figure. */
  readonly maximum?: ReferenceValue;
  /** Whether a sewn seam may or must take the place of the overlap. */
  readonly sewn: 'no' | 'or' | 'must';
}

type Edition = 'geotextile-overlap-note' | 'highway-geotextiles';

/**
 * Overlap of geotextile by strength of the subgrade, strongest first. Two tables: a supplier's note
 * that was read (`geotextile-overlap-note`, secondary: it restates highway practice in feet), and the
 * highway practice itself, from memory (`highway-geotextiles`). Confirm with the maker of the fabric.
 */
export const GEOTEXTILE_OVERLAPS: Readonly<Record<Edition, readonly GeotextileOverlapRow[]>> =
  Object.freeze({
    'geotextile-overlap-note': Object.freeze([
      row('geotextile-overlap-note', ['3', undefined], ['0.9', '1.5'], 'no'),
      row('geotextile-overlap-note', ['1', '3'], ['1.9', '3.3'], 'no'),
      row('geotextile-overlap-note', ['0.5', '1'], ['3.3', undefined], 'or'),
      row('geotextile-overlap-note', ['0', '0.5'], undefined, 'must'),
    ]),
    'highway-geotextiles': Object.freeze([
      row('highway-geotextiles', ['3', undefined], ['300', '450'], 'no'),
      row('highway-geotextiles', ['1', '3'], ['600', '1000'], 'no'),
      row('highway-geotextiles', ['0.5', '1'], ['1000', undefined], 'or'),
      row('highway-geotextiles', ['0', '0.5'], undefined, 'must'),
    ]),
  });

function row(
  source: Edition,
  [from, to]: readonly [string, string | undefined],
  overlap: readonly [string, string | undefined] | undefined,
  sewn: GeotextileOverlapRow['sewn'],
): GeotextileOverlapRow {
  const unit = source === 'highway-geotextiles' ? 'mm' : 'ft';
  const percent = (value: string) => printed(value, 'percent', source);
  const distance = (value: string) => printed(value, unit, source);
  const [minimum, maximum] = overlap ?? [];
  return Object.freeze({
    cbrFrom: percent(from),
    ...(to === undefined ? {} : { cbrTo: percent(to) }),
    ...(minimum === undefined ? {} : { minimum: distance(minimum) }),
    ...(maximum === undefined ? {} : { maximum: distance(maximum) }),
    sewn,
  });
}
