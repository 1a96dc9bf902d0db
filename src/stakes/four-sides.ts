import { object, quantity } from '../input/field.js';
import { SITE_LENGTH } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { requireTriangles, type WrittenLength } from './triangle.js';

/** A side of four corners, seen when you stand at the near side facing the far one. */
export type SideName = 'near' | 'far' | 'left' | 'right';

/** The four sides as measured. */
export interface MeasuredSidesInput {
  /** The side you stand at [length], more than 0 and at most 10 km. */
  readonly near: LengthInput;
  /** The side you face [length], more than 0 and at most 10 km. */
  readonly far: LengthInput;
  /** The side on your left [length], more than 0 and at most 10 km. */
  readonly left: LengthInput;
  /** The side on your right [length], more than 0 and at most 10 km. */
  readonly right: LengthInput;
}

const SIDES = shapeOf<MeasuredSidesInput>()({
  near: quantity(SITE_LENGTH),
  far: quantity(SITE_LENGTH),
  left: quantity(SITE_LENGTH),
  right: quantity(SITE_LENGTH),
});

/** The four sides as measured. Internal. */
export const measuredSides = object(SIDES);

/** Sides and diagonals of four corners that have been read. Internal. */
export interface FourSidesRead {
  readonly length: Length;
  readonly width: Length;
  /** Near left to far right, near right to far left. */
  readonly diagonals: readonly [Length, Length];
  readonly sides: Values<typeof SIDES> | undefined;
}

/** Sides and diagonals of four corners. Internal. */
export interface FourSides extends Values<typeof SIDES> {
  readonly length: Length;
  readonly width: Length;
  readonly diagonals: readonly [Length, Length];
  /** Each measured side less its design length. */
  readonly errors: readonly SideError[];
}

/** Error of a side. */
export interface SideError {
  /** Which side. */
  readonly side: SideName;
  /** Measured length less design length [length]. */
  readonly error: Length;
}

const NAMES = ['near', 'far', 'left', 'right'] as const;

/** Sides that were not measured have their design length. Internal. */
export function fourSides({ length, width, diagonals, sides }: FourSidesRead): FourSides {
  const wanted = { near: length, far: length, left: width, right: width };
  const measured = sides ?? wanted;
  const errors = NAMES.map((side) => ({ side, error: measured[side].minus(wanted[side]) }));
  return { length, width, ...measured, diagonals, errors: sides === undefined ? [] : errors };
}

/**
 * Refuses diagonals that cannot join the ends of their sides. Values that could not be read are not
 * checked. Internal.
 */
export function requireDiagonals(
  reader: Reader,
  { length, width, diagonals, sides }: Partial<FourSidesRead>,
  raw: Readonly<Record<string, unknown>>,
): void {
  if (diagonals === undefined) return;
  const given = raw['sides'] as Partial<MeasuredSidesInput> | undefined;
  const side = (name: SideName, wanted: Length | undefined, how: string): Side => {
    const read = given === undefined ? wanted : sides?.[name];
    return read && { read, raw: given === undefined ? raw[how] : given[name] };
  };
  const [near, far] = [side('near', length, 'length'), side('far', length, 'length')];
  const [left, right] = [side('left', width, 'width'), side('right', width, 'width')];
  const rawDiagonals = raw['diagonals'] as readonly unknown[];
  const judge = (k: 0 | 1, pairs: readonly (readonly [Side, Side])[]): void => {
    const diagonal = { read: diagonals[k], raw: rawDiagonals[k] };
    const triangles = pairs.flatMap(([a, b]) =>
      a === undefined || b === undefined ? [] : [[a, b, diagonal] as const],
    );
    requireTriangles(reader, triangles, ['diagonals', k]);
  };
  judge(0, [
    [near, right],
    [far, left],
  ]);
  judge(1, [
    [near, left],
    [far, right],
  ]);
}

type Side = WrittenLength | undefined;
