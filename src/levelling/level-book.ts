import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { READING, SIGHT } from './limits.js';

/** A row of a level book: one point and what was read on it. */
export interface LevelRowInput {
  readonly point: string;
  /**
   * Reading that gives the next set-up its height; on the row of the foresight to the same point, or
   * alone on the row after it.
   */
  readonly back?: LengthInput;
  readonly intermediate?: LengthInput;
  /** Last reading of a set-up, on a turning point or on the closing mark. */
  readonly fore?: LengthInput;
  /** Distance from the start along the line of levels, for rules and adjustment by distance. */
  readonly distance?: LengthInput;
}

/** A row that has been read. Internal. */
export interface BookRow {
  readonly point: string;
  readonly back: Length | undefined;
  readonly intermediate: Length | undefined;
  readonly fore: Length | undefined;
  readonly distance: Length | undefined;
}

/** Reads the rows of a level book and makes sure that each reading has a height to count from. Internal. */
export function readRows(reader: Reader, value: unknown, needsDistance: boolean): BookRow[] {
  const rows = reader
    .list(value, ['rows'])
    .map((item, k) =>
      readRow(reader, item, { path: ['rows', k], needsDistance: needsDistance && k > 0 }),
    );
  let hasHeight = false;
  rows.forEach((row, k) => {
    const isTurn = rows[k - 1]?.fore !== undefined && rows[k - 1]?.point === row.point;
    checkRow(reader, row, { path: ['rows', k], isFirst: k === 0, isTurn, hasHeight });
    // a foresight ends a set-up unless a backsight on the same point begins the next
    if (row.back !== undefined) hasHeight = true;
    else if (row.fore !== undefined) hasHeight = false;
  });
  if (rows.length === 1) {
    reader.fail('TOO_FEW_POINTS', ['rows'], 'a level book needs two points or more');
  } else if (rows.at(-1)?.back !== undefined) {
    const why = 'the last row has a backsight from which nothing was read';
    reader.fail('BOOK_ROW', ['rows', rows.length - 1, 'back'], why);
  }
  checkDistances(reader, rows);
  return rows;
}

function readRow(
  reader: Reader,
  item: unknown,
  { path, needsDistance }: { readonly path: FieldPath; readonly needsDistance: boolean },
): BookRow {
  const fields = reader.object(item, path);
  const optional = (name: string, rule: typeof READING) =>
    fields[name] === undefined
      ? undefined
      : reader.quantity('length', fields[name], [...path, name], rule);
  if (needsDistance && fields['distance'] === undefined) {
    reader.fail('REQUIRED', [...path, 'distance'], 'is missing: the rule goes by distance');
  }
  return {
    point: reader.text(fields['point'], [...path, 'point']),
    back: optional('back', READING),
    intermediate: optional('intermediate', READING),
    fore: optional('fore', READING),
    distance: optional('distance', SIGHT),
  };
}

interface RowPlace {
  readonly path: FieldPath;
  readonly isFirst: boolean;
  /** True where the row before has the foresight on the same point. */
  readonly isTurn: boolean;
  readonly hasHeight: boolean;
}

function checkRow(
  reader: Reader,
  row: BookRow,
  { path, isFirst, isTurn, hasHeight }: RowPlace,
): void {
  const { back, intermediate, fore } = row;
  const bookRow = (message: string) => reader.fail('BOOK_ROW', path, message);
  if (isFirst) {
    if (back === undefined || intermediate !== undefined || fore !== undefined) {
      bookRow('the first row has a backsight on the starting mark and nothing else');
    }
    return;
  }
  if (intermediate !== undefined && (back !== undefined || fore !== undefined)) {
    bookRow('an intermediate sight stands alone: a turning point has a foresight and a backsight');
  } else if (fore === undefined && intermediate === undefined) {
    if (isTurn && back !== undefined && !hasHeight) return;
    const message =
      back === undefined
        ? 'has no reading'
        : 'a backsight needs a foresight on the same point, or nothing ties it to the start';
    bookRow(message);
  } else if (!hasHeight) {
    const message = 'comes after a foresight that ended the set-up: a backsight is missing';
    reader.fail('NO_BACKSIGHT', path, message);
  }
}

function checkDistances(reader: Reader, rows: readonly BookRow[]): void {
  let furthest: Length | undefined;
  rows.forEach(({ distance }, k) => {
    if (distance === undefined) return;
    if (furthest !== undefined && distance.compare(furthest) < 0) {
      reader.fail('STATION_ORDER', ['rows', k, 'distance'], 'is less than that of a row before');
    }
    furthest = distance;
  });
}
