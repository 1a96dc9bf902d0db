import { present } from '../../../invariant.js';
import { listed } from '../../listed.js';
import type { StakePlan, StringLinePlan } from '../../plan/plan.js';
import { columnTable, paragraph, subheading, type SheetLine } from '../layout/sheet-lines.js';
import { groundRows } from './depth-rows.js';
import type { Sheet } from '../layout/sheet-context.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

/** Ground, dig, elevations and rod readings at the stakes of a string. Internal. */
export function stakeLines(line: StringLinePlan, sheet: Sheet): SheetLine[] {
  return [
    ...groundLines(line, sheet),
    ...elevationLines(line.stakes, sheet),
    ...rodLines(line.stakes, sheet),
  ];
}

function groundLines(line: StringLinePlan, sheet: Sheet): SheetLine[] {
  const { units } = sheet;
  const rows = groundRows(line.stakes, units.onTape);
  if (rows.length === 0) return stationLines(line, sheet);
  const column = (name: 'ground' | 'dig' | 'old' | 'soil') =>
    rows.map((row) => units.depth(row[name]));
  const isStripped = rows.some(({ old }) => !old.isZero());
  const isFilled = rows.some(({ dig, soil }) => dig.isNegative() || soil.isNegative());
  return [
    ...subheading(`Depths at the stakes (${units.depthUnit})`),
    ...columnTable({ head: 'stake', cells: rows.map(({ id }) => id) }, [
      { head: 'at', cells: rows.map(({ station }) => units.long(station)) },
      { head: ['down to', 'ground'], cells: column('ground') },
      { head: ['depth', 'of dig'], cells: column('dig') },
      ...(isStripped
        ? [
            { head: ['old', 'paving'] as const, cells: column('old') },
            { head: ['soil', 'to dig'] as const, cells: column('soil') },
          ]
        : []),
    ]),
    ...(isFilled ? paragraph('A minus sign means fill.', '  ') : []),
    ...unmeasuredLines(line, sheet),
  ];
}

/** Stakes without a ground reading, and where they stand. */
function unmeasuredLines({ id: string, stakes }: StringLinePlan, sheet: Sheet): SheetLine[] {
  const without = stakes.filter(({ ground }) => ground === null);
  const place = ({ id, station }: StakePlan) => `${id} (at ${sheet.units.long(station)})`;
  const from = (id: string) => sheet.job.stakes.find((stake) => stake.id === id)?.groundFrom;
  const elsewhere = without.filter(({ id }) => (from(id) ?? string) !== string);
  const missing = without.filter((stake) => !elsewhere.includes(stake));
  return [
    ...elsewhere.flatMap((stake) =>
      paragraph(
        `${place(stake)}: its ground was measured from string ${present(from(stake.id), 'string')}.`,
        '  ',
      ),
    ),
    ...(missing.length === 0
      ? []
      : paragraph(
          `No ground reading at ${listed(missing.map(place))}: measure from the string down to the ground before you dig there.`,
          '  ',
        )),
  ];
}

function stationLines({ stakes, id }: StringLinePlan, { units }: Sheet): SheetLine[] {
  return [
    ...subheading('Stakes along the string'),
    ...columnTable({ head: 'stake', cells: stakes.map((stake) => stake.id) }, [
      { head: 'at', cells: stakes.map(({ station }) => units.long(station)) },
    ]),
    ...paragraph(
      `No ground was measured from string ${id}. Measure down from it to the ground at each stake before you dig.`,
      '  ',
    ),
  ];
}

function elevationLines(stakes: readonly StakePlan[], { units }: Sheet): SheetLine[] {
  const known = stakes.filter(({ finishElevation }) => finishElevation !== null);
  if (known.length === 0) return [];
  const level = (value: StakePlan['finishElevation']) =>
    value === null ? '-' : units.level(value);
  const isExtended = known.some(({ extrapolated }) => extrapolated);
  return [
    ...subheading(`Elevations (${units.levelUnit}), each rounded to ${units.levelStep}`),
    ...columnTable(
      {
        head: 'stake',
        cells: known.map(({ id, extrapolated }) => (extrapolated ? `${id} *` : id)),
      },
      [
        { head: 'finished grade', cells: known.map((stake) => level(stake.finishElevation)) },
        { head: 'string', cells: known.map((stake) => level(stake.stringElevation)) },
      ],
    ),
    ...(isExtended
      ? paragraph(
          '* beyond the fixed levels: the finished surface is extended to the stake',
          '  ',
          '    ',
        )
      : []),
  ];
}

/** Rod readings, as many surfaces side by side as the sheet is wide. */
function rodLines(stakes: readonly StakePlan[], { units }: Sheet): SheetLine[] {
  const read = stakes.flatMap(({ id, rods }) => (rods === null ? [] : [{ id, rods }]));
  const surfaces = read[0]?.rods.map(({ surface }) => surface) ?? [];
  if (surfaces.length === 0) return [];
  return [
    ...subheading(`Rod readings (${units.levelUnit}), each rounded to ${units.levelStep}`),
    ...columnTable(
      { head: 'stake', cells: read.map(({ id }) => id) },
      surfaces.map((surface, k) => ({
        head: inTwoLines(surface),
        cells: read.map(({ rods }) => readingText(rods[k], units)),
      })),
    ),
  ];
}

/** `lift 3 top` over two lines: the last word below. */
function inTwoLines(surface: string): readonly [string, string] {
  const cut = surface.lastIndexOf(' ');
  return cut < 0 ? ['', surface] : [surface.slice(0, cut), surface.slice(cut + 1)];
}

function readingText(rod: NonNullable<StakePlan['rods']>[number] | undefined, units: SheetUnits) {
  if (rod === undefined) return '-';
  return rod.reach === 'on-rod' ? units.level(rod.rod) : 'OUT';
}
