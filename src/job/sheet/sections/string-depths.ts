import { lastOf, present } from '../../../invariant.js';
import { listed } from '../../listed.js';
import type { PavementPlan, StringLinePlan, SurfacePlan } from '../../plan/plan.js';
import type { Length } from '../../../units/quantity.js';
import { NO_LENGTH } from '../../../units/zero.js';
import {
  columnTable,
  entry,
  paragraph,
  subheading,
  table,
  type SheetLine,
} from '../layout/sheet-lines.js';
import { layerRows, liftRows, placedRows } from './depth-rows.js';
import type { Sheet } from '../layout/sheet-context.js';

/** Depths below one string: layers, lifts, and what is placed high. Internal. */
export function depthLines(
  line: StringLinePlan,
  pavement: PavementPlan,
  { units }: Sheet,
): SheetLine[] {
  const { stringHeight: height } = line;
  return [
    ...subheading(`Depths below string ${line.id.toUpperCase()} (${units.depthUnit})`),
    ...layerTable(pavement, height, { units }),
    ...paragraph(topText(pavement), '  '),
    ...placedLines(line, pavement, { units }),
    ...liftTable(pavement, height, { units }),
  ];
}

type Style = Pick<Sheet, 'units'>;

/** Depths below finished grade, for a pavement without a string. Internal. */
export function depthsBelowGrade(pavement: PavementPlan, { units }: Style): SheetLine[] {
  return [
    ...subheading(`Depths below finished grade (${units.depthUnit})`),
    ...layerTable(pavement, NO_LENGTH, { units }),
    ...liftTable(pavement, NO_LENGTH, { units }),
  ];
}

function layerTable({ buildUp }: PavementPlan, height: Length, { units }: Style): SheetLine[] {
  const rows = layerRows(buildUp, height, units.onTape);
  const { bottom } = lastOf(rows);
  return table(
    [
      ...rows.map(({ name, top, bottom: under, thickness }) => [
        name,
        ...[top, under, thickness].map(units.depth),
      ]),
      ['SUBGRADE', units.depth(bottom), '', ''],
    ],
    ['layer', 'top', 'bottom', 'thickness'],
  );
}

const topText = ({ buildUp }: PavementPlan): string =>
  `Top of the ${present(buildUp.layers[0], 'layer').name}: finished grade. Dig to the subgrade.`;

/** Where screed rails and pavers are set; nothing where the settlement of the bedding is not known. */
function placedLines(
  { surfaces }: StringLinePlan,
  { settlement }: PavementPlan,
  { units }: Style,
): SheetLine[] {
  if (settlement === null) return [];
  const place = (label: string, kind: SurfacePlan['kind']) =>
    placedRows(surfaces, kind, units.onTape).flatMap(({ placed, high }) =>
      entry(`${label}, ${units.depthWithUnit(high)} high`, units.depth(placed)),
    );
  return [
    ...place('screed rails', 'bedding'),
    ...place('top of pavers laid', 'pavers'),
    ...paragraph('(the plate brings them down to the depths in the table)', '    '),
  ];
}

function liftTable(
  { lifts, buildUp }: PavementPlan,
  height: Length,
  { units }: Style,
): SheetLine[] {
  const rows = liftRows(lifts, { height, total: buildUp.total, tape: units.onTape });
  const column = (state: string, what: string, depth: (row: (typeof rows)[number]) => string) => ({
    head: [state, what] as const,
    cells: rows.map(depth),
  });
  const lift = { head: 'lift', cells: rows.map((row) => `${row.lift}`) };
  return [
    ...subheading(`Lifts, from the subgrade up (${units.depthUnit})`),
    ...columnTable(lift, [
      column('loose', 'top', (row) => units.depth(row.looseTop)),
      column('compacted', 'top', (row) => units.depth(row.compactedTop)),
      column('loose', 'thickness', (row) => units.depth(row.loose)),
      column('compacted', 'thickness', (row) => units.depth(row.compacted)),
    ]),
    ...layerNames(rows),
  ];
}

/** Which lifts are which layer. */
function layerNames(
  rows: readonly { readonly lift: number; readonly layer: string }[],
): SheetLine[] {
  const layers = [...new Set(rows.map(({ layer }) => layer))];
  const parts = layers.map((layer) => {
    const own = rows.filter((row) => row.layer === layer).map(({ lift }) => `${lift}`);
    return `${own.length === 1 ? 'lift' : 'lifts'} ${listed(own)}: ${layer}`;
  });
  return paragraph(parts.join('; '), '  ');
}
