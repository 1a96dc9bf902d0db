import { present } from '../invariant.js';
import { list, object, optional, quantity, ratio, text } from '../input/field.js';
import { AREA_OR_NONE, FRACTION, THICKNESS_OR_NONE, VOLUME_OR_NONE } from '../input/ranges.js';
import { isLeftOut, readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { sum } from '../units/aggregate.js';
import type { AreaInput, LengthInput, VolumeInput } from '../units/construct.js';
import type { Area, Density, Length, Mass, Volume } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  checkDryDensity,
  DRY_DENSITY,
  dryDensityOf,
  type DryDensityInput,
  type WithDensity,
} from './dry-density.js';
import type { StateVolume } from './state-volume.js';
import { massSteps, volumesOf, volumeStep, workOut, type Taken } from './stone-taken.js';

/** A part of a base with one thickness. */
export interface BasePartInput {
  /** Name the crew uses. Default: `part 1`, `part 2` and so on. */
  readonly name?: string;
  /** Area of the part, including its share of the extension [area], 0 to 1000 ha. */
  readonly area: AreaInput;
  /** Compacted thickness [length], 0 to 5 m. */
  readonly thickness: LengthInput;
}

/** A compacted layer that needs stone or sand. */
export interface BaseOrderOptions extends DryDensityInput {
  /** Area of the base, including its extension [area], 0 to 1000 ha. Give it with `thickness`, or give `volume` or `parts`. */
  readonly area?: AreaInput;
  /** Compacted thickness [length], 0 to 5 m. Give it with `area`, or give `volume` or `parts`. */
  readonly thickness?: LengthInput;
  /** Compacted volume in place [volume], such as fill in low ground. It replaces `area` and `thickness`. */
  readonly volume?: VolumeInput;
  /** Parts of one thickness each, for a base of several thicknesses. */
  readonly parts?: readonly BasePartInput[];
  /** Water over dry mass, a fraction 0 to 1. Default: 0. */
  readonly moisture?: number | string;
  /** Allowance added to the order, a fraction 0 to 1. Default: 0. */
  readonly waste?: number | string;
}

const PART = shapeOf<BasePartInput>()({
  name: optional(text()),
  area: quantity(AREA_OR_NONE),
  thickness: quantity(THICKNESS_OR_NONE),
});

const OPTIONS = shapeOf<BaseOrderOptions>()({
  area: optional(PART.area),
  thickness: optional(PART.thickness),
  volume: optional(quantity(VOLUME_OR_NONE)),
  parts: optional(list(object(PART), { of: 'parts' })),
  ...DRY_DENSITY,
  moisture: optional(ratio(FRACTION), ZERO_RATIO),
  waste: optional(ratio(FRACTION), ZERO_RATIO),
});

/** Material for one part of a base. `Absent` is `null` if no density need be given. */
export interface BasePart<Absent extends null = never> {
  /** Name the crew uses. */
  readonly name: string;
  /** Volume in place, without waste. */
  readonly compacted: StateVolume<'compacted'>;
  /** Volume in the truck, with waste. */
  readonly loose: StateVolume<'loose'>;
  /** Mass on the scale, with waste; null if no density is given. */
  readonly deliveredMass: Mass | Absent;
}

/** Material to order for a compacted layer. `Absent` is `null` if no density need be given. */
export interface BaseOrder<Absent extends null = never> extends Worked {
  /** Volume in place, without waste: the space it fills. */
  readonly compacted: StateVolume<'compacted'>;
  /** Volume in the truck, with waste. */
  readonly loose: StateVolume<'loose'>;
  /** Mass of dry stone, with waste; null if no density is given. */
  readonly dryMass: Mass | Absent;
  /** Mass on the scale, dry stone and its water, with waste; null if no density is given. */
  readonly deliveredMass: Mass | Absent;
  /** Mass of the water: you pay for it, but it does not fill the hole; null if no density is given. */
  readonly water: Mass | Absent;
  /** Dry density in place; null if no density is given. */
  readonly compactedDryDensity: Density | Absent;
  /** The same for each part; a base of one thickness has one part. */
  readonly parts: readonly BasePart<Absent>[];
}

