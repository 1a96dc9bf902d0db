import { length } from 'settline/units';

/** The lines of a sheet below a line that starts so, up to the next empty line. */
export function linesUnder(sheet: string, start: string): string[] {
  const lines = sheet.split('\n');
  const from = lines.findIndex((line) => line.trim().startsWith(start));
  if (from < 0) throw new Error(`no line starts with ${start}`);
  const below = lines.slice(from + 1);
  const end = below.findIndex((line) => line === '');
  return end < 0 ? below : below.slice(0, end);
}

/** The cells of a line: what stands two spaces or more apart. */
export const cellsOf = (line: string): string[] =>
  line
    .trim()
    .split(/ {2,}/)
    .filter((cell) => cell !== '');

/** The rows of a table whose first cell is one of the names; several tables of one heading joined. */
export function rowsUnder(sheet: string, start: string, names: readonly string[]): string[][] {
  const rows = linesUnder(sheet, start).map(cellsOf);
  return rows.filter(([first = '']) => names.includes(first));
}

/** A depth without its unit as a whole number of marks of the tape: sixteenths, or millimetres. */
export function marks(cell: string | undefined, system: 'us' | 'metric'): number {
  const [unit, step] = system === 'us' ? (['in', 16] as const) : (['mm', 1] as const);
  const found = length(`${cell ?? '?'} ${unit}`)
    .to(unit)
    .times(step);
  if (!found.isInteger()) throw new Error(`${cell ?? 'nothing'} lies between the marks`);
  return found.toNumber();
}

/** The part of a sheet below the heading that starts so, up to the next heading. */
export function section(sheet: string, title: string): string {
  const lines = sheet.split('\n');
  const isRule = (line: string | undefined) => /^-{3,}$/.test(line ?? '');
  const from = lines.findIndex((line, k) => line.startsWith(title) && isRule(lines[k + 1]));
  if (from < 0) throw new Error(`no heading starts with ${title}`);
  const next = lines.findIndex((line, k) => k > from + 1 && line !== '' && isRule(lines[k + 1]));
  return lines.slice(from, next < 0 ? undefined : next).join('\n');
}

/** A text on one line. */
export const flat = (text: string): string => text.replace(/\s+/g, ' ');
