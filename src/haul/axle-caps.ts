import type { FieldPath } from '../errors.js';
import type { QuantityRule, Reader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import { AXLE_LIMITS, type AxleLimitName } from '../sources/axle-limits.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import type { LengthInput, MassInput } from '../units/construct.js';
import type { Length, Mass } from '../units/quantity.js';
import { LENGTH, MASS } from '../site/limits.js';

/** Caps beside the formula, given by the caller. What is left out is not checked. */
export interface AxleCapsInput {
  readonly single?: MassInput;
  readonly tandem?: MassInput;
  readonly gross?: MassInput;
  /** Axles no further apart count as one; only with `single`. */
  readonly singleSpread?: LengthInput;
  /** Axles no further apart, first to last, are a tandem; goes with `tandem`. */
  readonly tandemSpread?: LengthInput;
  /** From this spread on two tandems may carry a tandem cap each; only with `tandem`. */
  readonly twoTandemsFrom?: LengthInput;
}

/** A cap with where it comes from. */
export interface Cap {
  readonly mass: Mass;
  readonly status: SourceStatus | 'given';
  readonly source: SourceId | null;
}

/** Caps that have been read. Internal. */
export interface AxleCaps {
  readonly single?: Cap;
  readonly tandem?: Cap;
  readonly gross?: Cap;
  readonly singleSpread?: Length;
  readonly tandemSpread?: Length;
  readonly twoTandemsFrom?: Length;
}

/** Reads caps: the name of a set, or the caller's own. There is no default. Internal. */
export function readAxleCaps(reader: Reader, value: unknown, path: FieldPath): AxleCaps {
  if (typeof value === 'string') {
    const names = Object.keys(AXLE_LIMITS) as [AxleLimitName, ...AxleLimitName[]];
    return published(reader.choice(value, path, names));
  }
  if (value === undefined) {
    const sets = Object.keys(AXLE_LIMITS).join(', ');
    reader.fail('REQUIRED', path, `is missing: give your caps, or name a set (${sets})`);
    return {};
  }
  return readOwn(reader, reader.object(value, path), path);
}

function published(name: AxleLimitName): AxleCaps {
  const set = AXLE_LIMITS[name];
  const cap = (figure: ReferenceValue): Cap => ({
    mass: referenceQuantity('mass', figure),
    status: statusOf(figure.source),
    source: figure.source,
  });
  return {
    single: cap(set.single),
    tandem: cap(set.tandem),
    gross: cap(set.gross),
    singleSpread: referenceQuantity('length', set.singleSpread),
    tandemSpread: referenceQuantity('length', set.tandemSpread),
    twoTandemsFrom: referenceQuantity('length', set.twoTandemsFrom),
  };
}

function readOwn(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
): AxleCaps {
  const read = <D extends 'mass' | 'length'>(name: string, dimension: D, rule: QuantityRule<D>) =>
    fields[name] === undefined
      ? undefined
      : reader.quantity(dimension, fields[name], [...path, name], rule);
  const cap = (name: string): Cap | undefined => {
    const mass = read(name, 'mass', MASS);
    return mass === undefined ? undefined : { mass, status: 'given', source: null };
  };
  if (fields['tandem'] !== undefined && fields['tandemSpread'] === undefined) {
    reader.fail(
      'REQUIRED',
      [...path, 'tandemSpread'],
      'is missing: how far apart may the axles of a tandem stand?',
    );
  }
  return withoutUndefined({
    single: cap('single'),
    tandem: cap('tandem'),
    gross: cap('gross'),
    singleSpread: read('singleSpread', 'length', LENGTH),
    tandemSpread: read('tandemSpread', 'length', LENGTH),
    twoTandemsFrom: read('twoTandemsFrom', 'length', LENGTH),
  });
}

type Defined<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

function withoutUndefined<T extends object>(fields: T): Defined<T> {
  const kept = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as Defined<T>;
}
