// What a reader has to load, what the site takes on a server, and what it costs to build.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, startReader, type Reader } from './reader.js';
import { SITE } from './serve-site.js';

const BUILD = join(SITE, '..', 'node_modules', '.cache', 'settline', 'site-build.json');
const KILOBYTE = 1000;

const total = (sizes: Iterable<number>): number => [...sizes].reduce((sum, one) => sum + one, 0);

describe.skipIf(!hasBrowser)('what a page loads', () => {
  let reader: Reader;
  beforeAll(async () => {
    reader = await startReader();
  });
  afterAll(() => reader.close());

  /** The files that a page loads, with their sizes as sent: gzipped. */
  async function loadedBy(
    path: string,
    look?: (page: Page) => Promise<void>,
  ): Promise<Map<string, number>> {
    const { page, context, asked } = await reader.open(path);
    await look?.(page);
    await page.waitForLoadState('networkidle');
    await context.close();
    const names = asked.map((url) => url.slice(reader.address.length));
    const files = [...new Set(names)].filter((name) => /^[\w./@-]+$/.test(name));
    return new Map(
      files.map((name) => [name, gzipSync(readFileSync(join(SITE, name))).length / KILOBYTE]),
    );
  }

  test('the landing page loads less than 100 kB', async () => {
    const files = await loadedBy('index.html');
    console.info(`landing page: ${total(files.values()).toFixed(1)} kB`);
    expect(files.size).toBeGreaterThan(3);
    expect(total(files.values())).toBeLessThan(100);
  });

  test('with its block opened it loads less than 150 kB', async () => {
    const files = await loadedBy('index.html', async (page) => {
      await page.getByRole('button', { name: 'Change the numbers' }).click();
      await page.locator('.answer').filter({ hasText: 'Dig' }).waitFor();
    });
    const sizes = [...files].sort(([, a], [, b]) => b - a).slice(0, 12);
    console.info(`with its block: ${total(files.values()).toFixed(1)} kB`, sizes);
    expect(files.size).toBeGreaterThan(10);
    expect(total(files.values())).toBeLessThan(150);
  });

  test('a page of a function loads less than 60 kB beside what pages share', async () => {
    const shared = await loadedBy('explanation/scope.html');
    for (const path of [
      'api/build-up/lifts.html',
      'api/ground/liftWater.html',
      'api/job/planJob.html',
    ]) {
      const own = [...(await loadedBy(path))].filter(([name]) => !shared.has(name));
      const size = total(own.map(([, one]) => one));
      console.info(`${path}: ${size.toFixed(1)} kB of its own`);
      expect(own.map(([name]) => name)).toContain(path);
      expect(size).toBeLessThan(60);
    }
  });
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
