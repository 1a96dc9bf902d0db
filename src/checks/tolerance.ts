import type { FieldPath } from '../errors.js';
import type { QuantityRule, Reader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import type { SourceId } from '../sources/catalogue.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import {
  TOLERANCE_SETS,
  type LeastAndMost,
  type OverAndUnder,
  type OverLength,
  type ToleranceSet,
  type ToleranceSetName,
} from '../sources/tolerance-sets.js';
import type { Dimension } from '../units/catalogue.js';
import { length, type LengthInput, type QuantityInput } from '../units/construct.js';
import type { Length, Quantity } from '../units/quantity.js';
import { SPAN, TOLERANCE } from './limits.js';

/** Names of the sets that print a tolerance of a kind. */
export type SetWith<K extends keyof ToleranceSet> = {
  [N in ToleranceSetName]: (typeof TOLERANCE_SETS)[N] extends Readonly<Record<K, unknown>>
    ? N
    : never;
}[ToleranceSetName];

/** Whose tolerance it is: a published set, or the caller's own, for which both are null. */
export interface ToleranceOrigin {
  readonly toleranceSet: ToleranceSetName | null;
  readonly source: SourceId | null;
}

const OWN: ToleranceOrigin = Object.freeze({ toleranceSet: null, source: null });

const NAMES = Object.keys(TOLERANCE_SETS) as [ToleranceSetName, ...ToleranceSetName[]];

/** Where a tolerance is read from, and what it is called in a message. Internal. */
export interface ToleranceField {
  readonly reader: Reader;
  readonly value: unknown;
  /** Default `tolerance`. */
  readonly path?: FieldPath;
  /** Such as `flatness of the base`. */
  readonly words: string;
}

const pathOf = ({ path = ['tolerance'] }: ToleranceField): FieldPath => path;

/**
 * Reads a tolerance: text is the name of a set, of which `find` takes the part that is needed;
 * anything else is read by `readOwn` as the caller's own. The stand-in is returned after a fault.
 * Internal.
 */
export function readTolerance<P, T>(
  field: ToleranceField,
  {
    find,
    published,
    readOwn,
    standIn,
  }: {
    readonly find: (set: ToleranceSet) => P | undefined;
    readonly published: (part: P) => T;
    readonly readOwn: (own: Readonly<Record<string, unknown>>, path: FieldPath) => T;
    readonly standIn: T;
  },
): T & ToleranceOrigin {
  const { reader, value, words } = field;
  const path = pathOf(field);
  if (value === undefined) {
    reader.fail(
      'REQUIRED',
      path,
      `is missing: name a set (${NAMES.join(', ')}) or give your own limits`,
    );
    return { ...standIn, ...OWN };
  }
  if (typeof value !== 'string') return { ...readOwn(reader.object(value, path), path), ...OWN };
  const name = reader.choice(value, path, NAMES);
  if (name !== value) return { ...standIn, ...OWN };
  const set: ToleranceSet = TOLERANCE_SETS[name];
  const part = find(set);
  if (part !== undefined) {
    return { ...published(part), toleranceSet: name, source: set.source };
  }
  reader.fail(
    'LIMIT_NOT_SET',
    path,
    `${name} prints no ${words}: choose another or give your own`,
    {
      set: name,
    },
  );
  return { ...standIn, ...OWN };
}

/** How far a measure may lie over and under what was planned, of the caller. */
export interface BandInput {
  readonly over: LengthInput;
  readonly under: LengthInput;
}

/** How far over and under what was planned. Internal. */
export interface Band {
  readonly over: Length;
  readonly under: Length;
}

/** Reads how far over and under the plan a measure may lie. Internal. */
export function readBand(
  field: ToleranceField,
  find: (set: ToleranceSet) => OverAndUnder | undefined,
): Band & ToleranceOrigin {
  return readTolerance(field, {
    find,
    published: ({ over, under }) => ({ over: lengthOf(over), under: lengthOf(under) }),
    readOwn: (own, path) => {
      const read = (name: 'over' | 'under') =>
        field.reader.quantity('length', own[name], [...path, name], TOLERANCE);
      return { over: read('over'), under: read('under') };
    },
    standIn: { over: NOTHING, under: NOTHING },
  });
}

/** The largest gap or distance of the caller, under a straightedge or string of a length. */
export interface OverLengthInput {
  readonly most: LengthInput;
  readonly over: LengthInput;
}

/** Reads the largest gap or distance under a straightedge or string of a length. Internal. */
export function readOverLength(
  field: ToleranceField,
  find: (set: ToleranceSet) => OverLength | undefined,
): { readonly most: Length; readonly over: Length } & ToleranceOrigin {
  return readTolerance(field, {
    find,
    published: ({ most, over }) => ({ most: lengthOf(most), over: lengthOf(over) }),
    readOwn: (own, path) => ({
      most: field.reader.quantity('length', own['most'], [...path, 'most'], TOLERANCE),
      over: field.reader.quantity('length', own['over'], [...path, 'over'], SPAN),
    }),
    standIn: { most: NOTHING, over: NOTHING },
  });
}

/** A least and a largest amount; null where there is none. */
export interface Between<D extends Dimension = 'length'> {
  readonly least: Quantity<D> | null;
  readonly most: Quantity<D> | null;
}

/** A least and a largest amount of the caller, one of them or both. */
export interface BetweenInput<D extends Dimension = 'length'> {
  readonly least?: QuantityInput<D>;
  readonly most?: QuantityInput<D>;
}

/** Reads a least and a largest amount, one of them or both. Internal. */
export function readBetween<D extends Dimension>(
  field: ToleranceField,
  find: (set: ToleranceSet) => LeastAndMost | undefined,
  { dimension, rule }: { readonly dimension: D; readonly rule: QuantityRule<D> },
): Between<D> & ToleranceOrigin {
  const { reader } = field;
  const figure = (value: ReferenceValue | undefined) =>
    value === undefined ? null : referenceQuantity(dimension, value);
  return readTolerance(field, {
    find,
    published: ({ least, most }) => ({ least: figure(least), most: figure(most) }),
    readOwn: (own, path) => {
      const read = (name: 'least' | 'most') =>
        own[name] === undefined
          ? null
          : reader.quantity(dimension, own[name], [...path, name], rule);
      const [least, most] = [read('least'), read('most')];
      if (least === null && most === null) {
        reader.fail('REQUIRED', path, 'is missing: give least, most or both');
      } else if (least !== null && most !== null && least.compare(most) > 0) {
        reader.fail('LIMITS_CONTRADICT', path, 'the least is more than the most');
      }
      return { least, most };
    },
    standIn: { least: null, most: null },
  });
}

const NOTHING = length(0, 'm');

const lengthOf = (value: ReferenceValue): Length => referenceQuantity('length', value);

/** How far a reading can be off, either way; nothing where it is not given. Internal. */
export const readUncertainty = (
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
): Length =>
  reader.quantity('length', fields['uncertainty'] ?? NOTHING, ['uncertainty'], TOLERANCE);
