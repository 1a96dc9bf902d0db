// The pages of tasks: each has a live block, and none asks for a style that the site leaves out.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { BLOCKS } from '../../docs/.vitepress/live/blocks/index.js';

const folder = new URL('../../docs/how-to/', import.meta.url);
const pages = readdirSync(folder).filter((name) => name !== 'index.md');

describe.each(pages)('%s', (name) => {
  const text = readFileSync(new URL(name, folder), 'utf8');

  test('has a block to change numbers in', () => {
    const blocks = [...text.matchAll(/<settline-live name="([a-z-]+)"/g)].map(([, block]) => block);
    expect(blocks.length).toBeGreaterThan(0);
    expect(Object.keys(BLOCKS)).toEqual(expect.arrayContaining(blocks));
  });

  test('has no box or badge of the generator', () => {
    expect(text).not.toMatch(/^:::|<Badge/m);
  });
});
