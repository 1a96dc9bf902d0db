// What a reader has to load, what the site takes on a server, and what it costs to build.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium, type Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium } from '../package/chromium.js';
import { serveSite, SITE, type ServedSite } from './serve-site.js';

const BUILD = join(SITE, '..', 'node_modules', '.cache', 'settline', 'site-build.json');
const KILOBYTE = 1000;

const found = findChromium();
let site: ServedSite;
let browser: Browser | undefined;

beforeAll(async () => {
  site = await serveSite('/docs/');
  if (found.command === undefined) return;
  browser = await chromium.launch({ executablePath: found.command, args: ['--no-sandbox'] });
});

afterAll(async () => {
  await browser?.close();
  await site.close();
});

/** The files that a page loads, with their sizes as sent: gzipped. */
async function loadedBy(path: string): Promise<Map<string, number>> {
  if (browser === undefined) throw new Error('no browser');
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const names = new Set<string>();
  page.on('response', (response) => names.add(response.url().slice(site.address.length)));
  await page.goto(site.address + path, { waitUntil: 'networkidle' });
  await page.close();
  const files = [...names].filter((name) => /^[\w./@-]+$/.test(name));
  return new Map(
    files.map((name) => [name, gzipSync(readFileSync(join(SITE, name))).length / KILOBYTE]),
  );
}

const total = (sizes: Iterable<number>): number => [...sizes].reduce((sum, one) => sum + one, 0);

test('the landing page loads less than 150 kB', async ({ skip }) => {
  if (browser === undefined) {
    skip(found.reason);
    return;
  }
  const files = await loadedBy('index.html');
  console.info(`landing page: ${total(files.values()).toFixed(1)} kB`);
  expect(files.size).toBeGreaterThan(3);
  expect(total(files.values())).toBeLessThan(150);
});

test('a page of a function loads less than 60 kB beside what pages share', async ({ skip }) => {
  if (browser === undefined) {
    skip(found.reason);
    return;
  }
  const shared = await loadedBy('explanation/scope.html');
  for (const path of ['api/build-up/lifts.html', 'api/job/planJob.html']) {
    const own = [...(await loadedBy(path))].filter(([name]) => !shared.has(name));
    const size = total(own.map(([, one]) => one));
    console.info(`${path}: ${size.toFixed(1)} kB of its own`);
    expect(own.map(([name]) => name)).toContain(path);
    expect(size).toBeLessThan(60);
  }
});

test('the site takes less than 40 MB', () => {
  const files = readdirSync(SITE, { recursive: true, encoding: 'utf8', withFileTypes: true });
  const sizes = files
    .filter((one) => one.isFile())
    .map((one) => statSync(join(one.parentPath, one.name)).size);
  const size = total(sizes) / 1e6;
  console.info(`site: ${size.toFixed(1)} MB in ${sizes.length} files`);
  expect(size).toBeGreaterThan(1);
  expect(size).toBeLessThan(40);
});

test('the build takes less than 3 minutes of processor time', () => {
  const { seconds } = JSON.parse(readFileSync(BUILD, 'utf8')) as { readonly seconds: number };
  console.info(`build: ${seconds} s of processor time`);
  expect(seconds).toBeGreaterThan(1);
  expect(seconds).toBeLessThan(180);
});
