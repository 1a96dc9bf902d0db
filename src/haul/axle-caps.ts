import type { FieldPath } from '../errors.js';
import { bothOrNeither } from '../input/both-or-neither.js';
import { custom, object, optional, quantity } from '../input/field.js';
import { PAYLOAD, SITE_LENGTH } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Check, type Field, type Values } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import { AXLE_LIMITS, type AxleLimitName } from '../sources/axle-limits.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import type { LengthInput, MassInput } from '../units/construct.js';
import type { Length, Mass } from '../units/quantity.js';

/** Your own caps beside the formula. What you leave out is not checked. */
export interface AxleCapsInput {
  /** Cap on a single axle [mass], more than 0 and at most 10 000 t. */
  readonly single?: MassInput;
  /** Cap on a tandem [mass], more than 0 and at most 10 000 t. Needs `tandemSpread`. */
  readonly tandem?: MassInput;
  /** Cap on the whole vehicle [mass], more than 0 and at most 10 000 t. */
  readonly gross?: MassInput;
  /** Axles no farther apart than this count as one [length]. Needs `single`. */
  readonly singleSpread?: LengthInput;
  /** Axles no farther apart than this, first to last, are a tandem [length]. Needs `tandem`. */
  readonly tandemSpread?: LengthInput;
  /** From this spread on, two tandems may carry a tandem cap each [length]. Needs `tandem`. */
  readonly twoTandemsFrom?: LengthInput;
}

const OWN = shapeOf<AxleCapsInput>()({
  single: optional(quantity(PAYLOAD)),
  tandem: optional(quantity(PAYLOAD)),
  gross: optional(quantity(PAYLOAD)),
  singleSpread: optional(quantity(SITE_LENGTH)),
  tandemSpread: optional(quantity(SITE_LENGTH)),
  twoTandemsFrom: optional(quantity(SITE_LENGTH)),
});

/** A cap with where it comes from. Internal. */
export interface Cap {
  readonly mass: Mass;
  readonly status: SourceStatus | 'given';
  readonly source: SourceId | null;
}

/** Caps that have been read. Internal. */
export interface AxleCaps {
  readonly single: Cap | undefined;
  readonly tandem: Cap | undefined;
  readonly gross: Cap | undefined;
  readonly singleSpread: Length | undefined;
  readonly tandemSpread: Length | undefined;
  readonly twoTandemsFrom: Length | undefined;
}

const NAMES = Object.keys(AXLE_LIMITS) as [AxleLimitName, ...AxleLimitName[]];

/** A cap needs its spread, and a spread its cap. */
const checkOwn: Check<typeof OWN> = (reader, _, path, raw) => {
  bothOrNeither(reader, raw, ['tandem', 'tandemSpread'], path);
  for (const [spread, cap] of [
    ['singleSpread', 'single'],
    ['twoTandemsFrom', 'tandem'],
  ] as const) {
    if (raw[spread] === undefined || raw[cap] !== undefined) continue;
    reader.fail('REQUIRED', [...path, cap], `missing. ${spread} needs it`, { needs: spread });
  }
};

const OWN_CAPS = object(OWN, checkOwn);

/** Caps: the name of a set, or your own. There is no default. Internal. */
export const axleCaps: Field<AxleCaps> = custom(readAxleCaps);

function readAxleCaps(reader: Reader, value: unknown, path: FieldPath): AxleCaps {
  if (typeof value === 'string') return published(reader.choice(value, path, NAMES));
  if (value === undefined) {
    const message = `missing. Give your own caps, or name a set (${NAMES.join(', ')})`;
    reader.fail('REQUIRED', path, message);
    return ownCaps({});
  }
  return ownCaps(OWN_CAPS.read(reader, value, path));
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

function ownCaps(own: Partial<Values<typeof OWN>>): AxleCaps {
  const cap = (mass: Mass | undefined): Cap | undefined =>
    mass === undefined ? undefined : { mass, status: 'given', source: null };
  const { singleSpread, tandemSpread, twoTandemsFrom } = own;
  return {
    single: cap(own.single),
    tandem: cap(own.tandem),
    gross: cap(own.gross),
    singleSpread,
    tandemSpread,
    twoTandemsFrom,
  };
}
