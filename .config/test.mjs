// npm test: all checks of the sources, the tests beside the lint, so that two cores are busy.
// A lane stops at its first fault; the other still says what it found.
import { spawn } from 'node:child_process';
import { writeExamples } from './examples.mjs';

/** Runs a script of package.json and prints what it wrote, all at once. */
function runScript(name) {
  const start = performance.now();
  const child = spawn('npm', ['run', '--silent', name], { stdio: ['ignore', 'pipe', 'pipe'] });
  const written = [];
  child.stdout.on('data', (chunk) => written.push(chunk));
  child.stderr.on('data', (chunk) => written.push(chunk));
  return new Promise((resolve) => {
    child.on('close', (status) => {
      const seconds = ((performance.now() - start) / 1000).toFixed(1);
      process.stdout.write(Buffer.concat(written));
      console.log(`== ${name}: ${status === 0 ? 'passed' : 'FAILED'} (${seconds} s)\n`);
      resolve(status === 0);
    });
  });
}

/** Runs checks one after the other, until one fails. */
async function runLane(...checks) {
  for (const check of checks) if (!(await check())) return false;
  return true;
}

await writeExamples();
const passed = await Promise.all([
  runLane(
    () => runScript('typecheck'),
    () => runScript('test:run'),
  ),
  runLane(
    () => runScript('lint:code'),
    () => runScript('lint:format'),
  ),
]);
process.exitCode = passed.every(Boolean) ? 0 : 1;
