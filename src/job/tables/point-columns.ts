import type { QuantityRule } from '../../input/rule.js';
import { ELEVATION, LEVEL_DIFFERENCE, PLACE, ROD_READING } from '../../input/ranges.js';

/** What a table of points can hold. */
export type PointTableKind = 'spot-heights' | 'stakes' | 'readings';

/** A column that the library knows, by the field that it fills. */
export type PointColumn =
  | 'id'
  | 'x'
  | 'y'
  | 'z'
  | 'finish'
  | 'finishAt'
  | 'ground'
  | 'groundFrom'
  | 'groundOn'
  | 'stake'
  | 'surface'
  | 'belowString'
  | 'rod'
  | 'elevation';

/** How a column is read. Internal. */
export interface ColumnRule {
  readonly column: PointColumn;
  /** Words in a header that name it, in small letters and without spaces. */
  readonly names: readonly string[];
  /** The range of its lengths; undefined for text. */
  readonly range: QuantityRule<'length'> | undefined;
  readonly isNeeded: boolean;
}

const rule = (
  column: PointColumn,
  names: readonly string[],
  range?: QuantityRule<'length'>,
  isNeeded = false,
): ColumnRule => ({ column, names, range, isNeeded });

const PLACES: readonly ColumnRule[] = [
  rule('x', ['x', 'easting', 'east'], PLACE, true),
  rule('y', ['y', 'northing', 'north'], PLACE, true),
];
const HEIGHTS = ['elevation', 'elev', 'level', 'z'];
const NAMES = ['id', 'name', 'point', 'stake'];

/** The columns of each kind of table. Internal. */
export const COLUMNS: Readonly<Record<PointTableKind, readonly ColumnRule[]>> = {
  'spot-heights': [rule('id', NAMES), ...PLACES, rule('z', HEIGHTS, ELEVATION, true)],
  stakes: [
    rule('id', NAMES, undefined, true),
    ...PLACES,
    rule('finish', ['finish', 'finishedgrade'], ELEVATION),
    rule('finishAt', ['finishat']),
    rule('ground', ['ground', 'groundbelowstring'], LEVEL_DIFFERENCE),
    rule('groundFrom', ['groundfrom']),
    rule('groundOn', ['groundon']),
  ],
  readings: [
    rule('stake', NAMES, undefined, true),
    rule('surface', ['surface'], undefined, true),
    rule('belowString', ['belowstring'], LEVEL_DIFFERENCE),
    rule('rod', ['rod', 'rodreading'], ROD_READING),
    rule('elevation', HEIGHTS, ELEVATION),
  ],
};

/** Heights in the header of a table of stakes: of the ground or of finished grade is not said. Internal. */
export const isUnclearHeight = (kind: PointTableKind, name: string): boolean =>
  kind === 'stakes' && HEIGHTS.includes(name);
