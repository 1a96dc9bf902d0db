import type { PavementPlan, PaverPlan } from '../plan/plan.js';
import { columnTable, entry, paragraph, subheading, type SheetLine } from './sheet-lines.js';
import { listed } from './group-warnings.js';
import type { Sheet } from './sheet-context.js';
import { paverLabel, wasteOf, wasteText } from './waste-words.js';

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

function paverLines(pavers: PaverPlan | null, sheet: Sheet): SheetLine[] {
  if (pavers === null) return [];
  const { job } = sheet;
  const { whole, cut, border, orders } = pavers;
  return [
    ...entry('pavers, net', `${whole}`),
    ...(cut === null ? [] : entry('  of these cut', `${cut}`)),
    ...(border > 0 ? entry('  plus for the border', `${border}`) : []),
    ...orders.flatMap(({ paver, order }) => {
      const found = job.materials.pavers?.find(({ id }) => id === paver);
      const name = orders.length > 1 ? (found?.name ?? paver) : 'pavers';
      return entry(paverLabel(name, paver, job), `${order}`);
    }),
  ];
}
