import { wholeUp } from '../../../materials/whole-number.js';
import {
  decimalRatio,
  HALF_RATIO,
  multiplyRatios,
  ONE_RATIO,
  subtractRatios,
  wholeRatio,
} from '../../../units/ratio.js';
import { listed } from '../../listed.js';
import type { PavementPlan, PaverPlan, UnitsPlan } from '../../plan/plan.js';
import type { ReadJob } from '../../schema/job-shape.js';
import {
  columnTable,
  entry,
  paragraph,
  subheading,
  type SheetLine,
} from '../layout/sheet-lines.js';
import type { Sheet } from '../layout/sheet-context.js';
import { breakageLabel, paverNamed, wasteOf, wasteText } from '../words/waste-words.js';

/** What one pavement takes, and what is taken out of its dig. Internal. */
export function quantityLines(plan: PavementPlan, sheet: Sheet): SheetLine[] {
  const { units } = sheet;
  const rows = quantityRows(plan, sheet);
  const cells = (name: 'inPlace' | 'loose' | 'weight') => rows.map((row) => row[name]);
  return [
    ...subheading(`Quantities (${units.volumeUnit})`),
    ...columnTable({ head: '', cells: rows.map(({ name }) => name) }, [
      { head: 'in place', cells: cells('inPlace') },
      { head: 'loose', cells: cells('loose') },
      { head: 'weight', cells: cells('weight') },
    ]),
    ...wasteLines(plan, sheet),
    ...paverLines(plan.pavers, sheet),
  ];
}

interface Row {
  readonly name: string;
  readonly inPlace: string;
  readonly loose: string;
  readonly weight: string;
}

function quantityRows(plan: PavementPlan, { units }: Sheet): Row[] {
  const { stones, bedding, oldPaving, spoil } = plan;
  const bare = (volume: Parameters<typeof units.volume>[0]) =>
    units.volume(volume).replace(` ${units.volumeUnit}`, '');
  return [
    ...[...stones, bedding].map(({ layer, order }) => ({
      name: layer,
      inPlace: bare(order.compacted.volume),
      loose: bare(order.loose.volume),
      weight: units.mass(order.deliveredMass),
    })),
    ...oldPaving.map(({ material, inPlace, loose, mass }) => ({
      name: `old ${material}`,
      inPlace: bare(inPlace),
      loose: bare(loose.volume),
      weight: units.mass(mass),
    })),
    ...(spoil.bank.volume.isZero()
      ? []
      : [
          {
            name: 'soil',
            inPlace: bare(spoil.bank.volume),
            loose: bare(spoil.loose.volume),
            weight: units.mass(spoil.mass),
          },
        ]),
  ];
}

/** Waste stands beside what includes it: one sentence for each share. */
function wasteLines({ stones, bedding }: PavementPlan, sheet: Sheet): SheetLine[] {
  const shares = new Map<string, string[]>();
  for (const { material, layer } of [...stones, bedding]) {
    const { waste, moisture } = wasteOf(material, sheet.job);
    const text = wasteText(waste, moisture);
    if (text === '') continue;
    shares.set(text, [...(shares.get(text) ?? []), layer]);
  }
  return [...shares].flatMap(([text, layers]) =>
    paragraph(`${listed([...new Set(layers)])}: ${text}.`, '  ', '    '),
  );
}

/**
 * Pavers row by row, each a whole number: what fills the area and what comes on top add up to the order.
 * A border of the same paver is in that order, one of its own paver has an order of its own.
 */
function paverLines(pavers: PaverPlan | null, { job }: Sheet): SheetLine[] {
  if (pavers === null) return [];
  const { whole, cut, border, orders } = pavers;
  const [field, round] = orders;
  if (field === undefined) return [];
  const own = round === undefined ? border : 0;
  const lost = Math.min(lostToCuts(cut, field.paver, job), field.order - whole - own);
  const nameOf = ({ paver }: UnitsPlan) =>
    round === undefined ? 'pavers' : (paverNamed(paver, job)?.name ?? paver);
  return [
    ...entry('pavers, net', `${whole}`),
    ...(cut === null ? [] : entry('  of these cut', `${cut}`)),
    ...plusLine('plus lost to cuts', lost),
    ...plusLine('plus for the border', own),
    ...plusLine(breakageLabel(field.paver, job), field.order - whole - own - lost),
    ...entry(`${nameOf(field)} to order`, `${field.order}`),
    ...(round === undefined
      ? []
      : [
          ...entry('pavers for the border, net', `${border}`),
          ...plusLine(breakageLabel(round.paver, job), round.order - border),
          ...entry(`${nameOf(round)} to order`, `${round.order}`),
        ]),
  ];
}

const plusLine = (label: string, count: number): SheetLine[] =>
  count > 0 ? entry(`  ${label}`, `${count}`) : [];

/** What cuts lose: on average half of each cut paver, less what is used again. */
function lostToCuts(cut: number | null, paver: string, job: ReadJob): number {
  const reuse = paverNamed(paver, job)?.reuse;
  const share = reuse === undefined ? ONE_RATIO : subtractRatios(ONE_RATIO, decimalRatio(reuse));
  return wholeUp(multiplyRatios(multiplyRatios(wholeRatio(cut ?? 0), share), HALF_RATIO));
}