/**
 * Stone or sand for a compacted layer, as compacted volume, loose volume and mass. Over all parts:
 * `Vc = sum(A t)`, `Vl = Vc (1 + waste) / (compacted per loose)`,
 * `dry = Vc (1 + waste) x dry density`, `delivered = dry (1 + moisture)`. A mass is never multiplied
 * by the loose factor.
 *
 * @param options - see {@link BaseOrderOptions}
 * @returns compacted and loose volume, dry and delivered mass, water, and the same for each part; no
 *   masses if no density is given
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless area and thickness or parts, and the ratio or
 *   both densities are given, `OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE`,
 *   `EMPTY_LIST` and the reading codes
 * @source derived
 * @example
 * const stone = { compactedDryDensity: '3700 lb/yd3', compactedPerLoose: 0.8 } as const;
 * const order = baseOrder({ area: '81 ft2', thickness: '4 in', moisture: 0.05, ...stone });
 * order.loose.to('yd3').toString() //=> '1.25'
 * order.deliveredMass.to('lb').toString() //=> '3885'
 * const both = baseOrder({
 *   parts: [
 *     { name: 'drive', area: '81 ft2', thickness: '8 in' },
 *     { name: 'walk', area: '81 ft2', thickness: '4 in' },
 *   ],
 *   ...stone,
 * });
 * both.compacted.to('yd3').toString() //=> '3'
 * both.parts[0]?.loose.to('yd3').toString() //=> '2.5'
 * baseOrder({ area: '81 ft2', thickness: '4 in', compactedPerLoose: 0.8 }).dryMass //=> null
 */
export function baseOrder(options: BaseOrderOptions & WithDensity): BaseOrder;
export function baseOrder(options: BaseOrderOptions): BaseOrder<null>;
export function baseOrder(options: BaseOrderOptions): BaseOrder<null> {
  const read = readOptions(options, OPTIONS, checkOrder);
  const density = dryDensityOf(read);
  const parts = partsOf(read);
  const { moisture, waste } = read;
  const allowances = { moisture, waste, density };
  const take = (compacted: Volume) => workOut(compacted, allowances);
  const each = parts.map((part) => take(part.compacted));
  const total = take(sum(each.map(({ compacted }) => compacted)));
  const { dryMass, deliveredMass } = total;
  const order = Object.assign(volumesOf(total), {
    dryMass,
    deliveredMass,
    water: dryMass === null ? null : present(deliveredMass, 'delivered mass').minus(dryMass),
    compactedDryDensity: density.compacted,
    parts: each.map((part, index) => ({
      name: parts[index]?.name ?? `part ${index + 1}`,
      ...volumesOf(part),
      deliveredMass: part.deliveredMass,
    })),
  });
  return withWorking(order, () => [
    ...partSteps(parts, each),
    volumeStep(total, allowances),
    ...massSteps(total, allowances),
  ]);
}

/** One thickness, one volume or several parts, and a ratio of compacted to loose. */
const checkOrder: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  const instead = (['parts', 'volume'] as const).find((name) => raw[name] !== undefined);
  for (const name of ['area', 'thickness'] as const) {
    if (instead !== undefined && raw[name] !== undefined) {
      const message = `${instead} already gives it. Leave out ${name} or ${instead}`;
      reader.fail('CONFLICTING_FIELDS', [...path, name], message);
    }
    // reading the field itself reports that it is missing
    const isMissing = instead === undefined && isLeftOut(values, name);
    if (isMissing) PART[name].read(reader, undefined, [...path, name]);
  }
  if (raw['parts'] !== undefined && raw['volume'] !== undefined) {
    const message = 'each of the parts has its own volume. Leave out volume or parts';
    reader.fail('CONFLICTING_FIELDS', [...path, 'volume'], message);
  }
  checkDryDensity(reader, values, raw, { path, isMeasured: false });
};

interface Part {
  readonly name: string | undefined;
  readonly compacted: Volume;
  /** Area and thickness it was worked out from; null if the volume itself is given. */
  readonly from: { readonly area: Area; readonly thickness: Length } | null;
}

function partsOf({ area, thickness, volume, parts }: Values<typeof OPTIONS>): readonly Part[] {
  if (volume !== undefined) return [{ name: undefined, compacted: volume, from: null }];
  const whole =
    area === undefined || thickness === undefined ? [] : [{ area, thickness, name: undefined }];
  return (parts ?? whole).map(({ name, ...from }) => ({
    name,
    compacted: from.area.times(from.thickness),
    from,
  }));
}

const partSteps = (parts: readonly Part[], each: readonly Taken[]): Step[] =>
  each.flatMap(({ compacted }, index) => {
    const { from = null, name: own } = parts[index] ?? {};
    if (from === null) return [];
    const name = own ?? (parts.length === 1 ? undefined : `part ${index + 1}`);
    return derivedStep({
      title: name === undefined ? 'Compacted volume' : `Compacted volume, ${name}`,
      formula: 'Vc = A * t',
      given: [given('A', 'area', from.area), given('t', 'compacted thickness', from.thickness)],
      result: given('Vc', 'compacted volume', compacted),
    });
  });
