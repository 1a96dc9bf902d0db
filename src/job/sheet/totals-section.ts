import { volume } from '../../units/construct.js';
import { orderPacks } from '../../materials/packs/order-packs.js';
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
import type { JobPlan, JobTotals, LooseTotalPlan, StreamPlan } from '../plan/plan.js';
import { countedPacks } from './counted-packs.js';
import { entry, heading, wrap } from './layout.js';
import type { Sheet } from './sheet-context.js';
import type { SheetUnits } from './units-of-sheet.js';
import { paverLabel, wasteOf, withShares } from './waste-words.js';

/** The part of the sheet about orders and loads. Internal. */
export function totalsSection(plan: JobPlan, sheet: Sheet): string[] {
  const { totals } = plan;
  const { width } = sheet;
  return [
    ...heading('ORDER AND HAUL AWAY', width),
    ...wrap(
      'Each figure is rounded once; sums of printed figures may differ in the last digit.',
      width,
    ),
    ...[...totals.stones, ...totals.sands].flatMap((one) => looseLines(one, sheet)),
    ...paverLines(totals.pavers, sheet),
    ...packLines(plan, sheet),
    ...totals.oldPaving.flatMap((old) => [
      ...['', ...wrap(`Old ${old.material}`, width)],
      ...haulLines(old, sheet),
    ]),
    ...spoilLines(totals, sheet),
  ];
}

const capital = (name: string): string => `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;

function paverLines(pavers: JobTotals['pavers'], { job, width }: Sheet): string[] {
  if (pavers.length === 0) return [];
  return [
    '',
    ...pavers.flatMap(({ name, paver, order }) =>
      entry(paverLabel(name, paver, job), `${order}`, width),
    ),
  ];
}

/** A stone or sand: what goes in, what is ordered and in how many loads it comes. */
function looseLines(one: LooseTotalPlan, sheet: Sheet): string[] {
  const { units, width, job } = sheet;
  const { waste, moisture } = wasteOf(one.material, job);
  const order = orderPacks({
    volume: one.loose.volume,
    packs: [{ name: units.volumeUnit, holds: volume(1, units.orderVolume) }],
  });
  return [
    '',
    ...wrap(capital(one.name), width),
    ...entry('compacted, in place', units.volume(one.compacted.volume), width),
    ...(one.fill === null
      ? []
      : entry('  of this fill, up to subgrade', units.volume(one.fill.volume), width)),
    ...entry(withShares('loose', [[waste, 'waste']]), units.volume(one.loose.volume), width),
    ...entry(
      withShares('weight', [
        [waste, 'waste'],
        [moisture, 'water'],
      ]),
      units.mass(one.mass),
      width,
    ),
    ...entry('order, rounded up', wholeText(order.count, units), width),
    ...loadLines(one, width),
  ];
}

const wholeText = (count: number, { volumeUnit }: SheetUnits): string => `${count} ${volumeUnit}`;

function haulLines(part: StreamPlan, { units, width }: Sheet): string[] {
  return [
    ...entry('loose', units.volume(part.loose.volume), width),
    ...entry('weight', units.mass(part.mass), width),
    ...loadLines(part, width),
  ];
}

function spoilLines({ spoil }: JobTotals, sheet: Sheet): string[] {
  if (spoil === null) return [];
  const { units, width } = sheet;
  return [
    '',
    'Soil to haul away',
    ...entry('in place (bank)', units.volume(spoil.bank.volume), width),
    ...haulLines(spoil, sheet),
  ];
}

const loadLines = ({ loads: { count, limitedBy } }: StreamPlan, width: number): string[] =>
  entry(`truck loads (limited by ${limitedBy === 'mass' ? 'weight' : 'box'})`, `${count}`, width);

/** The order list, where the job names packs or supplies. */
function packLines(plan: JobPlan, sheet: Sheet): string[] {
  const lines = materialList(plan).lines.filter(
    ({ kind, packs }) => packs.length > 0 || !STREAMS.has(kind),
  );
  if (lines.length === 0) return [];
  return ['', 'Order list', ...lines.flatMap((line) => packLine(line, sheet))];
}

/** What the lines above say already. */
const STREAMS = new Set<MaterialLine['kind']>(['stone', 'sand', 'pavers']);

function packLine(line: MaterialLine, { units, width, job }: Sheet): string[] {
  const name = lineLabel(line, job);
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

/** A line of the order list with the waste that it includes. */
function lineLabel({ kind, name, material }: MaterialLine, job: Sheet['job']): string {
  if (kind === 'joint-sand') return withShares(name, [[job.materials.jointSand?.waste, 'waste']]);
  if (material === null) return name;
  return kind === 'pavers'
    ? paverLabel(name, material, job)
    : withShares(name, [[wasteOf(material, job).waste, 'waste']]);
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
