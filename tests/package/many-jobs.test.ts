// Threads of Node and a worker of a browser, with the package as it is packed.
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterEach, describe, expect, inject, test } from 'vitest';
import { findChromium, openPage } from './chromium.js';

const consumer = inject('consumer');
const root = join(import.meta.dirname, '..', '..');
const pool = join(consumer, 'node_modules', 'tinypool');

const withPool = () => cpSync(join(root, 'node_modules', 'tinypool'), pool, { recursive: true });
afterEach(() => rmSync(pool, { recursive: true, force: true }));

function run(name: string, code: string): unknown {
  writeFileSync(join(consumer, name), code);
  const { stdout, stderr, status } = spawnSync('node', [name], {
    cwd: consumer,
    encoding: 'utf8',
    timeout: 60_000,
  });
  if (status !== 0) throw new Error(`${name} ended with ${status}\n${stderr}`);
  return JSON.parse(stdout);
}

/** Jobs of which every third is faulty; the results against those of planJob. */
const COMPARE = `
const { readFileSync } = fs;
const job = JSON.parse(readFileSync('cedar-court.json', 'utf8'));
const jobs = Array.from({ length: 9 }, (_, i) => ({ ...job, name: 'Site ' + i, ...(i % 3 === 2 && { stringHeight: 'high' }) }));
const compare = async () => {
  const seen = [];
  for await (const { index, outcome } of planJobs(jobs, { workers: nodeThreads, concurrency: 2 })) {
    const here = tryPlanJob(jobs[index]);
    const isSame = JSON.stringify(outcome) === JSON.stringify(here);
    const isWorked = !here.ok || JSON.stringify(outcome.value.working) === JSON.stringify(here.value.working);
    seen[index] = outcome.ok + ' ' + isSame + ' ' + isWorked;
  }
  console.log(JSON.stringify(seen));
};`;
const SAME = ['true true true', 'true true true', 'false true true'];

describe('threads of Node', () => {
  test.each([
    [
      'an ES module',
      'threads.mjs',
      `import fs from 'node:fs';
       import { planJobs } from 'settline/many-jobs';
       import { nodeThreads } from 'settline/node-threads';
       import { tryPlanJob } from 'settline/job';
       ${COMPARE}
       await compare();`,
    ],
    [
      'CommonJS',
      'threads.cjs',
      `const fs = require('node:fs');
       const { planJobs } = require('settline/many-jobs');
       const { nodeThreads } = require('settline/node-threads');
       const { tryPlanJob } = require('settline/job');
       ${COMPARE}
       compare();`,
    ],
  ])('%s: every outcome as planJob gives it', (_kind, name, code) => {
    withPool();
    expect(run(name, code)).toEqual([...SAME, ...SAME, ...SAME]);
  });

  test('a signal ends the threads at once, in the middle of a plan', () => {
    withPool();
    const seen = run(
      'stopped.mjs',
      `import { readFileSync } from 'node:fs';
       import { planJobs } from 'settline/many-jobs';
       import { nodeThreads } from 'settline/node-threads';
       const job = JSON.parse(readFileSync('cedar-court.json', 'utf8'));
       function* endless() { for (;;) yield job; }
       const controller = new AbortController();
       let results = 0;
       let name;
       let late;
       try {
         for await (const { outcome } of planJobs(endless(), {
           workers: nodeThreads, concurrency: 2, signal: controller.signal })) {
           results += outcome.ok ? 1 : 0;
           if (results === 5) setTimeout(() => { late = results; controller.abort(); }, 20);
         }
       } catch (error) { name = error.name; }
       // the process ends by itself: no thread is left
       console.log(JSON.stringify({ name, more: results - late }));`,
    );
    expect(seen).toEqual({ name: 'AbortError', more: 0 });
  });

  test.each([
    ["import { nodeThreads } from 'settline/node-threads';", 'missing.mjs'],
    ["const { nodeThreads } = require('settline/node-threads');", 'missing.cjs'],
  ])('without tinypool: a fault that says what to install (%s)', (head, name) => {
    const seen = run(
      name,
      `${head}
       nodeThreads(2).catch(({ code, message, params }) => {
         console.log(JSON.stringify({ code, message, params }));
       });`,
    );
    expect(seen).toEqual({
      code: 'PACKAGE_MISSING',
      message: 'threads need the package tinypool. Install it: npm install tinypool',
      params: { package: 'tinypool' },
    });
  });
});

const browser = findChromium();

test('a module worker of a browser plans as Node does', async (context) => {
  if (browser.command === undefined) {
    console.warn(`Chromium: ${browser.reason}`);
    context.skip(browser.reason);
    return;
  }
  const bundle = async (contents: string, format: 'esm' | 'iife') => {
    const { outputFiles } = await build({
      stdin: { contents, resolveDir: consumer, loader: 'js' },
      bundle: true,
      minify: true,
      write: false,
      format,
      platform: 'browser',
      logLevel: 'silent',
    });
    return outputFiles[0]?.text ?? '';
  };
  const planner = await bundle(
    "import { servePlans } from 'settline/many-jobs'; servePlans(self);",
    'esm',
  );
  expect(/tinypool|["'`]node:/.exec(planner)).toBeNull();
  // a page of this disk may not load a module: the text of the worker is in it
  const page = await bundle(
    `import { planJobs, webWorkers } from 'settline/many-jobs';
     import job from './cedar-court.json' with { type: 'json' };
     const frame = document.createElement('iframe');
     document.body.append(frame);
     frame.contentDocument.open();
     const address = 'data:text/javascript;base64,${Buffer.from(planner).toString('base64')}';
     const workers = webWorkers(() => new Worker(address, { type: 'module' }));
     const seen = [];
     const planAll = async () => {
       for await (const one of planJobs([job, {}, job], { workers, concurrency: 2 })) seen[one.index] = one.outcome;
     };
     planAll().then(
       () => { document.body.textContent = encodeURIComponent(JSON.stringify(seen)); },
       (error) => { document.body.textContent = encodeURIComponent(String(error)); },
     );`,
    'iife',
  );
  writeFileSync(join(consumer, 'workers.js'), page);
  writeFileSync(
    join(consumer, 'workers.html'),
    '<!doctype html><meta charset="utf-8"><body><script src="workers.js"></script></body>',
  );
  writeFileSync(
    join(consumer, 'here.mjs'),
    `import { readFileSync } from 'node:fs';
     import { tryPlanJob } from 'settline/job';
     const job = JSON.parse(readFileSync('cedar-court.json', 'utf8'));
     console.log(JSON.stringify([job, {}, job].map(tryPlanJob)));`,
  );
  const shown = /<body>([^<]*)</.exec(openPage(browser.command, join(consumer, 'workers.html')));
  const here = execFileSync('node', ['here.mjs'], { cwd: consumer, encoding: 'utf8' });
  expect(decodeURIComponent(shown?.[1] ?? '').trim()).toBe(here.trim());
});
