// Prints what was measured, and keeps it for the page that measured-page.mjs writes.
import { inRotation } from './cpu.mjs';

const tables = [];

/** The tables printed since the last call. */
export const takeTables = () => tables.splice(0);

/** Nanoseconds as a person reads them. */
export function shown(ns) {
  if (ns < 1e3) return `${ns.toFixed(ns < 10 ? 1 : 0)} ns`;
  if (ns < 1e6) return `${(ns / 1e3).toFixed(1)} us`;
  return `${(ns / 1e6).toFixed(ns < 1e8 ? 2 : 0)} ms`;
}

/** Prints rows of cells, the heads first. */
export function printTable(title, rows) {
  tables.push({ title, rows });
  const widths = rows[0].map((_, k) => Math.max(...rows.map((row) => `${row[k] ?? ''}`.length)));
  console.log(`\n${title}`);
  for (const row of rows) {
    const cells = row.map((cell, k) =>
      k === 0 ? `${cell}`.padEnd(widths[k]) : `${cell}`.padStart(widths[k]),
    );
    console.log(`  ${cells.join('  ')}`.trimEnd());
  }
}

/**
 * Measures contenders side by side. Each is `{ name, run, result? }`; the first is ours. `result`
 * prints what the first call computes, so that speed stands beside the digits. Gives the least times,
 * and compares these: what others do on the machine only ever adds to them.
 */
export function compare(title, contenders, pace) {
  const times = inRotation(
    contenders.map(({ run }) => run),
    pace,
  );
  const rows = [['', 'median', 'least', 'times ours', 'result']];
  contenders.forEach(({ name, run, result }, k) => {
    const ratio = k === 0 ? '1' : (times[k].least / times[0].least).toPrecision(3);
    const cells = [shown(times[k].median), shown(times[k].least), ratio];
    rows.push([name, ...cells, result?.(run(0)) ?? '']);
  });
  printTable(title, rows);
  return times.map(({ least }) => least);
}

/** Time as a power of the size, from the first of the sizes to the last. */
export const power = (times, sizes) =>
  (Math.log(times.at(-1) / times[0]) / Math.log(sizes.at(-1) / sizes[0])).toFixed(2);

/** Compares at several sizes and prints how each contender grows. */
export function compareGrowth(title, sizes, contendersAt, { what = 'points', pace } = {}) {
  const growth = new Map();
  for (const size of sizes) {
    const contenders = contendersAt(size);
    const times = compare(`${title}, ${size} ${what}`, contenders, pace);
    contenders.forEach(({ name }, k) => growth.set(name, [...(growth.get(name) ?? []), times[k]]));
  }
  const heads = ['', ...sizes.map(String), `power of the ${what}`];
  const rows = [...growth].map(([name, times]) => [
    name,
    ...sizes.map((_, k) => (k in times ? shown(times[k]) : '-')),
    power(times, sizes.slice(0, times.length)),
  ]);
  printTable(`${title}: growth`, [heads, ...rows]);
}
