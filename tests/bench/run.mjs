// npm run bench: all parts, or those named: npm run bench -- units plan
import { takeTables } from './report.mjs';
import { watchMachine, writeSection } from './measured-page.mjs';

const PARTS = [
  'cold',
  'plan',
  'drawings',
  'units',
  'fits',
  'plane',
  'checks',
  'outline',
  'volumes',
  'memory',
];
const wanted = process.argv.slice(2);
for (const part of wanted) {
  if (!PARTS.includes(part)) throw new Error(`no such part: ${part}; there is ${PARTS.join(', ')}`);
}
for (const part of wanted.length > 0 ? wanted : PARTS) {
  console.log(`\n== ${part}`);
  const { run } = await import(`./${part}.mjs`);
  const machine = watchMachine();
  await run();
  const found = machine();
  console.log(`\n${found}`);
  await writeSection(part, PARTS, { tables: takeTables(), machine: found });
}
