import type { PavementPlan, StakePlan, StringLinePlan } from '../plan/plan.js';
import { describeMove } from './describe.js';
import { entry, heading, table, wrap } from './layout.js';
import { slopeText, unitsOfSheet, type SheetSystem, type SheetUnits } from './units-of-sheet.js';

/** The part of the sheet about one string. Internal. */
export function stringSection(
  line: StringLinePlan,
  pavement: PavementPlan | undefined,
  system: SheetSystem,
  width: number,
): string[] {
  const units = unitsOfSheet(system);
  const name = pavement?.name ?? line.pavement;
  return [
    ...heading(`STRING ${line.id.toUpperCase()} for ${name}`, width),
    ...entry('string above finished grade', units.depthWithUnit(line.stringHeight), width),
    ...entry(
      'subgrade below this string',
      units.depthWithUnit(line.stakes[0]?.subgrade ?? line.stringHeight),
      width,
    ),
    ...stakeTable(line, units, width),
    ...lineVerdict(line, system, width),
    ...fallLines(line, width),
  ];
}

function stakeTable({ stakes }: StringLinePlan, units: SheetUnits, width: number): string[] {
  const isMeasured = stakes.some(({ ground }) => ground !== null);
  return [
    '',
    ...(isMeasured ? groundTable(stakes, units, width) : stationTable(stakes, units, width)),
    ...elevationTable(stakes, units, width),
    ...rodTable(stakes, units, width),
  ];
}

function groundTable(stakes: readonly StakePlan[], units: SheetUnits, width: number): string[] {
  const rows = [
    ['stake', 'station', 'ground', 'dig', 'soil'],
    ...stakes.map((stake) => [
      stake.id,
      units.long(stake.station),
      stake.ground === null ? '-' : units.depth(stake.ground),
      signed(stake.dig, units),
      signed(stake.soil, units),
    ]),
  ];
  const isFilled = stakes.some(({ dig }) => dig?.isNegative() === true);
  return [
    ...wrap(`Ground down from the string, dig and soil left (${units.depthUnit})`, width),
    ...table(rows, width),
    ...(isFilled ? wrap('a minus sign means fill', width, '  ') : []),
  ];
}

function stationTable(stakes: readonly StakePlan[], units: SheetUnits, width: number): string[] {
  const rows = stakes.map(({ id, station }) => [id, units.long(station)]);
  return [
    ...wrap('Stakes along the string; ground not measured', width),
    ...table([['stake', 'station'], ...rows], width),
  ];
}

function signed(depth: StakePlan['dig'], units: SheetUnits): string {
  return depth === null ? '-' : units.depth(depth);
}

function elevationTable(stakes: readonly StakePlan[], units: SheetUnits, width: number): string[] {
  const known = stakes.filter(({ finishElevation }) => finishElevation !== null);
  if (known.length === 0) return [];
  const rows = [
    ['stake', 'finish', 'string'],
    ...known.map(({ id, finishElevation, stringElevation, carriedOn }) => [
      carriedOn ? `${id} *` : id,
      finishElevation === null ? '-' : units.elevation(finishElevation),
      stringElevation === null ? '-' : units.elevation(stringElevation),
    ]),
  ];
  const isCarriedOn = known.some(({ carriedOn }) => carriedOn);
  const note = '* beyond the fixed levels: the finished surface is carried on to the stake';
  return [
    '',
    'Elevations',
    ...table(rows, width),
    ...(isCarriedOn ? wrap(note, width, '  ', '    ') : []),
  ];
}

/** Rod readings, as many surfaces side by side as the sheet is wide. */
function rodTable(stakes: readonly StakePlan[], units: SheetUnits, width: number): string[] {
  const read = stakes.flatMap(({ id, rods }) => (rods === null ? [] : [{ id, rods }]));
  const surfaces = read[0]?.rods.map(({ surface }) => surface) ?? [];
  if (surfaces.length === 0) return [];
  const columns = surfaces.map((surface, k) => [
    surface.replace(/^finished grade$/, 'finish'),
    ...read.map(({ rods }) => readingText(rods[k], units)),
  ]);
  const ids = ['stake', ...read.map(({ id }) => id)];
  const tables = sideBySide(ids, columns, width).flatMap((part) => table(part, width));
  return ['', ...wrap(`Rod readings (${units.levelUnit})`, width), ...tables];
}

function readingText(rod: NonNullable<StakePlan['rods']>[number] | undefined, units: SheetUnits) {
  if (rod === undefined) return '-';
  return rod.reach === 'on-rod' ? units.level(rod.rod) : 'out';
}

/** Columns in tables that fit the sheet, each with the ids in front. */
function sideBySide(
  ids: readonly string[],
  columns: readonly (readonly string[])[],
  width: number,
): string[][][] {
  const longest = (column: readonly string[]) => Math.max(...column.map(({ length }) => length));
  const parts: (readonly string[])[][] = [];
  let used = width;
  for (const column of columns) {
    const wide = longest(column) + 2;
    if (used + wide > width) {
      parts.push([]);
      used = 2 + longest(ids);
    }
    parts.at(-1)?.push(column);
    used += wide;
  }
  return parts.map((part) =>
    ids.map((id, row) => [id, ...part.map((column) => column[row] ?? '')]),
  );
}

function lineVerdict(line: StringLinePlan, system: SheetSystem, width: number): string[] {
  const units = unitsOfSheet(system);
  const rows = line.stakes.map(({ id, offset, inTolerance }) => {
    const off = units.depth(offset.abs());
    const side = offset.isNegative() ? 'right' : 'left';
    return [id, off === '0' ? 'on line' : `${off} ${side}`, inTolerance ? 'ok' : 'OUT'];
  });
  const title = `In line? within ${units.depthWithUnit(line.tolerance)}, by the ${
    line.reference === 'ends' ? 'end stakes' : 'best line'
  }`;
  const moves = line.moves.map((move) => describeMove(move, { system }));
  return [
    '',
    ...wrap(title, width),
    ...(line.ok === null ? [] : table(rows, width)),
    ...wrap(line.note, width, '  '),
    ...moves.flatMap((move) => wrap(move, width, '  > ', '    ')),
  ];
}

function fallLines({ slopes }: StringLinePlan, width: number): string[] {
  if (slopes.length === 0) return [];
  const rows = slopes.map(({ from, to, slope, fall, verdict }) => [
    slope.isNegative() || slope.isZero() ? `${from} to ${to}` : `${to} to ${from}`,
    `along ${slopeText(slope.abs())}`,
    `in all ${slopeText(fall)}`,
    verdict === 'pass' ? 'ok' : 'TOO FLAT',
  ]);
  return ['', 'Falls', ...table(rows, width)];
}
