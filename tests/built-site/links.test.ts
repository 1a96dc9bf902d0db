// A link checker of others over the whole site: pages, files and places in pages.
import { LinkChecker, LinkState } from 'linkinator';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveSite, type ServedSite } from './serve-site.js';

let site: ServedSite;

beforeAll(async () => {
  site = await serveSite('/some/folder/');
});

afterAll(async () => {
  await site.close();
});

test('every link of every page leads somewhere', async () => {
  const { links } = await new LinkChecker().check({
    // every address that begins like this one is followed
    path: site.address,
    recurse: true,
    checkFragments: true,
    concurrency: 20,
    linksToSkip: (link) => Promise.resolve(!link.startsWith(site.address)),
  });
  const broken = links.filter(({ state }) => state === LinkState.BROKEN);
  expect(links.length).toBeGreaterThan(300);
  expect(broken.map(({ url, parent }) => `${parent ?? ''}: ${url}`)).toEqual([]);
}, 600_000);
