import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, inject, test } from 'vitest';
import { findChromium, openPage } from './chromium.js';

const consumer = inject('consumer');
const browser = findChromium();

const BODY = `
import { planFromJSON, planJob, renderJobSheet, renderWorking } from 'settline/job';
import { fitLine } from 'settline/geometry';
import job from './cedar-court.json' with { type: 'json' };
const plan = planJob(job);
const fit = fitLine(new Float64Array([500000, 4500000, 500001, 4500001.001, 500002, 4500002]));
const result = {
  plan,
  sheet: renderJobSheet(plan, { system: 'us' }),
  metric: renderJobSheet(plan, { system: 'metric' }),
  working: renderWorking(plan.working, { system: 'us' }),
  rms: fit.rms,
};
const report = (clone) => {
  const text = JSON.stringify({ ...result, back: planFromJSON(clone) });
  return encodeURIComponent(text);
};`;

/**
 * In the browser the plan goes to a worker and back; Node clones it in the same way. A frame whose
 * document stays open holds the page back until the worker has answered.
 */
const IN_BROWSER = `
const frame = document.createElement('iframe');
document.body.append(frame);
frame.contentDocument.open();
const echo = new Blob(['onmessage = ({ data }) => postMessage(data);']);
const worker = new Worker(URL.createObjectURL(echo));
worker.onmessage = ({ data }) => { document.body.textContent = report(data); };
worker.postMessage(plan);`;
const IN_NODE = 'console.log(report(structuredClone(plan)));';

test('the packed library gives the same plan in Chromium as in Node, to the letter', async (context) => {
  if (browser.command === undefined) {
    console.warn(`Chromium: ${browser.reason}`);
    context.skip(browser.reason);
    return;
  }
  const bundle = async (end: string) => {
    const result = await build({
      stdin: { contents: `${BODY}\n${end}`, resolveDir: consumer, loader: 'js' },
      bundle: true,
      write: false,
      format: 'iife',
      platform: 'browser',
      logLevel: 'silent',
    });
    return result.outputFiles[0]?.text ?? '';
  };
  const page = join(consumer, 'page.html');
  const script = join(consumer, 'page.js');
  writeFileSync(script, await bundle(IN_BROWSER));
  writeFileSync(
    page,
    '<!doctype html><meta charset="utf-8"><body><script src="page.js"></script></body>',
  );
  const inNode = join(consumer, 'page.cjs');
  writeFileSync(inNode, await bundle(IN_NODE));

  const shown = /<body>([^<]*)</.exec(openPage(browser.command, page))?.[1] ?? '';
  const expected = execFileSync('node', [inNode], { encoding: 'utf8', maxBuffer: 1e8 }).trim();
  expect(decodeURIComponent(shown)).toContain('"back":{"kind":"settline-plan"');
  expect(decodeURIComponent(shown).trim()).toBe(decodeURIComponent(expected));
});
