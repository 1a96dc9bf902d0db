import { makeReader, type Reader } from '../input/reader.js';
import type { AreaInput, LengthInput, MassInput, VolumeInput } from '../units/construct.js';
import {
  exactOf,
  fromSI,
  type Area,
  type Length,
  type Mass,
  type Quantity,
  type Volume,
} from '../units/quantity.js';
import {
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { given, withWorking, type StepValue, type Worked } from '../working.js';
import { readRatio } from './exact.js';
import { wholeDown, wholeUp } from './whole-number.js';

/** A pack: a bag, a layer, a pallet, a truck. */
export interface PackInput<A> {
  readonly name: string;
  /** The smallest pack: units, or an amount; a larger pack: how many of the pack before. */
  readonly holds: A | number;
}

/** How an order is rounded. */
export interface OrderRules<A> {
  /** From the smallest pack to the largest. */
  readonly packs: readonly PackInput<A>[];
  /** The smallest pack that is sold, by name; default the smallest of all. */
  readonly soldBy?: string;
  /** True where any part of a pack is sold. Default false. */
  readonly partial?: boolean;
  /** Smallest order, in packs that are sold; default none. */
  readonly minimum?: number | string;
}

/** An order in one kind of pack. */
export interface PackCount<A> {
  readonly name: string;
  /** What one holds. */
  readonly holds: A;
  /** Packs that the order takes up, the last perhaps part full. */
  readonly count: number;
  /** Packs of it that are full. */
  readonly full: number;
  /** What rounding the need up to this pack would make: to compare. */
  readonly rounded: { readonly ordered: A; readonly surplus: A };
}

/** An order rounded up to packs. */
export interface OrderPacks<A> extends Worked {
  readonly need: A;
  readonly ordered: A;
  /** What is left over. */
  readonly surplus: A;
  /** Surplus over need: 0.02 means two in a hundred. 0 for no need. */
  readonly surplusShare: number;
  /** True where the smallest order was more than the need. */
  readonly minimumApplied: boolean;
  /** From the smallest pack to the largest. */
  readonly packs: readonly PackCount<A>[];
  /** The order as it comes: full packs of the largest first, then of the next; packs of none left out. */
  readonly load: readonly { readonly name: string; readonly count: number }[];
}

/**
 * Rounds a need up to the packs in which it is sold: `n = ceil(need / pack)`, exactly, so that exactly
 * ten bags are ten and a hair more is eleven; nothing needed is no pack, whatever the smallest order.
 * An order is never less than the need, and less than one pack more unless the smallest order decides.
 * Colours differ from batch to batch: order once.
 *
 * @param options - one need: `units`, how many, not negative; or `mass` [mass], `volume` [volume], `area`
 *   [area] or `length` [length]
 * @param options.packs - from the smallest to the largest, each with its `name` and what it `holds`: the
 *   smallest units or an amount, the others how many of the pack before
 * @param options.soldBy - name of the smallest pack sold, default the smallest
 * @param options.partial - part of a pack is sold, default false
 * @param options.minimum - smallest order in packs sold, default none
 * @returns need, order, what is left over, packs of each kind, and the order as it comes
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless one need is given, `UNKNOWN_ID` for a pack that is
 *   not listed, `DUPLICATE_ID`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const order = orderPacks({
 *   units: 3129,
 *   packs: [{ name: 'layer', holds: 40 }, { name: 'pallet', holds: 10 }],
 * });
 * order.ordered //=> 3160
 * order.surplus //=> 31
 * order.load //=> [{ name: 'pallet', count: 7 }, { name: 'layer', count: 9 }]
 */
export function orderPacks(
  options: OrderRules<number> & { readonly units: number | string },
): OrderPacks<number>;
export function orderPacks(
  options: OrderRules<MassInput> & { readonly mass: MassInput },
): OrderPacks<Mass>;
export function orderPacks(
  options: OrderRules<VolumeInput> & { readonly volume: VolumeInput },
): OrderPacks<Volume>;
export function orderPacks(
  options: OrderRules<AreaInput> & { readonly area: AreaInput },
): OrderPacks<Area>;
export function orderPacks(
  options: OrderRules<LengthInput> & { readonly length: LengthInput },
): OrderPacks<Length>;
export function orderPacks(options: object): OrderPacks<Amount> {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const measure = readMeasure(reader, fields);
  const need = readAmount(reader, measure, fields[measure], [measure], 'not-negative');
  const packs = readPacks(reader, fields['packs'], measure);
  const sold = readSoldBy(reader, fields['soldBy'], packs);
  const partial = reader.flag(fields['partial'] ?? false, ['partial']);
  const minimum = readMinimum(reader, fields['minimum'], partial);
  reader.finish();

  const soldPack = packs[sold]?.holds ?? ONE_RATIO;
  const isNone = signOfRatio(need) === 0;
  const rounded = partial ? need : roundedUp(need, soldPack);
  const smallest = multiplyRatios(minimum, soldPack);
  const minimumApplied = !isNone && compareRatios(smallest, rounded) > 0;
  const ordered = minimumApplied ? smallest : rounded;
  const surplus = subtractRatios(ordered, need);
  const amount = (value: Ratio) => amountOf(measure, value);
  const order = {
    need: amount(need),
    ordered: amount(ordered),
    surplus: amount(surplus),
    surplusShare: isNone ? 0 : ratioToNumber(divideRatios(surplus, need)),
    minimumApplied,
    packs: packs.map(({ name, holds }) => {
      const up = roundedUp(need, holds);
      return {
        name,
        holds: amount(holds),
        count: wholeUp(ordered, holds),
        full: wholeDown(ordered, holds),
        rounded: { ordered: amount(up), surplus: amount(subtractRatios(up, need)) },
      };
    }),
    load: loadOf(ordered, packs.slice(sold)),
  };
  return withWorking(order, () => [
    {
      title: `Rounded up to ${packs[sold]?.name ?? ''}`,
      formula: partial ? 'Q = max(q, m p)' : 'Q = max(ceil(q / p), m) p, 0 for q = 0',
      given: [
        given('q', 'need', stepValue(measure, need)),
        given('p', 'pack sold', stepValue(measure, soldPack)),
        given('m', 'smallest order, in packs', ratioToDecimal(minimum)),
      ],
      result: given('Q', 'order', stepValue(measure, ordered)),
      source: 'derived',
    },
  ]);
}

type Measure = 'units' | 'mass' | 'volume' | 'area' | 'length';
type Amount = number | Quantity<Exclude<Measure, 'units'>>;

const MEASURES: readonly [Measure, ...Measure[]] = ['units', 'mass', 'volume', 'area', 'length'];
const MOST_PER_PACK = 1_000_000;

function readMeasure(reader: Reader, fields: Readonly<Record<string, unknown>>): Measure {
  const [first, second] = MEASURES.filter((name) => fields[name] !== undefined);
  if (second !== undefined) {
    reader.fail('CONFLICTING_FIELDS', [second], `give one need, not ${first} and ${second}`);
  }
  return first ?? 'units';
}

function readAmount(
  reader: Reader,
  measure: Measure,
  value: unknown,
  path: readonly (string | number)[],
  sign: 'positive' | 'not-negative',
): Ratio {
  if (measure === 'units') return readRatio(reader, value, path, { sign });
  return exactOf(reader.quantity(measure, value, path, { sign }));
}

interface Pack {
  readonly name: string;
  /** In units or SI units. */
  readonly holds: Ratio;
}

function readPacks(reader: Reader, value: unknown, measure: Measure): Pack[] {
  const names = new Set<string>();
  let holds = ONE_RATIO as Ratio;
  return reader.list(value, ['packs']).map((item, index) => {
    const path = ['packs', index];
    const fields = reader.object(item, path);
    const name = reader.text(fields['name'], [...path, 'name']);
    if (name !== '' && names.has(name)) {
      reader.fail('DUPLICATE_ID', [...path, 'name'], `the pack ${name} stands twice`);
    }
    names.add(name);
    const at = [...path, 'holds'];
    holds =
      index === 0 && measure !== 'units'
        ? readAmount(reader, measure, fields['holds'], at, 'positive')
        : multiplyRatios(holds, readCount(reader, fields['holds'], at));
    return { name, holds };
  });
}

function readCount(reader: Reader, value: unknown, path: readonly (string | number)[]): Ratio {
  const count = reader.number(value, path, { sign: 'positive', most: MOST_PER_PACK });
  if (!count.isInteger()) {
    reader.fail('OUT_OF_RANGE', path, 'a pack holds a whole number of the pack before');
  }
  return decimalRatio(count);
}

function readSoldBy(reader: Reader, value: unknown, packs: readonly Pack[]): number {
  if (value === undefined) return 0;
  const name = reader.text(value, ['soldBy']);
  const index = packs.findIndex((pack) => pack.name === name);
  if (index < 0 && name !== '') {
    reader.fail('UNKNOWN_ID', ['soldBy'], `there is no pack ${JSON.stringify(name)} in the list`);
  }
  return Math.max(index, 0);
}

function readMinimum(reader: Reader, value: unknown, partial: boolean): Ratio {
  const least = readRatio(reader, value ?? 0, ['minimum'], { sign: 'not-negative' });
  if (!partial && !ratioToDecimal(least).isInteger()) {
    reader.fail('OUT_OF_RANGE', ['minimum'], 'must be a whole number of packs');
  }
  return least;
}

const roundedUp = (need: Ratio, pack: Ratio): Ratio =>
  multiplyRatios(wholeRatio(wholeUp(need, pack)), pack);

/** Full packs from the largest down; what fills no pack of the smallest is not listed. */
function loadOf(ordered: Ratio, packs: readonly Pack[]): { name: string; count: number }[] {
  let rest = ordered;
  return [...packs].reverse().flatMap(({ name, holds }) => {
    const count = wholeDown(rest, holds);
    rest = subtractRatios(rest, multiplyRatios(wholeRatio(count), holds));
    return count === 0 ? [] : [{ name, count }];
  });
}

const amountOf = (measure: Measure, value: Ratio): Amount =>
  measure === 'units' ? ratioToNumber(value) : fromSI(measure, value);

const stepValue = (measure: Measure, value: Ratio): StepValue =>
  measure === 'units' ? ratioToDecimal(value) : fromSI(measure, value);
