// What a newcomer asks: by two clicks from the landing page, and by one search.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, startReader, type Reader } from './reader.js';

interface Question {
  /** The question as the page of tasks lists it. */
  readonly asked: string;
  /** What is typed into the search. */
  readonly typed: string;
  /** Where the answer stands. */
  readonly page: RegExp;
  /** Words of the answer. */
  readonly answer: RegExp;
}

const QUESTIONS: readonly Question[] = [
  {
    asked: 'How deep below my string?',
    typed: 'how deep below my string',
    page: /first-depth|how-to\/string/,
    answer: /27 1\/4 in/,
  },
  {
    asked: 'What does 95% mean here?',
    typed: 'what does 95 % mean here',
    page: /soil-states/,
    answer: /95\s?%/,
  },
  {
    asked: 'Which way do I move the stake?',
    typed: 'which way do I move the stake',
    page: /stakes-in-line/,
    answer: /which way/,
  },
  {
    asked: 'Where does 0.8 come from?',
    typed: 'where does 0.8 come from',
    page: /soil-states/,
    answer: /0\.8/,
  },
  {
    asked: 'Can I use metres?',
    typed: 'can I use metres',
    page: /explanation\/numbers/,
    answer: /metres|mm/,
  },
  {
    asked: 'What if my stakes are uneven?',
    typed: 'what if my stakes are uneven',
    page: /how-to\/string/,
    answer: /stake/,
  },
  {
    asked: 'How many truck loads?',
    typed: 'how many truck loads',
    page: /dig-volume|spoil/,
    answer: /loads/,
  },
  {
    asked: 'How far past the edge do I dig?',
    typed: 'how far past the edge do I dig',
    page: /dig-line/,
    answer: /past/,
  },
  {
    asked: 'Why does it refuse my number?',
    typed: 'UNIT_MISSING',
    page: /error-codes/,
    answer: /UNIT_MISSING/,
  },
  {
    asked: 'How much sand and stone do I order?',
    typed: 'how much stone do I order',
    page: /how-to\/order/,
    answer: /deliver|order/i,
  },
];

/** So many results are seen without scrolling. */
const SEEN = 5;

const textOf = async (page: Page): Promise<string> =>
  (await page.locator('.vp-doc').first().innerText()).replaceAll('\u00a0', ' ');

const bySearch = async (page: Page, typed: string): Promise<string[]> => {
  await page.fill('.VPLocalSearchBox input', typed);
  await page.locator('.VPLocalSearchBox a.result').first().waitFor();
  await page.waitForTimeout(800);
  const results = page.locator('.VPLocalSearchBox a.result');
  return (await results.evaluateAll((list) => list.map(String))).slice(0, SEEN);
};

describe.skipIf(!hasBrowser)('questions', () => {
  let reader: Reader;
  beforeAll(async () => {
    reader = await startReader();
  });
  afterAll(() => reader.close());

  test.each(QUESTIONS)('two clicks: $asked', async ({ asked, page: address, answer }) => {
    const { page, context } = await reader.open('index.html');
    await page.getByRole('link', { name: 'the questions that are asked first' }).click();
    await page.waitForURL(/how-to\/.*#questions/);
    await page.locator('tr', { hasText: asked }).getByRole('link').first().click();
    await page.waitForURL(address);
    await expect.poll(() => textOf(page)).toMatch(answer);
    await context.close();
  });

  test.each(QUESTIONS)('one search: $typed', async ({ asked, typed, page: address }) => {
    const { page, context } = await reader.open('index.html');
    await page.click('.site-search');
    const found = await bySearch(page, typed);
    console.info(`${typed}: ${found.map((one) => one.slice(reader.address.length)).join(', ')}`);
    const place = asked
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replace(/-$/, '');
    const isAnswer = (one: string): boolean => address.test(one) || one.endsWith(`#${place}`);
    expect(found.filter(isAnswer)).not.toEqual([]);
    await context.close();
  });

  test('the search opens, chooses and follows by keyboard', async () => {
    const { page, context, complaints } = await reader.open('index.html');
    await page.keyboard.press('/');
    await page.locator('.VPLocalSearchBox input').waitFor();
    await page.keyboard.type('misprint');
    await page.locator('.VPLocalSearchBox a.result').first().waitFor();
    await page.waitForTimeout(500);
    await page.keyboard.press('Enter');
    await page.waitForURL((url) => !url.href.endsWith('index.html'));
    expect(await textOf(page)).toMatch(/misprint/i);
    // an address would be read anew from the folder of the page that was gone to
    expect(await page.locator('link[rel=icon]').getAttribute('href')).toMatch(/^data:image/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('the search opens from its button by keyboard', async () => {
    const { page, context } = await reader.open('index.html');
    await page.locator('.site-search').focus();
    await page.keyboard.press('Enter');
    await page.locator('.VPLocalSearchBox input').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.VPLocalSearchBox').count()).toBe(0);
    await context.close();
  });
});
