import type { FieldPath } from '../errors.js';
import { custom, object, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
import { known } from '../invariant.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { SourceId } from '../sources/catalogue.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import {
  TOLERANCE_SETS,
  type MinimumAndMaximum,
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

/** Tolerance above and below the plan. */
export interface BandInput {
  /** Allowed above the plan [length], 0 to 10 m. */
  readonly over: LengthInput;
  /** Allowed below the plan [length], 0 to 10 m. */
  readonly under: LengthInput;
}

/** Tolerance above and below the plan. Internal. */
export interface Band {
  readonly over: Length;
  readonly under: Length;
}

/** Your own tolerance above and below. Internal. */
export const bandField: Field<Band> = object(
  shapeOf<BandInput>()({ over: quantity(TOLERANCE), under: quantity(TOLERANCE) }),
);

/** Maximum gap or distance under a straightedge or string of a length. */
export interface OverLengthInput {
  /** Maximum gap or distance [length], 0 to 10 m. */
  readonly maximum: LengthInput;
  /** Length of the straightedge or string [length], more than 0 and at most 10 km. */
  readonly over: LengthInput;
}

/** Maximum gap or distance over a length. Internal. */
export interface OverLengthLimit {
  readonly maximum: Length;
  readonly over: Length;
}

/** Your own maximum gap or distance over a length. Internal. */
export const overLengthField: Field<OverLengthLimit> = object(
  shapeOf<OverLengthInput>()({ maximum: quantity(TOLERANCE), over: quantity(SITE_LENGTH) }),
);

/** A tolerance as read: the name of a set, or your own limits. Internal. */
export type Tolerance<T> =
  { readonly set: ToleranceSetName; readonly own: null } | { readonly set: null; readonly own: T };

const NAMES = Object.keys(TOLERANCE_SETS) as [ToleranceSetName, ...ToleranceSetName[]];

/** A tolerance: text names a set, anything else is your own limits. Internal. */
export const toleranceField = <T>(own: Field<T>): Field<Tolerance<T>> =>
  custom((reader, value, path): Tolerance<T> => {
    if (typeof value === 'string') return { set: reader.choice(value, path, NAMES), own: null };
    if (value !== undefined) return { set: null, own: own.read(reader, value, path) };
    const message = `missing. Name a set, such as "${NAMES[0]}", or give your own limits`;
    reader.fail('REQUIRED', path, message, { choices: NAMES.join(', ') });
    return { set: NAMES[0], own: null };
  });

/** The part of a set that a check needs, and its name in a message. Internal. */
export interface Needed<P> {
  /** Such as `flatness of the base`. */
  readonly words: string;
  readonly find: (set: ToleranceSet) => P | undefined;
}

/** Refuses a set without the tolerance that a check needs. Internal. */
export function checkTolerance(
  reader: Reader,
  tolerance: Tolerance<unknown> | undefined,
  { words, find }: Needed<unknown>,
  path: FieldPath,
): void {
  const set = tolerance?.set ?? null;
  if (set === null || find(TOLERANCE_SETS[set]) !== undefined) return;
  const message = `"${set}" has no limit for the ${words}. Choose another set, or give your own limits`;
  reader.fail('LIMIT_NOT_SET', path, message, { set });
}

/** The limits of a tolerance that has been checked, and where they come from. Internal. */
export function limitsFrom<P, T extends object>(
  tolerance: Tolerance<T>,
  { words, find }: Needed<P>,
  published: (part: P) => T,
): T & ToleranceOrigin {
  if (tolerance.set === null) return { ...tolerance.own, toleranceSet: null, source: null };
  const set: ToleranceSet = TOLERANCE_SETS[tolerance.set];
  // checkTolerance has refused a set without it
  const part = known(find(set), `limit for the ${words}`);
  return { ...published(part), toleranceSet: tolerance.set, source: set.source };
}

/** A published over and under. Internal. */
export const bandOf = ({ over, under }: OverAndUnder): Band => ({
  over: referenceQuantity('length', over),
  under: referenceQuantity('length', under),
});

/** A published largest gap or distance over a length. Internal. */
export const overLengthOf = ({ maximum, over }: OverLength): OverLengthLimit => ({
  maximum: referenceQuantity('length', maximum),
  over: referenceQuantity('length', over),
});

/** A minimum and a maximum that have been checked, and where they come from. Internal. */
export function limitsBetween<D extends Dimension>(
  dimension: D,
  tolerance: Tolerance<Limits<Quantity<D> | undefined>>,
  needed: Needed<MinimumAndMaximum>,
): { readonly limits: Limits<Quantity<D> | null>; readonly origin: ToleranceOrigin } {
  const published = (limit: ReferenceValue | undefined) =>
    limit === undefined ? undefined : referenceQuantity(dimension, limit);
  const origin = limitsFrom(tolerance, needed, ({ minimum, maximum }) => ({
    minimum: published(minimum),
    maximum: published(maximum),
  }));
  return { limits: { minimum: origin.minimum ?? null, maximum: origin.maximum ?? null }, origin };
}

/** The options that name the tolerance of a check, as read. */
interface WithSet {
  readonly tolerance?: Tolerance<unknown> | undefined;
}

/** Refuses a set that does not print the one tolerance of a check. Internal. */
export const checkSetFor =
  (needed: Needed<unknown>) =>
  (reader: Reader, { tolerance }: WithSet, path: FieldPath): void => {
    checkTolerance(reader, tolerance, needed, [...path, 'tolerance']);
  };

/** Refuses a set that does not print the tolerance of a check for the layer. Internal. */
export const checkLayerSet =
  (neededFor: (layer: string) => Needed<unknown>) =>
  (
    reader: Reader,
    { layer, tolerance }: WithSet & { readonly layer?: string | undefined },
    path: FieldPath,
  ): void => {
    if (layer !== undefined) checkSetFor(neededFor(layer))(reader, { tolerance }, path);
  };
