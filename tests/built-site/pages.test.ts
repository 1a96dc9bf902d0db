import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFindings, hasBrowser, overflow, startReader, type Reader } from './reader.js';

/** Landing page and others: each kind of page once. */
const PAGES = [
  'index.html',
  'job.html',
  'tutorial/first-depth.html',
  'tutorial/whole-job.html',
  'how-to/index.html',
  'how-to/string.html',
  'how-to/how-deep-does-it-freeze.html',
  'how-to/hand-over.html',
  'explanation/soil-states.html',
  'reference/error-codes.html',
  'api/index.html',
  'api/build-up/lifts.html',
  'api/job/planJob.html',
  'api/checked-figures.html?source=ada-counter-slope',
] as const;

const WIDTHS = [1280, 360] as const;
const SCHEMES = ['light', 'dark'] as const;

describe.skipIf(!hasBrowser)('pages', () => {
  let reader: Reader;
  beforeAll(async () => {
    reader = await startReader();
  });
  afterAll(() => reader.close());

  describe.each(SCHEMES)('%s', (scheme) => {
    describe.each(WIDTHS)('%i px wide', (width) => {
      test.each(PAGES)('%s', async (path) => {
        const { page, context, complaints } = await reader.open(path, { width, scheme });
        expect(await overflow(page)).toBe(0);
        expect(await graveFindings(page)).toEqual([]);
        expect(complaints).toEqual([]);
        await context.close();
      });
    });
  });

  test.each(['none.html', 'api/build-up/none.html'])('%s leads back to the site', async (path) => {
    const { page, context } = await reader.open(path, { scheme: 'dark' });
    expect(await page.locator('h1').textContent()).toBe('No such page');
    expect(await graveFindings(page)).toEqual([]);
    await page.getByRole('link', { name: 'Start from the first page' }).click();
    await page.waitForURL(`${reader.address}index.html`);
    expect(await page.locator('h1').textContent()).toContain('settline');
    await context.close();
  });
});
