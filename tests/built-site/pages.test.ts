import { existsSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium } from '../package/chromium.js';
import { serveSite, SITE, type ServedSite } from './serve-site.js';

/** Landing page and ten others: each kind of page once. */
const PAGES = [
  'index.html',
  'tutorial/first-depth.html',
  'tutorial/whole-job.html',
  'how-to/index.html',
  'how-to/string.html',
  'explanation/soil-states.html',
  'reference/error-codes.html',
  'api/index.html',
  'api/build-up/lifts.html',
  'api/job/planJob.html',
  'api/checked-figures.html?source=ada-counter-slope',
] as const;

const WIDTHS = [1280, 360] as const;
const SCHEMES = ['light', 'dark'] as const;

const found = findChromium();
let site: ServedSite;
let browser: Browser | undefined;

beforeAll(async () => {
  expect(existsSync(join(SITE, 'index.html')), 'site/ is missing: npm run docs').toBe(true);
  site = await serveSite('/some/folder/');
  if (found.command === undefined) console.warn(`Chromium: ${found.reason}`);
  else browser = await chromium.launch({ executablePath: found.command, args: ['--no-sandbox'] });
});

afterAll(async () => {
  await browser?.close();
  await site.close();
});

/** Opens a page and keeps what its console says and which addresses it asks for. */
async function openPage(path: string, width: number, colorScheme: 'light' | 'dark') {
  if (browser === undefined) throw new Error('no browser');
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => {
    const isFault = /^(?:error|warning)$/.test(message.type()) || /\bError\b/.test(message.text());
    if (isFault) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => asked.push(request.url()));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} ${response.url()}`);
  });
  await page.goto(site.address + path, { waitUntil: 'networkidle' });
  return { page, complaints, asked, close: () => context.close() };
}

interface Violation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe calls serious or critical. */
async function graveFindings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate<{ violations: readonly Violation[] }>('axe.run()');
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  return grave.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200) ?? ''}`);
}

describe.each(SCHEMES)('%s', (scheme) => {
  describe.each(WIDTHS)('%i px wide', (width) => {
    test.for(PAGES)('%s', async (path, { skip }) => {
      if (browser === undefined) {
        skip(found.reason);
        return;
      }
      const { page, complaints, asked, close } = await openPage(path, width, scheme);
      expect(complaints).toEqual([]);
      expect(
        asked.filter((url) => !url.startsWith(site.address) && !/^(?:data|blob):/.test(url)),
      ).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      expect(await graveFindings(page)).toEqual([]);
      await close();
    });
  });
});
