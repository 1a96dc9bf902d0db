// What computes in the built pages, against the library in Node.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { buildUp, excavationDepth } from 'settline/build-up';
import { attempt } from 'settline/errors';
import { liftWater } from 'settline/ground';
import { planJob, renderJobSheet, type JobInput } from 'settline/job';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { both } from '../../docs/.vitepress/live/page/both-systems.js';
import { SITES } from '../../docs/.vitepress/live/job/example-sites.js';
import { hasBrowser, overflow, graveFindings, startReader, type Reader } from './reader.js';
import { SITE } from './serve-site.js';

const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

const layers = [
  { name: 'paver', thickness: '3 1/4 in' },
  { name: 'bedding', thickness: '1 in' },
  { name: 'base', thickness: '8 in' },
];

/** Waits until the answer has these words; amounts in it hold no-break spaces. */
async function showsAnswer(page: Page, words: string): Promise<void> {
  const answer = page.locator('.answer').first();
  await expect
    .poll(async () => plain(await answer.textContent()), { timeout: 15_000 })
    .toContain(words);
}

/** Moves on by the Tab key until the field with this label has the focus. */
async function tabTo(page: Page, label: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true }).and(page.locator(':focus'));
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press('Tab');
    if ((await field.count()) > 0) return;
  }
  throw new Error(`no way to ${label} by the Tab key`);
}

const sheetOf = (page: Page) => page.getByRole('region', { name: 'Sheet', exact: true });
const fold = (page: Page, title: string) => page.locator('summary', { hasText: title });

