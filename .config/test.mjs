// npm test: all checks, in two lanes beside each other, so that two cores are busy.
// A lane stops at its first fault; the other still says what it found.
import { spawn } from 'node:child_process';
import { writeExamples } from './examples.mjs';

const LANES = [
  ['typecheck', 'test:run', 'test:package'],
  ['lint:code', 'lint:format'],
];

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

async function runLane(names) {
  for (const name of names) if (!(await runScript(name))) return false;
  return true;
}

await writeExamples();
const passed = await Promise.all(LANES.map(runLane));
process.exitCode = passed.every(Boolean) ? 0 : 1;
