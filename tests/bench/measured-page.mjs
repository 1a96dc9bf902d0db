// Writes docs/reference/measured.md: a section for each part, of the last run of that part.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';
import { format } from 'prettier';
import { cpuOfAll } from './cpu.mjs';

const page = new URL('../../docs/reference/measured.md', import.meta.url);

const HEAD = `---
description: Speed, memory and size of the library beside others, with the date and the machine.
---

# Measured

Written by \`npm run bench\`, or by \`npm run bench -- plan\` for one part. Times are processor time of the process, the collector and the compiler included. Contenders of one table take turns; they are compared by their least times, because what others do on the machine only ever adds to them. Ratios hold from machine to machine; times do not. A floor is a loop that does less than any contender must.
`;

const loads = () => loadavg().map((load) => load.toFixed(1));

/** Watches how busy the machine is, until it is asked. */
export function watchMachine() {
  const before = { wall: performance.now(), cpu: cpuOfAll(), load: loads()[0] };
  return () => {
    const wall = (performance.now() - before.wall) / 1e3;
    const used = (cpuOfAll() - before.cpu) / 1e6;
    const cores = availableParallelism();
    return `load average ${before.load} before and ${loads()[0]} after on ${cores} cores; ${wall.toFixed(0)} s on the wall for ${used.toFixed(0)} s of processor time (${(wall / used).toFixed(2)})`;
  };
}

const cell = (value) => `${value ?? ''}`.replaceAll('|', '\\|');

function tableText({ title, rows }) {
  const [heads, ...body] = rows;
  const line = (row) => `| ${heads.map((_, k) => cell(row[k])).join(' | ')} |`;
  const rule = `| ${heads.map((_, k) => (k === 0 ? '---' : '--:')).join(' | ')} |`;
  return `### ${title}\n\n${[line(heads), rule, ...body.map(line)].join('\n')}\n`;
}

/** The sections of the page as it is, by part. */
function sectionsOf(text) {
  return new Map(
    text
      .split(/^(?=## )/m)
      .slice(1)
      .map((section) => [/^## (\S+)/.exec(section)?.[1] ?? '', section]),
  );
}

/** Puts the tables of a part into the page, dated. */
export async function writeSection(part, parts, { tables, machine }) {
  const before = existsSync(page) ? readFileSync(page, 'utf8') : '';
  const sections = sectionsOf(before);
  const day = new Date().toISOString().slice(0, 10);
  const processor = cpus()[0]?.model.trim() || 'unnamed processor';
  const about = `${day}, Node ${process.versions.node}, ${processor}; ${machine}.`;
  sections.set(part, `## ${part}\n\n${about}\n\n${tables.map(tableText).join('\n')}`);
  const known = parts.filter((name) => sections.has(name));
  const text = [HEAD, ...known.map((name) => sections.get(name).trim())].join('\n\n');
  writeFileSync(page, await format(text, { parser: 'markdown', printWidth: 100 }));
}
