import type { Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';
import { readLengthUnit } from '../../input/length-unit.js';
import { entry } from '../../invariant.js';
import {
  COLUMNS,
  isUnclearHeight,
  type ColumnRule,
  type PointColumn,
  type PointTableKind,
} from './point-columns.js';

/** A column of a table, found in its header. Internal. */
export interface FoundColumn extends ColumnRule {
  /** Its place in a row, from 0. */
  readonly place: number;
  readonly header: string;
  /** The unit of its lengths; undefined where neither header nor option says one. */
  readonly unit: string | undefined;
}

/** What the header of a table says. Internal. */
export interface ReadHeader {
  readonly found: readonly FoundColumn[];
  /** Headers of columns that are not read. */
  readonly ignored: readonly string[];
}

interface HeaderOptions {
  readonly kind: PointTableKind;
  readonly columns: Partial<Record<PointColumn, string>>;
  readonly unit: string | undefined;
}

/** Finds the columns of a table by its header: by the names that were given, else by usual ones. Internal. */
export function readHeader(
  reader: Reader,
  header: readonly string[],
  { kind, columns, unit }: HeaderOptions,
): ReadHeader {
  if (header.every((cell) => cell === '' || /^[+-]?[\d.,]+$/.test(cell))) {
    const message = 'the first row holds numbers. It must name the columns, such as "x [m]"';
    reader.fail('TABLE_UNCLEAR', ['columns'], message);
    return { found: [], ignored: [] };
  }
  const parts = header.map(partsOf);
  const taken = new Set<number>();
  const found = COLUMNS[kind].flatMap((rule): FoundColumn[] => {
    const { column } = rule;
    const asked = columns[column];
    const isNamed = ({ name, text }: HeaderCell, place: number): boolean =>
      asked === undefined ? rule.names.includes(name) : asked === text || asked === header[place];
    const places = parts.flatMap((cell, place) => (isNamed(cell, place) ? [place] : []));
    const [place, second] = places;
    if (place === undefined || second !== undefined) {
      refuseColumn(
        reader,
        rule,
        asked,
        places.map((one) => entry(header, one)),
      );
      return [];
    }
    taken.add(place);
    return [
      {
        ...rule,
        place,
        header: entry(header, place),
        unit: unitOf(reader, rule, parts[place], unit),
      },
    ];
  });
  const ignored = header.filter((cell, place) => cell !== '' && !taken.has(place));
  parts.forEach(({ name, text }, place) => {
    if (taken.has(place) || !isUnclearHeight(kind, name)) return;
    const message = `column ${shown(text)} does not say which level it holds. Name it finish if it is finished grade, or give columns`;
    reader.fail('TABLE_UNCLEAR', ['columns', 'finish'], message);
  });
  return { found, ignored };
}

/** A header cell: its name, as it is compared, as it was written, and its unit. */
interface HeaderCell {
  readonly name: string;
  readonly text: string;
  readonly unit: string | undefined;
}

function partsOf(cell: string): HeaderCell {
  const [, text = cell, square, round] = /^(.*?)\s*(?:\[([^\]]*)\]|\(([^)]*)\))$/.exec(cell) ?? [];
  const name = text.toLowerCase().replace(/[\s_.-]/g, '');
  return { name, text, unit: (square ?? round)?.trim() };
}

function unitOf(
  reader: Reader,
  { range, column }: ColumnRule,
  cell: HeaderCell | undefined,
  unit: string | undefined,
): string | undefined {
  if (range === undefined) return undefined;
  if (cell?.unit === undefined) return unit;
  return readLengthUnit(reader, cell.unit, ['columns', column]);
}

function refuseColumn(
  reader: Reader,
  { column, names, isNeeded }: ColumnRule,
  asked: string | undefined,
  headers: readonly string[],
): void {
  const path = ['columns', column];
  if (headers.length > 1) {
    const message = `${headers.map((one) => shown(one)).join(' and ')} both stand for ${column}. Say in columns which one counts`;
    reader.fail('TABLE_UNCLEAR', path, message);
  } else if (asked !== undefined) {
    reader.fail('UNKNOWN_ID', path, `the table has no column ${shown(asked)}`, { id: asked });
  } else if (isNeeded) {
    const message = `no column is named ${names.join(', ')}. Name it in the header, or say in columns which one it is`;
    reader.fail('REQUIRED', path, message);
  }
}
