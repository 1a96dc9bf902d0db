import type { Reader } from '../input/reader.js';
import { length } from '../units/construct.js';
import { formatQuantity } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';
import { SITE_LENGTH } from './limits.js';

/** A side of four corners, seen from the near side facing the far one. */
export type SideName = 'near' | 'far' | 'left' | 'right';

/** Sides and diagonals of four corners that have been read. Internal. */
export interface FourSides {
  readonly length: Length;
  readonly width: Length;
  readonly near: Length;
  readonly far: Length;
  readonly left: Length;
  readonly right: Length;
  /** Near left to far right, near right to far left. */
  readonly diagonals: readonly [Length, Length];
  /** Each measured side less what it should be. */
  readonly errors: readonly { readonly side: SideName; readonly error: Length }[];
}

const SIDES = ['near', 'far', 'left', 'right'] as const;

/** Reads sides and diagonals, and refuses those that close no triangle. Internal. */
export function readFourSides(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
): FourSides {
  const read = (name: string) => reader.quantity('length', fields[name], [name], SITE_LENGTH);
  const [along, across] = [read('length'), read('width')];
  const diagonals = readDiagonals(reader, fields['diagonals']);
  const wanted = { near: along, far: along, left: across, right: across };
  const given = fields['sides'];
  const sides = given === undefined ? {} : reader.object(given, ['sides']);
  const side = (name: SideName): Length =>
    given === undefined
      ? wanted[name]
      : reader.quantity('length', sides[name], ['sides', name], SITE_LENGTH);
  const measured = {
    near: side('near'),
    far: side('far'),
    left: side('left'),
    right: side('right'),
  };
  const errors = SIDES.map((name) => ({ side: name, error: measured[name].minus(wanted[name]) }));
  const found: FourSides = {
    length: along,
    width: across,
    ...measured,
    diagonals,
    errors: given === undefined ? [] : errors,
  };
  checkTriangles(reader, found);
  return found;
}

function readDiagonals(reader: Reader, value: unknown): readonly [Length, Length] {
  const list = reader.list(value, ['diagonals']);
  if (list.length > 0 && list.length !== 2) {
    reader.fail('WRONG_TYPE', ['diagonals'], 'expected two diagonals');
  }
  if (list.length !== 2) return [length(1, 'm'), length(1, 'm')];
  const read = (k: 0 | 1) => reader.quantity('length', list[k], ['diagonals', k], SITE_LENGTH);
  return [read(0), read(1)];
}

/** A diagonal is shorter than the two sides it joins, and longer than their difference. */
function checkTriangles(reader: Reader, { near, far, left, right, diagonals }: FourSides): void {
  const triangles = [
    [near, right, 0],
    [far, left, 0],
    [near, left, 1],
    [far, right, 1],
  ] as const;
  for (const [a, b, k] of triangles) {
    const diagonal = diagonals[k];
    if ([a, b, diagonal].some((one) => one.isZero())) continue;
    const isShort = diagonal.compare(a.minus(b).abs()) <= 0;
    if (!isShort && diagonal.compare(a.plus(b)) < 0) continue;
    const [first, second, third] = [a, b, diagonal].map((one) =>
      formatQuantity(one, { as: 'm', places: 3 }),
    );
    const message = `sides of ${first} and ${second} have no diagonal of ${third}: measure again`;
    reader.fail('TRIANGLE_IMPOSSIBLE', ['diagonals', k], message);
  }
}
