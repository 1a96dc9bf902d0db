import { capital } from '../../../capital.js';
import { wholeNumberUp } from '../../../units/format-quantity.js';
import { ONE_RATIO, ZERO_RATIO } from '../../../units/ratio.js';
import {
  fromSI,
  fromUnit,
  isQuantity,
  type AnyQuantity,
  type Area,
  type Mass,
  type Volume,
} from '../../../units/quantity.js';
import { NO_AREA } from '../../../units/zero.js';
import { counted } from '../../counted.js';
import { materialList, type Amount, type MaterialLine } from '../../order/material-list.js';
import type { JobPlan, JobTotals, LooseTotalPlan, StreamPlan } from '../../plan/plan.js';
import {
  entry,
  heading,
  paragraph,
  subheading,
  space,
  type SheetLine,
} from '../layout/sheet-lines.js';
import type { Sheet } from '../layout/sheet-context.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';
import { paverLabel, wasteOf, withShares } from '../words/waste-words.js';

/** The part of the sheet about orders and loads. Internal. */
export function totalsSection(plan: JobPlan, sheet: Sheet): SheetLine[] {
  const { totals } = plan;
  return [
    ...heading('ORDER AND HAUL AWAY'),
    ...paragraph(
      'Each figure is rounded once; sums of printed figures may differ in the last digit.',
    ),
    ...[...totals.stones, ...totals.sands].flatMap((one) => looseLines(one, sheet)),
    ...paverLines(totals.pavers, sheet),
    ...packLines(plan, sheet),
    ...totals.oldPaving.flatMap((old) => [
      ...subheading(`Old ${old.material}`),
      ...haulLines(old, sheet),
    ]),
    ...spoilLines(totals, sheet),
  ];
}

function paverLines(pavers: JobTotals['pavers'], { job }: Sheet): SheetLine[] {
  if (pavers.length === 0) return [];
  return [
    ...space(),
    ...pavers.flatMap(({ name, paver, order }) => entry(paverLabel(name, paver, job), `${order}`)),
  ];
}

/** A stone or sand: what goes in, what is ordered and in how many loads it comes. */
function looseLines(one: LooseTotalPlan, sheet: Sheet): SheetLine[] {
  const { units, job } = sheet;
  const { waste, moisture } = wasteOf(one.material, job);
  const whole = fromUnit('volume', ONE_RATIO, units.orderVolume);
  const count = wholeNumberUp(one.loose.volume, whole);
  return [
    ...subheading(capital(one.name)),
    ...entry('compacted, in place', units.volume(one.compacted.volume)),
    ...(one.fill === null
      ? []
      : entry('  of this fill, up to subgrade', units.volume(one.fill.volume))),
    ...entry(withShares('loose', [[waste, 'waste']]), units.volume(one.loose.volume)),
    ...entry(
      withShares('weight', [
        [waste, 'waste'],
        [moisture, 'water'],
      ]),
      units.mass(one.mass),
    ),
    ...entry('order, rounded up', wholeText(count, units)),
    ...loadLines(one),
  ];
}

const wholeText = (count: number, { volumeUnit }: SheetUnits): string => `${count} ${volumeUnit}`;

function haulLines(part: StreamPlan, { units }: Sheet): SheetLine[] {
  return [
    ...entry('loose', units.volume(part.loose.volume)),
    ...entry('weight', units.mass(part.mass)),
    ...loadLines(part),
  ];
}

function spoilLines({ spoil }: JobTotals, sheet: Sheet): SheetLine[] {
  if (spoil === null) return [];
  const { units } = sheet;
  return [
    ...subheading('Soil to haul away'),
    ...entry('in place (bank)', units.volume(spoil.bank.volume)),
    ...haulLines(spoil, sheet),
  ];
}

const loadLines = ({ loads: { count, limitedBy } }: StreamPlan): SheetLine[] =>
  entry(`truck loads (limited by ${limitedBy === 'mass' ? 'weight' : 'box'})`, `${count}`);

/** The order list, where the job names packs or supplies. */
function packLines(plan: JobPlan, sheet: Sheet): SheetLine[] {
  const lines = materialList(plan).lines.filter(
    ({ kind, packs }) => packs.length > 0 || !STREAMS.has(kind),
  );
  if (lines.length === 0) return [];
  return [
    ...subheading('Order list'),
    ...lines.flatMap((line) => packLine(line, sheet)),
    ...sharedFabricLines(plan, sheet),
  ];
}

/**
 * The ground that has the fabric of several pavements. The strips of each are cut to its own dig and lie
 * its own way, so a shared area cannot be left out of one of them.
 */
function sharedFabricLines({ pavements }: JobPlan, { units }: Sheet): SheetLine[] {
  const shared = pavements
    .filter(({ supplies }) => supplies.geotextile !== null)
    .reduce((total, { areas }) => total.plus(areas.dig.minus(areas.ownDig)), NO_AREA);
  if (shared.isZero()) return [];
  return paragraph(
    `Geotextile: where digs overlap, ${units.area(shared)} of ground is covered twice, because the strips of each pavement reach to its own dig line. No fabric is deducted for it.`,
    '  ',
  );
}

/** What the lines above say already. */
const STREAMS = new Set<MaterialLine['kind']>(['stone', 'sand', 'pavers']);

function packLine(line: MaterialLine, { units, job }: Sheet): SheetLine[] {
  const name = lineLabel(line, job);
  if (line.packs.length === 0) return entry(name, amountText(line.ordered, units));
  const packs = line.packs.map(({ name: pack, count }) => counted(count, pack)).join(', ');
  const left = amountText(line.surplus, units);
  return [
    ...entry(name, packs),
    ...(left === amountText(nothingOf(line.surplus), units) ? [] : entry('  left over', left)),
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
  isQuantity(amount) ? fromSI(amount.dimension, ZERO_RATIO) : 0;

function amountText(amount: Amount, units: SheetUnits): string {
  if (!isQuantity(amount)) return `${amount}`;
  const { dimension }: AnyQuantity = amount;
  if (dimension === 'volume') return units.volume(amount as Volume);
  if (dimension === 'area') return units.area(amount as Area);
  return units.mass(amount as Mass);
}
