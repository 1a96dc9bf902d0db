// Prints the sheet of the built-in site.
//   npm run example                  feet and inches
//   npm run example -- --metric      metres and millimetres
//   npm run example -- --working     with the working of every number
//   npm run example -- examples/otter-lane.json   a site with levels, spot heights, lines, trees
//   npm run example -- my-job.json   a site of your own
import { readFile } from 'node:fs/promises';
import { pathText, planJob, renderJobSheet, renderWorking, isSettlineError } from 'settline';

const words = process.argv.slice(2);
const flags = new Set(words.filter((word) => word.startsWith('--')));
const file = words.find((word) => !word.startsWith('--'));
const source = file ?? new URL('./heron-bend.json', import.meta.url);
const system = flags.has('--metric') ? 'metric' : 'us';

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
