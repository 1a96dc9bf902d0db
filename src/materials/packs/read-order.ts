import { known } from '../../invariant.js';
import type { FieldPath } from '../../errors.js';
import {
  custom,
  flag,
  list,
  object,
  optional,
  quantity,
  ratio,
  text,
  whole,
} from '../../input/field.js';
import { isPlain } from '../../input/plain.js';
import {
  AREA,
  AREA_OR_NONE,
  BOX,
  PACKS,
  PIECES_IN_PACK,
  DISTANCE_OR_NONE,
  MASS_OR_NONE,
  PAVERS,
  PAYLOAD,
  PIECE,
  VOLUME_OR_NONE,
} from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { isLeftOut, readOptions, shapeOf, type Check, type Field } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { Dimension } from '../../units/catalogue.js';
import type { AreaInput, LengthInput, MassInput, VolumeInput } from '../../units/construct.js';
import { exactOf, type Quantity } from '../../units/quantity.js';
import {
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';

/** A pack: a bag, a layer, a pallet, a truck. */
export interface PackInput<A> {
  /** Name of the pack. Each name once. */
  readonly name: string;
  /** The smallest pack: pieces or an amount. A larger pack: how many of the pack before. */
  readonly holds: A | number;
}

/** Packs, and how an order is rounded. */
export interface OrderRules<A> {
  /** From the smallest pack to the largest, 1 to 100. */
  readonly packs: readonly PackInput<A>[];
  /** Name of the smallest pack that is sold. Default: the first of `packs`. */
  readonly soldBy?: string;
  /** True if any part of a pack is sold. Default: false. */
  readonly sellsPartPacks?: boolean;
  /** Minimum order, in packs that are sold, 0 to 1000. Default: none. */
  readonly minimum?: number | string;
}

/** Pieces to order, such as pavers. */
export interface OrderUnitsOptions extends OrderRules<number> {
  /** Pieces needed, a whole number, 0 to 1000 million. */
  readonly units: number | string;
}

/** A mass to order, such as sand in bags. */
export interface OrderMassOptions extends OrderRules<MassInput> {
  /** Mass needed [mass], 0 to 1 000 000 t. */
  readonly mass: MassInput;
}

/** A volume to order, such as stone by the load. */
export interface OrderVolumeOptions extends OrderRules<VolumeInput> {
  /** Volume needed [volume], 0 to 10 million m3. */
  readonly volume: VolumeInput;
}

/** An area to order, such as geotextile in rolls. */
export interface OrderAreaOptions extends OrderRules<AreaInput> {
  /** Area needed [area], 0 to 1000 ha. */
  readonly area: AreaInput;
}

/** A length to order, such as edging in pieces. */
export interface OrderLengthOptions extends OrderRules<LengthInput> {
  /** Length needed [length], 0 to 100 km. */
  readonly length: LengthInput;
}

/** Kind of quantity of an order. Internal. */
export type Measure = 'units' | 'mass' | 'volume' | 'area' | 'length';

const MEASURES: readonly Measure[] = ['units', 'mass', 'volume', 'area', 'length'];

const exactly = <D extends Dimension>({ read }: Field<Quantity<D>>): Field<Ratio> =>
  custom((reader, value, path) => exactOf(read(reader, value, path)));

const counted = ({ read }: Field<number>): Field<Ratio> =>
  custom((reader, value, path) => wholeRatio(read(reader, value, path)));

const NEED: Readonly<Record<Measure, Field<Ratio>>> = {
  units: counted(whole(PAVERS)),
  mass: exactly(quantity(MASS_OR_NONE)),
  volume: exactly(quantity(VOLUME_OR_NONE)),
  area: exactly(quantity(AREA_OR_NONE)),
  length: exactly(quantity(DISTANCE_OR_NONE)),
};

const COUNTED = counted(whole(PIECES_IN_PACK));

/** Quantity in the smallest pack. */
const HOLDS: Readonly<Record<Measure, Field<Ratio>>> = {
  units: COUNTED,
  mass: exactly(quantity(PAYLOAD)),
  volume: exactly(quantity(BOX)),
  area: exactly(quantity(AREA)),
  length: exactly(quantity(PIECE)),
};

interface AnyOrder extends OrderRules<object>, Partial<Record<Measure, unknown>> {}

/** Without a need, the kind of the packs is not known. */
const shapeFor = (measure: Measure | undefined) =>
  shapeOf<AnyOrder>()({
    units: optional(NEED.units),
    mass: optional(NEED.mass),
    volume: optional(NEED.volume),
    area: optional(NEED.area),
    length: optional(NEED.length),
    packs: list(object(packOf(measure)), { of: 'packs', most: 100, unique: 'name' }),
    soldBy: optional(text()),
    sellsPartPacks: optional(flag, false),
    minimum: optional(ratio(PACKS), ZERO_RATIO),
  });

const packOf = (measure: Measure | undefined) =>
  shapeOf<PackInput<object>>()({
    name: text(),
    holds: custom((reader: Reader, value: unknown, path: FieldPath) => {
      if (measure === undefined) return ONE_RATIO;
      const isSmallest = path.at(-2) === 0;
      return (isSmallest ? HOLDS[measure] : COUNTED).read(reader, value, path);
    }),
  });

/** A pack, and its quantity in pieces or SI units. Internal. */
export interface Pack {
  readonly name: string;
  readonly holds: Ratio;
}

/** An order that has been read. Internal. */
export interface Order<M extends Measure = Measure> {
  readonly measure: M;
  readonly need: Ratio;
  readonly packs: readonly Pack[];
  /** The smallest pack that is sold: one of the packs. */
  readonly sold: Pack;
  readonly sellsPartPacks: boolean;
  readonly minimum: Ratio;
}

/** Reads the need and the packs it is sold in. Internal. */
export function readOrder(options: unknown): Order {
  const measure = isPlain(options)
    ? MEASURES.find((name) => options[name] !== undefined)
    : undefined;
  const read = readOptions(options, shapeFor(measure), checkOrder);
  const { soldBy, sellsPartPacks, minimum } = read;
  let holds: Ratio = ONE_RATIO;
  const packs = read.packs.map((pack): Pack => {
    holds = multiplyRatios(holds, pack.holds);
    return { name: pack.name, holds };
  });
  // the reading refuses an empty list and a name that is not in it
  const sold = known(
    packs.find(({ name }) => soldBy === undefined || name === soldBy),
    'pack',
  );
  const asked = known(measure, 'measure');
  return {
    measure: asked,
    need: known(read[asked], asked),
    packs,
    sold,
    sellsPartPacks,
    minimum,
  };
}

const checkOrder: Check<ReturnType<typeof shapeFor>> = (reader, values, path, raw) => {
  const [first, second] = MEASURES.filter((name) => raw[name] !== undefined);
  if (second !== undefined) {
    const message = `${first} is given too, and an order has one need. Leave out one of them`;
    reader.fail('CONFLICTING_FIELDS', [...path, second], message);
  }
  if (MEASURES.every((name) => isLeftOut(values, name))) {
    const message = 'missing. Write the need as units, mass, volume, area or length';
    reader.fail('REQUIRED', [...path, 'units'], message);
  }
  const { packs, soldBy, minimum, sellsPartPacks } = values;
  if (packs !== undefined && soldBy !== undefined && !packs.some(({ name }) => name === soldBy)) {
    const message = `no pack has the name ${shown(soldBy)}. Use the name of one of packs`;
    reader.fail('UNKNOWN_ID', [...path, 'soldBy'], message);
  }
  if (minimum === undefined || sellsPartPacks !== false) return;
  if (ratioToDecimal(minimum).isInteger()) return;
  const message =
    'is not a whole number of packs. Write a whole number, or set sellsPartPacks to true';
  reader.fail('NOT_WHOLE', [...path, 'minimum'], message);
};
