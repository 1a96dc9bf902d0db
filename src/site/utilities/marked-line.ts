import type { FieldPath } from '../../errors.js';
import { list, object, optional, quantity, text } from '../../input/field.js';
import { givenEntries } from '../../input/given-entries.js';
import { SET_BACK, SITE_OFFSET, ZONE } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Field, type Values } from '../../input/shape.js';
// the dig is an outline
import type { Outline } from '../../outline/read-outline.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { between, isZero, type PlanPoint } from '../../units/vector.js';
import { placeField, refuseFarPlace, type PlaceInput } from '../drawn-dig.js';

/** A marked line across a dig. */
export interface MarkedLineInput {
  /** What the crew calls it. Each id once in a dig. */
  readonly id: string;
  /** Outside diameter or width of the line or duct [length], 0 to 100 m; 0 only if the mark gives none. */
  readonly width: LengthInput;
  /**
   * Tolerance zone on each side, from the outside of the line [length], more than 0 and at most 100 m.
   * No default: the law where you dig sets it.
   */
  readonly tolerance: LengthInput;
  /**
   * For a straight dig: offset of the middle of the line, square to it, from any mark [length], up
   * to 10 km either way. Needed if there are several lines.
   */
  readonly offset?: LengthInput;
  /**
   * For a drawn dig: 2 to 50 points along the line, within 10 km of the dig. Draw it past the dig unless
   * it ends there.
   */
  readonly path?: readonly PlaceInput[];
}

const MOST_LINES = 50;
const MOST_DRAWN = 20;

const OFFSET = quantity(SITE_OFFSET);
const PATH = list(placeField, { of: 'points', least: 2, most: 50 });

const LINE = shapeOf<MarkedLineInput>()({
  id: text(),
  width: quantity(SET_BACK),
  tolerance: quantity(ZONE),
  offset: optional(OFFSET),
  path: optional(PATH),
});

/** A marked line that has been read. Internal. */
export type MarkedLine = Values<typeof LINE>;

/** Marked lines across a dig. Internal. */
export const markedLines: Field<readonly MarkedLine[]> = list(object(LINE), {
  of: 'lines',
  most: MOST_LINES,
  unique: 'id',
});

/** Half the width of the zone of a line. Internal. */
export const reachOf = ({ width, tolerance }: MarkedLine): Length =>
  tolerance.plus(width.dividedBy(2));

/** The lines as given, and as far as they could be read. Internal. */
export interface GivenLines {
  readonly value: unknown;
  readonly read: readonly MarkedLine[] | undefined;
  readonly path: FieldPath;
}

/**
 * Lines across a straight dig need an offset, unless there is only one, and have no path. Internal.
 */
export function checkOffsets(reader: Reader, { value, path }: GivenLines): void {
  const lines = givenEntries(value, LINE, MOST_LINES);
  lines.forEach((line, index) => {
    if (line?.['path'] !== undefined) {
      const message =
        'a straight dig has no plan, so lines have no path. Give offset, or draw the dig as outline';
      reader.fail('CONFLICTING_FIELDS', [...path, index, 'path'], message);
    }
    if (line === null || line['offset'] !== undefined || lines.length === 1) return;
    // reading the field already reports that it is missing
    OFFSET.read(reader, undefined, [...path, index, 'offset']);
  });
}

/** Lines across a drawn dig have a path near it, with no repeated point. Internal. */
export function checkPaths(
  reader: Reader,
  { value, read = [], path }: GivenLines,
  dig: Outline | undefined,
): void {
  const lines = givenEntries(value, LINE, MOST_LINES);
  if (lines.length > MOST_DRAWN) {
    const message = `${lines.length} lines are more than the limit of ${MOST_DRAWN} for a drawn dig`;
    reader.fail('TOO_MANY', path, message, { most: MOST_DRAWN, got: lines.length });
  }
  lines.forEach((line, index) => {
    if (line === null) return;
    if (line['path'] === undefined) PATH.read(reader, undefined, [...path, index, 'path']);
    if (line['offset'] === undefined) return;
    const message = 'a drawn dig has no offsets. Give only the path of the line';
    reader.fail('CONFLICTING_FIELDS', [...path, index, 'offset'], message);
  });
  read.forEach((line, index) => {
    checkPath(reader, line.path ?? [], { dig, path: [...path, index, 'path'] });
  });
}

function checkPath(
  reader: Reader,
  points: readonly PlanPoint[],
  { dig, path }: { readonly dig: Outline | undefined; readonly path: FieldPath },
): void {
  points.forEach((point, k) => {
    const at = [...path, k];
    const before = points[k - 1];
    if (before !== undefined && isZero(between(before, point))) {
      const message = 'is the same point as the one before it. Remove one of them';
      reader.fail('POINTS_COINCIDE', at, message, { earlier: k - 1 });
    }
    if (dig !== undefined) refuseFarPlace(reader, point, { dig, path: at });
  });
}
