import { buildUp, excavationDepth, lifts } from 'settline/build-up';
import { attempt } from 'settline/errors';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BLOCKS, type BlockName } from '../../docs/.vitepress/live/blocks/index.js';
import { both } from '../../docs/.vitepress/live/page/both-systems.js';
import { overflow, plain, seriousFindings, serveElements, type ServedSite } from './in-browser.js';

let site: ServedSite;
beforeAll(async () => {
  site = await serveElements();
});
afterAll(() => site.close());

const names = Object.keys(BLOCKS) as BlockName[];
const layers = [
  { name: 'paver', thickness: '3 1/4 in' },
  { name: 'bedding', thickness: '1 in' },
  { name: 'base', thickness: '8 in' },
];

const answer = async (page: Page): Promise<string> => {
  const place = page.locator('.answer').first();
  await place.filter({ hasText: /./ }).waitFor();
  return plain(await place.textContent());
};

/** Waits until the answer has these words. */
const showsAnswer = (page: Page, words: string): Promise<void> =>
  page.locator('.answer', { hasText: words }).waitFor();

/** Moves on by the Tab key until the field with this label has the focus. */
async function tabTo(page: Page, label: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('Tab');
    if (await field.evaluate((one) => one.matches(':focus'))) return;
  }
  throw new Error(`no way to ${label} by the Tab key`);
}

async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}

