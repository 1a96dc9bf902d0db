// Fresh processes of Node: what an import costs there, and how much memory a call takes.
import { execFileSync } from 'node:child_process';
import { addChild } from './cpu.mjs';

const cwd = new URL('../..', import.meta.url);

/** Runs code in a fresh process and gives what `report` printed, as numbers. */
export function inFresh(code, { type = 'module', report, flags = [] }) {
  const script = `const before = process.cpuUsage();\n${code}
    const all = process.cpuUsage();
    console.log(${report}, all.user + all.system);`;
  const out = execFileSync(process.execPath, [...flags, `--input-type=${type}`, '-e', script], {
    encoding: 'utf8',
    cwd,
  });
  const numbers = out.trim().split(' ').map(Number);
  addChild(numbers.pop());
  return numbers;
}

/** Processor time of some code in a fresh process, and of the whole process, in milliseconds. */
export function coldTimes(code, type) {
  const report = `[process.cpuUsage(before), process.cpuUsage()]
    .map(({ user, system }) => (user + system) / 1e3).join(' ')`;
  const [own, whole] = inFresh(code, { type, report });
  return { own, whole };
}

/** Largest resident memory of a fresh process that runs some code, in megabytes. */
export function peakMemory(code) {
  const [kilobytes] = inFresh(code, { report: 'process.resourceUsage().maxRSS' });
  return kilobytes / 1024;
}
