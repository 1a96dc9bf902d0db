// Prints the sheet of a built-in site.
//   npm run example                  a site in feet and inches
//   npm run example -- --metric      another site, in metres and millimetres
//   npm run example -- --working     with the working of every number
//   npm run example -- examples/slate-wharf.json   a site with levels, spot heights, lines, a tree
//   npm run example -- my-job.json   a site of your own; with --metric in metres
import { readFile } from 'node:fs/promises';
import { pathText, planJob, renderJobSheet, renderWorking, isSettlineError } from 'settline';

const words = process.argv.slice(2);
const flags = new Set(words.filter((word) => word.startsWith('--')));
const file = words.find((word) => !word.startsWith('--'));
const system = flags.has('--metric') ? 'metric' : 'us';
const builtIn = system === 'metric' ? './mill-garth.json' : './cedar-court.json';
const source = file ?? new URL(builtIn, import.meta.url);

try {
  const plan = planJob(JSON.parse(await readFile(source, 'utf8')));
  process.stdout.write(renderJobSheet(plan, { system }));
  if (flags.has('--working')) process.stdout.write(`\n${renderWorking(plan.working, { system })}`);
} catch (error) {
  if (!isSettlineError(error)) throw error;
  console.error(`The job description has ${error.issues.length} fault(s):`);
  for (const { path, message } of error.issues) console.error(`  ${pathText(path)}: ${message}`);
  process.exitCode = 1;
}
