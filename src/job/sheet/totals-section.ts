import { volume } from '../../units/construct.js';
import { wholePacks } from '../../volumes/whole-packs.js';
import { ZERO } from '../../units/decimal.js';
import {
  fromSIDecimal,
  isQuantity,
  type AnyQuantity,
  type Area,
  type Mass,
  type Volume,
} from '../../units/quantity.js';
import { materialList, type Amount, type MaterialLine } from '../order/material-list.js';
import type { JobPlan, StreamPlan } from '../plan/plan.js';
import { countedPacks } from './counted-packs.js';
import { entry, heading, wrap } from './layout.js';
import type { SheetUnits } from './units-of-sheet.js';

/** The part of the sheet about orders and loads. Internal. */
export function totalsSection(plan: JobPlan, units: SheetUnits, width: number): string[] {
  const { totals } = plan;
  return [
    ...heading('ORDER AND CART AWAY', width),
    ...stream('Base stone', totals.base, units, width, true),
    ...stream('Bedding sand', totals.bedding, units, width, true),
    ...(totals.pavers === null ? [] : ['', ...entry('Pavers to order', `${totals.pavers}`, width)]),
    ...packLines(plan, units, width),
    ...optional('Old asphalt', totals.asphalt, units, width),
    ...optional('Old concrete', totals.concrete, units, width),
    ...optional('Soil', totals.spoil, units, width),
  ];
}

const optional = (name: string, part: StreamPlan | null, units: SheetUnits, width: number) =>
  part === null ? [] : stream(name, part, units, width, false);

function stream(
  name: string,
  part: StreamPlan,
  units: SheetUnits,
  width: number,
  isOrdered: boolean,
): string[] {
  const { count, limitedBy } = part.loads;
  const limit = limitedBy === 'mass' ? 'payload' : 'box';
  const lines = [
    '',
    ...wrap(name, width),
    ...entry('loose', units.volume(part.loose.volume), width),
    ...entry('weight', units.mass(part.mass), width),
  ];
  if (isOrdered) {
    const { unit, name: packs } = units.orderVolume;
    const order = wholePacks({ volume: part.loose.volume, pack: volume(1, unit) });
    lines.push(...entry(`order in ${packs}`, `${order.count} ${unit}`, width));
  }
  lines.push(...entry(`loads (the ${limit} decides)`, `${count}`, width));
  return lines;
}

/** The order list, where the job names packs or supplies. */
function packLines(plan: JobPlan, units: SheetUnits, width: number): string[] {
  if (plan.job.materials === undefined) return [];
  const lines = materialList(plan).lines.filter(
    ({ material, packs }) => packs.length > 0 || !STREAMS.has(material),
  );
  if (lines.length === 0) return [];
  return ['', 'Order list', ...lines.flatMap((line) => packLine(line, units, width))];
}

/** What the lines above say already. */
const STREAMS = new Set<MaterialLine['material']>(['base', 'bedding', 'pavers']);

const MATERIAL_WORDS: Readonly<Record<MaterialLine['material'], string>> = {
  base: 'base stone',
  bedding: 'bedding sand',
  pavers: 'pavers',
  'joint-sand': 'joint sand',
  'edge-restraint': 'edge restraint, pieces',
  spikes: 'spikes',
  geotextile: 'geotextile',
};

function packLine(line: MaterialLine, units: SheetUnits, width: number): string[] {
  const name = MATERIAL_WORDS[line.material];
  if (line.packs.length === 0) return entry(name, amountText(line.ordered, line, units), width);
  const packs = line.packs.map(({ name: pack, count }) => countedPacks(pack, count)).join(', ');
  const left = amountText(line.surplus, line, units);
  return [
    ...entry(name, packs, width),
    ...(left === amountText(nothingOf(line.surplus), line, units)
      ? []
      : entry('  left over', left, width)),
  ];
}

/** Nothing of an amount: a surplus that prints like it is not worth a line. */
const nothingOf = (amount: Amount): Amount =>
  isQuantity(amount) ? fromSIDecimal(amount.dimension, ZERO) : 0;

function amountText(amount: Amount, { measure }: MaterialLine, units: SheetUnits): string {
  if (!isQuantity(amount)) return measure === 'rolls' ? `${amount} rolls` : `${amount}`;
  const { dimension }: AnyQuantity = amount;
  if (dimension === 'volume') return units.volume(amount as Volume);
  if (dimension === 'area') return units.area(amount as Area);
  return units.mass(amount as Mass);
}
