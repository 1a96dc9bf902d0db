// Measures functions and prints them as ratios to the first, all in one run.
import { do_not_optimize, measure } from 'mitata';

/** Time of one call, in nanoseconds: the median of mitata's samples. */
export async function nanoseconds(run) {
  // past the compiler's tiers first
  const warm = performance.now() + 600;
  while (performance.now() < warm) do_not_optimize(run());
  const { p50 } = await measure(() => do_not_optimize(run()), { min_cpu_time: 250e6 });
  return p50;
}

const shown = (ns) => {
  if (ns < 1e3) return `${ns.toFixed(ns < 10 ? 1 : 0)} ns`;
  return ns < 1e6 ? `${(ns / 1e3).toFixed(1)} us` : `${(ns / 1e6).toFixed(2)} ms`;
};

/** Prints rows of cells, the first column to the left. */
export function printTable(title, rows) {
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
 * prints what it computes, so that speed stands beside the digits.
 */
export async function compare(title, contenders) {
  const rows = [['', 'time', 'ratio to ours', 'result']];
  const times = [];
  for (const { run } of contenders) times.push(await nanoseconds(run));
  contenders.forEach(({ name, run, result }, k) => {
    const ratio = times[k] / times[0];
    rows.push([name, shown(times[k]), k === 0 ? '1' : ratio.toPrecision(3), result?.(run()) ?? '']);
  });
  printTable(title, rows);
  return times;
}
