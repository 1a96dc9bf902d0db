import type { PavementPlan, StringLinePlan, SurfacePlan } from '../plan/plan.js';
import { NO_LENGTH } from '../../units/zero.js';
import { columnTable } from './columns.js';
import { layerRows, liftRows, placedRows } from './depth-rows.js';
import { listed } from './group-warnings.js';
import { entry, table, wrap } from './layout.js';
import type { Sheet } from './sheet-context.js';

/** Depths below one string: layers, lifts, and what is placed high. Internal. */
export function depthLines(
  line: StringLinePlan,
  pavement: PavementPlan,
  { units, width }: Sheet,
): string[] {
  const { stringHeight: height } = line;
  return [
    '',
    ...wrap(`Depths below string ${line.id.toUpperCase()} (${units.depthUnit})`, width),
    ...layerTable(pavement, height, { units, width }),
    ...wrap(topText(pavement), width, '  '),
    ...placedLines(line, pavement, { units, width }),
    ...liftTable(pavement, height, { units, width }),
  ];
}

type Style = Pick<Sheet, 'units' | 'width'>;

/** Depths below finished grade, for a pavement without a string. Internal. */
export function depthsBelowGrade(pavement: PavementPlan, { units, width }: Style): string[] {
  return [
    '',
    ...wrap(`Depths below finished grade (${units.depthUnit})`, width),
    ...layerTable(pavement, NO_LENGTH, { units, width }),
    ...liftTable(pavement, NO_LENGTH, { units, width }),
  ];
}

function layerTable(
  { buildUp }: PavementPlan,
  height: StringLinePlan['stringHeight'],
  { units, width }: Style,
): string[] {
  const rows = layerRows(buildUp, height, units.onTape);
  const bottom = rows.at(-1)?.bottom;
  return table(
    [
      ['layer', 'top', 'bottom', 'thickness'],
      ...rows.map(({ name, top, bottom: under, thickness }) => [
        name,
        ...[top, under, thickness].map(units.depth),
      ]),
      ['SUBGRADE', bottom === undefined ? '' : units.depth(bottom), '', ''],
    ],
    width,
  );
}

const topText = ({ buildUp }: PavementPlan): string =>
  `Top of the ${buildUp.layers[0]?.name ?? 'paving'}: finished grade. Dig to the subgrade.`;

/** Where screed rails and units are set; nothing where the settlement of the bedding is not known. */
function placedLines(
  { surfaces }: StringLinePlan,
  { settlement }: PavementPlan,
  { units, width }: Style,
): string[] {
  if (settlement === null) return [];
  const place = (label: string, kind: SurfacePlan['kind']) =>
    placedRows(surfaces, kind, units.onTape).flatMap(({ placed, high }) =>
      entry(`${label}, ${units.depthWithUnit(high)} high`, units.depth(placed), width),
    );
  return [
    ...place('screed rails', 'bedding'),
    ...place('top of units laid', 'pavers'),
    ...wrap('(the plate takes them down to the depths of the table)', width, '    '),
  ];
}

function liftTable(
  { lifts, buildUp }: PavementPlan,
  height: StringLinePlan['stringHeight'],
  { units, width }: Style,
): string[] {
  if (lifts.length === 0) return [];
  const rows = liftRows(lifts, { height, total: buildUp.total, tape: units.onTape });
  const column = (state: string, what: string, depth: (row: (typeof rows)[number]) => string) => ({
    head: [state, what] as const,
    cells: rows.map(depth),
  });
  const lift = { head: 'lift', cells: rows.map((row) => `${row.lift}`) };
  return [
    '',
    ...wrap(`Lifts, from the subgrade up (${units.depthUnit})`, width),
    ...columnTable(
      lift,
      [
        column('loose', 'top', (row) => units.depth(row.looseTop)),
        column('compacted', 'top', (row) => units.depth(row.compactedTop)),
        column('loose', 'thickness', (row) => units.depth(row.loose)),
        column('compacted', 'thickness', (row) => units.depth(row.compacted)),
      ],
      width,
    ),
    ...layerNames(rows, width),
  ];
}

/** Which lifts are which layer. */
function layerNames(
  rows: readonly { readonly lift: number; readonly layer: string }[],
  width: number,
): string[] {
  const layers = [...new Set(rows.map(({ layer }) => layer))];
  const parts = layers.map((layer) => {
    const own = rows.filter((row) => row.layer === layer).map(({ lift }) => `${lift}`);
    return `${own.length === 1 ? 'lift' : 'lifts'} ${listed(own)}: ${layer}`;
  });
  return wrap(parts.join('; '), width, '  ');
}
