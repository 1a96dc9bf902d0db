import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import {
  checkJob,
  materialList,
  planJob,
  renderCheckSheet,
  renderJobSheet,
  type JobInput,
  type JobPlan,
} from 'settline/job';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { SITES } from '../../docs/.vitepress/live/job/example-sites.js';
import { overflow, seriousFindings, serveElements, type ServedSite } from './in-browser.js';

let site: ServedSite;
beforeAll(async () => {
  site = await serveElements();
});
afterAll(() => site.close());

const textOf = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../examples/${name}.json`, import.meta.url)), 'utf8');
const planOf = (name: string): JobPlan => planJob(JSON.parse(textOf(name)) as JobInput);

const sheet = (page: Page) => page.getByRole('region', { name: 'Sheet' });
const fold = (page: Page, title: string) => page.locator('summary', { hasText: title });
const editor = (page: Page) => page.getByLabel('Job file');

/** Takes an example site and waits for its sheet. */
async function take(page: Page, name: string, plan: JobPlan): Promise<void> {
  await page.getByLabel('Example site').selectOption(name);
  await page.getByRole('button', { name: 'Use this site' }).click();
  await sheet(page).filter({ hasText: plan.name }).waitFor();
}

test.each(Object.keys(SITES))('%s: the same sheet as in Node, in both systems', async (name) => {
  const { page, context, faults } = await site.open('?job');
  const plan = planOf(name);
  await take(page, name, plan);
  expect(await sheet(page).textContent()).toBe(renderJobSheet(plan, { system: 'us' }));
  await page.getByLabel('Units').selectOption('metric');
  await sheet(page)
    .filter({ hasText: /metres|millimetres/i })
    .waitFor();
  expect(await sheet(page).textContent()).toBe(renderJobSheet(plan, { system: 'metric' }));
  await fold(page, 'Order list').click();
  const ordered = page.getByRole('region', { name: 'order list' }).locator('tbody tr');
  await expect.poll(() => ordered.count()).toBe(materialList(plan).lines.length);
  await fold(page, 'Drawings').click();
  await page.locator('figure svg').first().waitFor();
  expect(await page.locator('figure svg').count()).toBe(
    1 + 2 * plan.pavements.length + plan.stringLines.length,
  );
  expect(await page.locator('p.fault').allTextContents()).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});

test('a fault is marked at its line, and selected there', async () => {
  const { page, context } = await site.open('?job');
  await sheet(page).waitFor();
  const text = textOf('cedar-court').replace('"17 in"', '"17"');
  await editor(page).fill(text);
  const fault = page.locator('.faults li').first();
  await fault.waitFor();
  const line = text.split('\n').findIndex((one) => one.includes('"17"')) + 1;
  expect(await fault.textContent()).toMatch(/^stakes\[0\]\.ground: .*has no unit.*UNIT_MISSING/);
  expect(await page.locator('.numbers .bad').allTextContents()).toEqual([`! ${line}`]);
  await fault.getByRole('button').click();
  const selected = await editor(page).evaluate((one) => {
    const { value, selectionStart, selectionEnd } = one as HTMLTextAreaElement;
    return value.slice(selectionStart, selectionEnd);
  });
  expect(selected).toBe('"17"');
  expect(await sheet(page).isVisible()).toBe(false);
  await context.close();
});

test('text that is no JSON is told with line and character', async () => {
  const { page, context } = await site.open('?job');
  await sheet(page).waitFor();
  await editor(page).fill('{\n  "version": 1\n  "name": "x"\n}');
  await page.locator('.faults li').first().waitFor();
  expect(await page.locator('.faults li').textContent()).toContain(
    'line 3, character 3: found "\\"".',
  );
  await context.close();
});

test('a reload keeps the job, the units and the readings; a link opens the job elsewhere', async () => {
  const { page, context } = await site.open('?job');
  await sheet(page).waitFor();
  const text = textOf('cedar-court').replace('Cedar Court 27', 'Cedar Court 28');
  await editor(page).fill(text);
  await sheet(page).filter({ hasText: 'Cedar Court 28' }).waitFor();
  await page.getByLabel('Units').selectOption('metric');
  await fold(page, 'Readings as built').click();
  const written =
    '{ "readings": [{ "stake": "K3", "string": "kerb", "surface": "subgrade", "belowString": "36 in" }], "tolerances": { "subgrade": { "over": "1/4 in", "under": "3/4 in" } } }';
  await page.getByLabel('Readings', { exact: true }).fill(written);
  await page
    .getByRole('region', { name: 'Check of the readings' })
    .filter({ hasText: 'K3' })
    .waitFor();
  await page.reload();
  await sheet(page).filter({ hasText: 'Cedar Court 28' }).waitFor();
  expect(await editor(page).inputValue()).toBe(text);
  expect(await page.getByLabel('Units').inputValue()).toBe('metric');
  await fold(page, 'Readings as built').click();
  expect(await page.getByLabel('Readings', { exact: true }).inputValue()).toBe(written);
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText('Link copied.').waitFor();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const other = await site.open(link.slice(site.url.length));
  await sheet(other.page).filter({ hasText: 'Cedar Court 28' }).waitFor();
  expect(await editor(other.page).inputValue()).toBe(text);
  await Promise.all([context.close(), other.context.close()]);
});

test('readings as built give the check of the library, and their faults', async () => {
  const { page, context } = await site.open('?job');
  await sheet(page).waitFor();
  await fold(page, 'Readings as built').click();
  const field = page.getByLabel('Readings', { exact: true });
  const readings = {
    readings: [{ stake: 'K3', string: 'kerb', surface: 'subgrade', belowString: '35 7/8 in' }],
    tolerances: { subgrade: { over: '1/4 in', under: '3/4 in' } },
  };
  await field.fill(JSON.stringify(readings, null, 2));
  const check = renderCheckSheet(checkJob(planOf('cedar-court'), readings), { system: 'us' });
  const shown = page.getByRole('region', { name: 'Check of the readings' });
  await shown.filter({ hasText: 'K3' }).filter({ hasNotText: 'K4' }).waitFor();
  expect(await shown.textContent()).toBe(check);
  await field.fill(JSON.stringify(readings, null, 2).replace('"K3"', '"K33"'));
  await page.getByLabel('faults of the readings').getByText('readings[0].stake').waitFor();
  await context.close();
});

test('every figure shows its working', async () => {
  const { page, context } = await site.open('?job');
  await sheet(page).waitFor();
  await fold(page, 'Figures and their working').click();
  await page.getByLabel('Part of the job').selectOption({ label: 'String kerb' });
  const figure = page.locator('.figures li').filter({ hasText: 'stakes, K1, dig' });
  await figure.getByRole('button').click();
  const step = figure.locator('.step');
  expect(await step.count()).toBe(1);
  expect(await step.locator('strong').textContent()).toContain('at stake K1');
  await figure.getByRole('button').first().click();
  expect(await step.count()).toBe(0);
  await context.close();
});

test.each([
  [1280, 'light'],
  [1280, 'dark'],
  [360, 'light'],
  [360, 'dark'],
] as const)('at %i px, %s: no overflow, nothing serious for axe', async (width, scheme) => {
  const { page, context, faults } = await site.open('?job', { width, scheme });
  await sheet(page).waitFor();
  for (const summary of await page.locator('summary').all()) {
    if ((await summary.textContent()) !== 'Sheet') await summary.click();
  }
  await page.locator('figure svg').first().waitFor();
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await seriousFindings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});
