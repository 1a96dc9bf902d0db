// What an import costs a fresh process: own time is that of the import (and plan) alone, the whole
// has the start of Node in it.
import { coldTimes, inFresh } from './fresh.mjs';
import { median } from './cpu.mjs';
import { printTable } from './report.mjs';

const RUNS = 10;
const JOB = "JSON.parse(readFileSync('examples/cedar-court.json', 'utf8'))";
const esm = (name) => ({ name: `import '${name}'`, code: `await import('${name}');` });
const cjs = (name) => ({
  name: `require('${name}')`,
  code: `require('${name}');`,
  type: 'commonjs',
});

const CASES = [
  {
    name: "import 'settline/job' and the first plan",
    code: `const { readFileSync } = await import('node:fs');
           const { planJob } = await import('settline/job'); planJob(${JOB});`,
  },
  {
    name: "require('settline/job') and the first plan",
    code: `const { readFileSync } = require('node:fs'); require('settline/job').planJob(${JOB});`,
    type: 'commonjs',
  },
  ...['settline/job', 'settline/units', 'settline/geometry', 'settline'].flatMap((name) => [
    esm(name),
    cjs(name),
  ]),
  ...['zod/mini', 'decimal.js', 'convert-units', 'convert', 'js-quantities', 'unitmath'].map(esm),
  { name: 'nothing at all', code: '' },
];

export function run() {
  const samples = CASES.map(() => []);
  for (let round = 0; round < RUNS; round += 1) {
    CASES.forEach((_, k) => {
      const at = (k + round) % CASES.length;
      samples[at].push(coldTimes(CASES[at].code, CASES[at].type ?? 'module'));
    });
  }
  const ms = (value) => `${value.toFixed(0)} ms`;
  const pair = (values) => [ms(Math.min(...values)), ms(median(values))];
  printTable(`Fresh processes, ${RUNS} runs each`, [
    ['', 'own, least', 'own, median', 'whole, least', 'whole, median'],
    ...CASES.map(({ name }, k) => [
      name,
      ...pair(samples[k].map(({ own }) => own)),
      ...pair(samples[k].map(({ whole }) => whole)),
    ]),
  ]);
  firstCalls();
}

/** The first plans of one process: from the compiler's first tier to its last. */
function firstCalls() {
  const COUNTS = [1, 2, 10, 100];
  const rows = COUNTS.map((count) => {
    const code = `const { readFileSync } = await import('node:fs');
      const { planJob } = await import('settline/job'); const job = ${JOB};
      for (let k = 1; k < ${count}; k += 1) planJob(job);
      const start = process.cpuUsage(); planJob(job); const used = process.cpuUsage(start);`;
    const times = Array.from({ length: 5 }, () => {
      const [micro] = inFresh(code, { report: 'used.user + used.system' });
      return micro / 1e3;
    });
    return [
      `plan ${count}`,
      `${Math.min(...times).toFixed(1)} ms`,
      `${median(times).toFixed(1)} ms`,
    ];
  });
  printTable('The same job planned again in one process', [['', 'least', 'median'], ...rows]);
}