describe.skipIf(!hasBrowser)('what computes', () => {
  let reader: Reader;
  beforeAll(async () => {
    reader = await startReader();
  });
  afterAll(() => reader.close());

  test('the block of the landing page, by keyboard alone', async () => {
    const { page, context, complaints } = await reader.open('index.html');
    const open = page.getByRole('button', { name: 'Change the numbers' });
    await open.focus();
    await page.keyboard.press('Enter');
    await showsAnswer(page, 'Dig 9 1/4 in (235 mm) of soil.');
    await tabTo(page, 'layer 3: compacted thickness');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('10 1/2 in');
    const thicker = [...layers.slice(0, 2), { name: 'base', thickness: '10 1/2 in' }];
    const dig = excavationDepth({ buildUp: buildUp({ layers: thicker }), removedSurface: '3 in' });
    await showsAnswer(page, `Dig ${both(dig.soil)} of soil.`);
    await page.reload({ waitUntil: 'networkidle' });
    await showsAnswer(page, `Dig ${both(dig.soil)} of soil.`);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a wrong field shows the fault of the library, with its path and its line', async () => {
    const { page, context } = await reader.open('how-to/how-much-water-does-the-stone-need.html');
    await showsAnswer(page, 'The plate compacts lifts');
    const field = page.getByLabel('Compacted thickness of the lift').first();
    await field.fill('4');
    await page.locator('[aria-invalid=true]').first().waitFor();
    const wrong = attempt(() =>
      liftWater({
        area: '640 ft2',
        thickness: '4',
        dryDensity: '132 lb/ft3',
        moisture: 0.03,
        targetMoisture: 0.06,
      }),
    );
    const message = wrong.ok ? '' : (wrong.errors[0]?.message ?? '');
    const listed = plain(await page.locator('.faults li').first().textContent());
    expect(listed).toContain(`thickness: ${message} UNIT_MISSING`);
    expect(listed).toContain('line 3');
    await context.close();
  });

  test.each([
    'is-ten-inches-enough',
    'how-deep-does-it-freeze',
    'layers',
    'drawings',
    'steps',
    'areas',
  ])('the block of %s at 360 px in the dark', async (name) => {
    const look = { width: 360, scheme: 'dark' } as const;
    const { page, context, complaints } = await reader.open(`how-to/${name}.html`, look);
    await page.locator('.answer').first().filter({ hasText: /\d/ }).waitFor();
    for (const summary of await page.locator('settline-live summary').all()) {
      await summary.click();
    }
    expect(await overflow(page)).toBe(0);
    expect(await graveFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('an example is edited and run in the page of its function', async () => {
    const { page, context, complaints } = await reader.open('api/build-up/lifts.html');
    await page.getByRole('button', { name: 'Edit and run' }).first().click();
    await page.getByText('Every line gives what is written.').first().waitFor();
    const field = page.locator('settline-example textarea').first();
    const text = await field.inputValue();
    expect(text).toContain("'11 in'");
    await field.fill(text.replace("'11 in'", "'11'"));
    await field.press('Control+Enter');
    await page.getByText('UNIT_MISSING').first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('the formula of a function is set as mathematics, in the shipped font', async () => {
    const { page, context, complaints } = await reader.open('api/ground/liftWater.html');
    expect(await page.locator('.formula-block math').count()).toBeGreaterThan(0);
    await page.evaluate('document.fonts.ready');
    const fonts = await page.evaluate<string[]>(
      '[...document.fonts].filter((one) => one.status === "loaded").map((one) => one.family)',
    );
    expect(fonts.map((name) => name.replaceAll('"', ''))).toEqual(['STIX Two Math']);
    expect(readFileSync(join(SITE, 'licences.txt'), 'utf8')).toMatch(
      /@fontsource\/stix-two-math[^]*SIL OPEN FONT LICENSE/,
    );
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a page of a task prints its text and answer, and nothing to press', async () => {
    const { page, context } = await reader.open('how-to/string.html', { scheme: 'dark' });
    const answer = page.locator('.answer').first();
    await answer.filter({ hasText: /\d/ }).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await answer.isVisible()).toBe(true);
    for (const part of ['.VPNav', '.VPSidebar', '.page-copy', '.form', '.bar']) {
      expect(await page.locator(part).first().isVisible(), part).toBe(false);
    }
    const ink = await page.locator('h1').evaluate((one) => getComputedStyle(one).color);
    expect(ink).toBe('rgb(0, 0, 0)');
    await context.close();
  });

  test.each(Object.keys(SITES))('job page, %s: the sheet that Node prints', async (name) => {
    const { page, context, complaints } = await reader.open('job.html');
    const text = readFileSync(join(SITE, 'examples', `${name}.json`), 'utf8');
    const plan = planJob(JSON.parse(text) as JobInput);
    await page.getByLabel('Example site').selectOption(name);
    await page.getByRole('button', { name: 'Use this site' }).click();
    const sheet = sheetOf(page);
    await sheet.filter({ hasText: plan.name }).waitFor();
    expect(await sheet.textContent()).toBe(renderJobSheet(plan, { system: 'us' }));
    await page.getByLabel('Units').selectOption('metric');
    const metric = renderJobSheet(plan, { system: 'metric' });
    await expect.poll(() => sheet.textContent()).toBe(metric);
    await page.reload({ waitUntil: 'networkidle' });
    await expect.poll(() => sheet.textContent()).toBe(metric);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('job page: a figure tells its step and the field of the job that it comes from', async () => {
    const { page, context } = await reader.open('job.html');
    await sheetOf(page).waitFor();
    await fold(page, 'Figures and their working').click();
    await page.getByLabel('Part of the job').selectOption({ label: 'String kerb' });
    const figure = page.locator('.figures li').filter({ hasText: 'stakes, K1, dig' });
    await figure.getByRole('button').click();
    const steps = figure.locator('.step strong');
    expect(await steps.allTextContents()).toEqual([expect.stringContaining('at stake K1')]);
    for (const input of await figure.locator('.why summary').all()) await input.click();
    await expect.poll(() => steps.count()).toBeGreaterThan(1);
    expect(await figure.locator('.why').textContent()).toMatch(/from the job file: \w+\[\d+\]/);
    await context.close();
  });

  test('job page: a fault is marked at its line, and a phone shows no overflow', async () => {
    const { page, context } = await reader.open('job.html', { width: 360, scheme: 'dark' });
    await sheetOf(page).waitFor();
    const editor = page.getByLabel('Job file');
    const text = readFileSync(join(SITE, 'examples', 'cedar-court.json'), 'utf8');
    await editor.fill(text.replace('"17 in"', '"17"'));
    const fault = page.locator('.faults li').first();
    await fault.filter({ hasText: 'UNIT_MISSING' }).waitFor();
    expect(await overflow(page)).toBe(0);
    expect(await graveFindings(page)).toEqual([]);
    await context.close();
  });
});