test.each(names)('%s: its ready numbers give in the page what they give in Node', async (name) => {
  const { block } = await BLOCKS[name]();
  const outcome = block.run(block.options);
  expect(outcome.ok).toBe(true);
  if (!outcome.ok) return;
  const { page, context, faults } = await site.open(`?live=${name}`);
  expect(await answer(page)).toBe(plain(outcome.value.answer));
  expect(await page.locator('.faults li').count()).toBe(0);
  await page.getByText('All values').click();
  await page.locator('.scroll tbody tr').first().waitFor();
  if (outcome.value.working.length > 0) await page.locator('.step').first().waitFor();
  expect(await page.locator('.step').count()).toBe(outcome.value.working.length);
  for (const { text } of outcome.value.cautions) {
    expect(await page.locator('.notes').textContent()).toContain(text);
  }
  if (outcome.value.draw !== null) await page.locator('.drawing svg').waitFor();
  expect(await seriousFindings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});

test.each(names)('%s: fits a phone, in the dark too', async (name) => {
  const { page, context, faults } = await site.open(`?live=${name}`, {
    width: 360,
    scheme: 'dark',
  });
  await answer(page);
  for (const summary of await page.locator('summary').all()) await summary.click();
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await seriousFindings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});

test('a field that is edited by keyboard gives the number of the library', async () => {
  const { page, context } = await site.open('?live=excavation-depth');
  await answer(page);
  await tabTo(page, 'layer 3: compacted thickness');
  await type(page, '10 1/2 in');
  await tabTo(page, 'Old paving to strip');
  await type(page, '4 in');
  const thicker = [...layers.slice(0, 2), { name: 'base', thickness: '10 1/2 in' }];
  const drive = buildUp({ layers: thicker });
  const { soil } = excavationDepth({ buildUp: drive, removedSurface: '4 in' });
  await showsAnswer(page, both(soil));
  expect(await answer(page)).toContain(`Dig ${both(soil)} of soil.`);
  await page.getByText('All values').click();
  await page.locator('.scroll', { hasText: '10 3/4 in' }).first().waitFor();
  await context.close();
});

test('rows are added and removed by keyboard', async () => {
  const { page, context } = await site.open('?live=excavation-depth');
  await answer(page);
  await page.getByRole('button', { name: 'Add layer' }).focus();
  await page.keyboard.press('Enter');
  expect(await page.getByLabel('layer 4: name').evaluate((one) => one.matches(':focus'))).toBe(
    true,
  );
  const four = buildUp({ layers: [...layers, { name: 'layer 4', thickness: '4 in' }] });
  await showsAnswer(page, both(excavationDepth({ buildUp: four, removedSurface: '3 in' }).soil));
  await page.getByRole('button', { name: 'Remove layer 4' }).focus();
  await page.keyboard.press('Enter');
  const three = buildUp({ layers });
  await showsAnswer(page, both(excavationDepth({ buildUp: three, removedSurface: '3 in' }).soil));
  expect(await page.getByLabel('layer 4: name').count()).toBe(0);
  await context.close();
});

test('a wrong field shows the fault of the library, at the field and in the JSON', async () => {
  const { page, context } = await site.open('?live=lifts');
  await answer(page);
  const field = page.getByLabel('Thickest lift the machine compacts');
  await field.fill('3');
  await page.locator('[aria-invalid=true]').waitFor();
  const wrong = attempt(() => lifts({ thickness: '8 in', maxLift: '3', compactedPerLoose: 0.8 }));
  expect(wrong.ok).toBe(false);
  if (wrong.ok) return;
  const [fault] = wrong.errors;
  const described = await field.getAttribute('aria-describedby');
  const texts = await page
    .locator(
      (described ?? '')
        .split(' ')
        .map((id) => `#${id}`)
        .join(','),
    )
    .allTextContents();
  expect(texts).toContain(fault?.message);
  const listed = await page.locator('.faults li').textContent();
  expect(listed).toContain(`maxLift: ${fault?.message ?? ''} UNIT_MISSING`);
  await page.getByRole('button', { name: 'show maxLift at line 3 of the JSON' }).click();
  const selected = await page.getByLabel('All options as JSON').evaluate((one) => {
    const { value, selectionStart, selectionEnd } = one as HTMLTextAreaElement;
    return value.slice(selectionStart, selectionEnd);
  });
  expect(selected).toBe('"3"');
  await context.close();
});

test('faults of two calculations are told together', async () => {
  const { page, context } = await site.open('?live=excavation-depth');
  await answer(page);
  await page.getByLabel('layer 1: compacted thickness').fill('-3 in');
  await page.getByLabel('Old paving to strip').fill('3');
  await page.getByLabel('String above finished grade').fill('high');
  await page.locator('.answer', { hasText: '3 faults' }).waitFor();
  expect(await page.locator('[aria-invalid=true]').count()).toBe(3);
  await context.close();
});

test('the JSON of the options moves the form, and says where it is no JSON', async () => {
  const { page, context } = await site.open('?live=lifts');
  await answer(page);
  await page.getByText('Options as JSON').click();
  const json = page.getByLabel('All options as JSON');
  await json.fill(
    '{\n  "thickness": "300 mm",\n  "maxLift": "100 mm",\n  "compactedPerLoose": 0.75\n}',
  );
  const layer = lifts({ thickness: '300 mm', maxLift: '100 mm', compactedPerLoose: 0.75 });
  await page.locator('.answer', { hasText: `${layer.count} lifts` }).waitFor();
  expect(await page.getByLabel('Compacted thickness of the layer').inputValue()).toBe('300 mm');
  await json.fill('{\n  "thickness": "300 mm"\n  "maxLift": "100 mm"\n}');
  const fault = page.locator('.faults li', { hasText: 'Line 3' });
  await fault.waitFor();
  expect(await fault.textContent()).toContain('Write a comma between fields');
  await json.fill('{ "thickness": "8 in", "maxlift": "3 in", "compactedPerLoose": 0.8 }');
  await page.locator('.faults li', { hasText: 'maxLift' }).first().waitFor();
  await context.close();
});

test('a reload keeps what was typed, and a link opens it elsewhere', async () => {
  const { page, context } = await site.open('?live=loads');
  await answer(page);
  const before = await answer(page);
  await page.getByLabel('Loose volume to haul').fill('90 yd3');
  await page.waitForFunction(() => location.hash.startsWith('#loads='));
  const changed = await answer(page);
  expect(changed).not.toBe(before);
  await page.reload();
  expect(await answer(page)).toBe(changed);
  expect(await page.getByLabel('Loose volume to haul').inputValue()).toBe('90 yd3');
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText('Link copied.').waitFor();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const other = await site.open(link.slice(site.url.length));
  expect(await answer(other.page)).toBe(changed);
  await other.page.getByRole('button', { name: 'Reset' }).click();
  expect(await answer(other.page)).toBe(before);
  expect(await other.page.evaluate(() => location.hash)).toBe('');
  await Promise.all([context.close(), other.context.close()]);
});

test('a block that waits loads the library once a reader comes to it by keyboard', async () => {
  const { page, context } = await site.open('?live=lifts&wait');
  await page.getByText('What is read without script.').waitFor();
  expect(await page.locator('.answer').count()).toBe(0);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  const { count } = lifts({ thickness: '8 in', maxLift: '3 in', compactedPerLoose: 0.8 });
  await showsAnswer(page, `${count} lifts`.replace(' ', '\u00a0'));
  await context.close();
});
