// Writes the sheet of a built-in site, with its drawings, as one page for a phone and for paper.
//   npm run example:page                 a site in feet and inches, into job-sheet.html
//   npm run example:page -- --metric     another site, in metres and millimetres
//   npm run example:page -- my-job.json  a site of your own; with --metric in metres
import { readFile, writeFile } from 'node:fs/promises';
import { isSettlineError, pathText, planJob, renderJobSheetHTML } from 'settline';

const words = process.argv.slice(2);
const file = words.find((word) => !word.startsWith('--'));
const system = words.includes('--metric') ? 'metric' : 'us';
const builtIn = system === 'metric' ? './heron-yard.json' : './cedar-court.json';
const source = file ?? new URL(builtIn, import.meta.url);

try {
  const plan = planJob(JSON.parse(await readFile(source, 'utf8')));
  await writeFile('job-sheet.html', renderJobSheetHTML(plan, { system }));
  console.log('Written: job-sheet.html. Open it in a browser, or print it.');
} catch (error) {
  if (!isSettlineError(error)) throw error;
  console.error(`The job description has ${error.issues.length} fault(s):`);
  for (const { path, message } of error.issues) console.error(`  ${pathText(path)}: ${message}`);
  process.exitCode = 1;
}
