import type { FieldPath } from '../errors.js';
import { custom, object, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { SourceId } from '../sources/catalogue.js';
import {
  TOLERANCE_SETS,
  type LeastAndMost,
  type OverAndUnder,
  type OverLength,
  type ToleranceSet,
  type ToleranceSetName,
} from '../sources/tolerance-sets.js';
import type { Dimension } from '../units/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import type { Length, Quantity } from '../units/quantity.js';
import type { Limits } from './limits.js';

/** Names of the sets that print a tolerance of a kind. */
export type SetWith<K extends keyof ToleranceSet> = {
  [N in ToleranceSetName]: (typeof TOLERANCE_SETS)[N] extends Readonly<Record<K, unknown>>
    ? N
    : never;
}[ToleranceSetName];

/** Where a tolerance comes from. */
export interface ToleranceOrigin {
  /** Name of the set in `TOLERANCE_SETS`; null for your own limits. */
  readonly toleranceSet: ToleranceSetName | null;
  /** Where it is printed; null for your own limits. */
  readonly source: SourceId | null;
}

/** How far a measure may be over and under the plan. */
export interface BandInput {
  /** Allowed above the plan [length], 0 to 10 m. */
  readonly over: LengthInput;
  /** Allowed below the plan [length], 0 to 10 m. */
  readonly under: LengthInput;
}

/** How far a measure may be over and under the plan. Internal. */
export interface Band {
  readonly over: Length;
  readonly under: Length;
}

/** Your own over and under. Internal. */
export const bandField: Field<Band> = object(
  shapeOf<BandInput>()({ over: quantity(TOLERANCE), under: quantity(TOLERANCE) }),
);

/** The largest gap or distance under a straightedge or string of a length. */
export interface OverLengthInput {
  /** Largest gap or distance [length], 0 to 10 m. */
  readonly maximum: LengthInput;
  /** Length of the straightedge or string [length], more than 0 and at most 10 km. */
  readonly over: LengthInput;
}

/** The largest gap or distance over a length. Internal. */
export interface OverLengthLimit {
  readonly maximum: Length;
  readonly over: Length;
}

/** Your own largest gap or distance over a length. Internal. */
export const overLengthField: Field<OverLengthLimit> = object(
  shapeOf<OverLengthInput>()({ maximum: quantity(TOLERANCE), over: quantity(SITE_LENGTH) }),
);

/** A tolerance as read: the name of a set, or limits of the caller's own. Internal. */
export type Tolerance<T> =
  { readonly set: ToleranceSetName; readonly own: null } | { readonly set: null; readonly own: T };

const NAMES = Object.keys(TOLERANCE_SETS) as [ToleranceSetName, ...ToleranceSetName[]];

/** A tolerance: text is the name of a set, anything else is read as the caller's own. Internal. */
export const toleranceField = <T>(own: Field<T>): Field<Tolerance<T>> =>
  custom((reader, value, path): Tolerance<T> => {
    if (typeof value === 'string') return { set: reader.choice(value, path, NAMES), own: null };
    if (value !== undefined) return { set: null, own: own.read(reader, value, path) };
    const message = `missing. Name a set, such as "${NAMES[0]}", or give your own limits`;
    reader.fail('REQUIRED', path, message, { choices: NAMES.join(', ') });
    return { set: NAMES[0], own: null };
  });

/** The part of a set that a check needs, and what it is called in a message. Internal. */
export interface Needed<P> {
  /** Such as `flatness of the base`. */
  readonly words: string;
  readonly find: (set: ToleranceSet) => P | undefined;
}

/** Refuses a set that does not print what a check needs. Internal. */
export function checkTolerance(
  reader: Reader,
  tolerance: Tolerance<unknown> | undefined,
  { words, find }: Needed<unknown>,
  path: FieldPath,
): void {
  if (tolerance === undefined || tolerance.set === null) return;
  const { set } = tolerance;
  if (find(TOLERANCE_SETS[set]) !== undefined) return;
  const message = `"${set}" has no limit for the ${words}. Choose another set, or give your own limits`;
  reader.fail('LIMIT_NOT_SET', path, message, { set });
}

/** The limits of a tolerance that has been checked, and where they come from. Internal. */
export function limitsFrom<P, T extends object>(
  tolerance: Tolerance<T>,
  { find }: Needed<P>,
  published: (part: P) => T,
): T & ToleranceOrigin {
  if (tolerance.set === null) return { ...tolerance.own, toleranceSet: null, source: null };
  const set: ToleranceSet = TOLERANCE_SETS[tolerance.set];
  const part = find(set);
  if (part === undefined) throw new TypeError('a tolerance is checked before it is used');
  return { ...published(part), toleranceSet: tolerance.set, source: set.source };
}

/** A published over and under. Internal. */
export const bandOf = ({ over, under }: OverAndUnder): Band => ({
  over: referenceQuantity('length', over),
  under: referenceQuantity('length', under),
});

/** A published largest gap or distance over a length. Internal. */
export const overLengthOf = ({ most, over }: OverLength): OverLengthLimit => ({
  maximum: referenceQuantity('length', most),
  over: referenceQuantity('length', over),
});

/** A published minimum and maximum. Internal. */
export const betweenOf =
  <D extends Dimension>(dimension: D) =>
  ({ least, most }: LeastAndMost): Limits<Quantity<D> | undefined> => ({
    minimum: least === undefined ? undefined : referenceQuantity(dimension, least),
    maximum: most === undefined ? undefined : referenceQuantity(dimension, most),
  });
