import type { FieldPath } from '../errors.js';
import { custom, list, object, optional, quantity, text } from '../input/field.js';
import { givenEntries, type GivenEntry } from '../input/given-entries.js';
import { DISTANCE_OR_NONE, ROD_READING } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { checkReadings } from './book-readings.js';

/** A row of a level book: one point and its readings. */
export interface LevelRowInput {
  /** Point the rod stood on. */
  readonly point: string;
  /**
   * Backsight [length, 0 to 20 m], which sets the height of the next set-up. Enter it on the row of
   * the foresight to the same point, or alone on the next row.
   */
  readonly back?: LengthInput;
  /** Intermediate sight [length, 0 to 20 m], alone on its row. */
  readonly intermediate?: LengthInput;
  /** Foresight [length, 0 to 20 m]: last reading of a set-up, on a turning point or the closing mark. */
  readonly fore?: LengthInput;
  /**
   * Distance from the start along the line of levels [length], 0 to 100 km. Needed for rules and
   * adjustment by distance.
   */
  readonly distance?: LengthInput;
}

const ROW = shapeOf<LevelRowInput>()({
  point: text(),
  back: optional(quantity(ROD_READING)),
  intermediate: optional(quantity(ROD_READING)),
  fore: optional(quantity(ROD_READING)),
  distance: optional(quantity(DISTANCE_OR_NONE)),
});

/** A row that has been read. Internal. */
export type BookRow = Values<typeof ROW>;

const MOST_ROWS = 10_000;

const ROWS = list(object(ROW), { of: 'rows', least: 2, most: MOST_ROWS });

/** The rows of a level book, each reading with a height to count from. Internal. */
export const bookRows: Field<readonly BookRow[]> = custom((reader, value, path) => {
  const rows = ROWS.read(reader, value, path);
  if (rows.length < 2) return rows;
  checkReadings(reader, givenRows(value), path);
  checkDistances(reader, rows, path);
  return rows;
});

/** The rows as they were given; null for one that could not be read. Internal. */
export const givenRows = (value: unknown): readonly GivenEntry[] =>
  givenEntries(value, ROW, MOST_ROWS);

function checkDistances(
  reader: Reader,
  // a row that could not be read is undefined
  rows: readonly (BookRow | undefined)[],
  path: FieldPath,
): void {
  let farthest: Length | undefined;
  rows.forEach((row, k) => {
    const distance = row?.distance;
    if (distance === undefined) return;
    if (farthest !== undefined && distance.compare(farthest) < 0) {
      const message =
        'is less than the distance of a row before. Measure from the start of the line';
      reader.fail('NOT_INCREASING', [...path, k, 'distance'], message);
    }
    farthest = distance;
  });
}
