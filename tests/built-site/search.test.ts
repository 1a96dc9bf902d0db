// What a newcomer asks: one search from the landing page finds the answer.
import { chromium, type Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium } from '../package/chromium.js';
import { serveSite, type ServedSite } from './serve-site.js';

const QUESTIONS = [
  ['how deep below string', /first-depth|how-to\/string|how-to\/#questions/],
  ['95 % means', /soil-states/],
  ['which way move stake', /stakes-in-line|describeMove|how-to\/index/],
  ['where 0.8 comes from', /soil-states/],
  ['uneven stakes', /how-to\/(?:string|#questions)/],
  ['truck loads', /dig-volume|spoil|volumes\/loads/],
  ['past the paving', /dig-line/],
  ['misprint', /sources|checked-figures/],
] as const;

/** So many results are seen without scrolling. */
const SEEN = 6;

const found = findChromium();
let site: ServedSite;
let browser: Browser | undefined;

beforeAll(async () => {
  site = await serveSite('/some/folder/');
  if (found.command === undefined) return;
  browser = await chromium.launch({ executablePath: found.command, args: ['--no-sandbox'] });
});

afterAll(async () => {
  await browser?.close();
  await site.close();
});

test.for(QUESTIONS)('%s', async ([question, answer], { skip }) => {
  if (browser === undefined) {
    skip(found.reason);
    return;
  }
  const page = await browser.newPage();
  await page.goto(`${site.address}index.html`, { waitUntil: 'networkidle' });
  await page.click('.DocSearch-Button');
  await page.fill('.VPLocalSearchBox input', question);
  await page.waitForSelector('.VPLocalSearchBox a.result');
  await page.waitForTimeout(1500);
  const results = page.locator('.VPLocalSearchBox a.result');
  const addresses = await results.evaluateAll((list) => list.map(String));
  expect(addresses.slice(0, SEEN).join('\n')).toMatch(answer);
  await page.close();
});
