// What the search of the documentation indexes, and how it reads words.
import { describe, expect, test } from 'vitest';
import { inRows } from '../../.config/site/markdown/row-places.mjs';
import { searchOptions } from '../../.config/site/search.mjs';

const { tokenize, processTerm } = searchOptions.miniSearch.options;
const { boostDocument } = searchOptions.miniSearch.searchOptions;

const kept = (text: string): unknown[] => tokenize(text).map(processTerm).filter(Boolean);

describe('the words of a text', () => {
  test.for([
    ['Where does 0.8 come from?', ['where', '0.8', 'come']],
    ['UNIT_MISSING', ['unit_missing', 'unit', 'missing']],
    ['Can I use metres or millimeters?', ['use', 'metre', 'millimetre']],
    ['the grass of 95 % stakes', ['grass', '95', 'stake']],
    ['planJobs, planJob', ['planjobs', 'planjob']],
  ] as const)('%s', ([text, words]) => {
    expect(kept(text)).toEqual(words);
  });
});

test('questions come before pages, pages before functions, functions before lists', () => {
  const ranks = [
    'how-to/#can-i-use-metres',
    'how-to/string.html',
    'api/build-up/lifts.html',
    'api/checked-figures.html#of-a',
  ].map((path) => boostDocument(`/base/${path}`));
  expect(ranks).toEqual([2, 1, 0.6, 0.3]);
});

describe('rows with a place', () => {
  test('a code is a heading for the search', () => {
    const row =
      '<tr>\n<td><code v-pre id="unit_missing">UNIT_MISSING</code></td>\n<td>no unit</td>\n</tr>';
    const page = inRows(row, 'reference/error-codes.md');
    expect(page).toContain('<h3 id="unit_missing">UNIT_MISSING <a');
    expect(page).toContain('no unit');
    expect(inRows(row, 'reference/glossary.md')).toBe(row);
  });

  test('so is a question', () => {
    const row = '<tr>\n<td id="how-deep">How deep?</td>\n<td>12 in</td>\n</tr>';
    const page = inRows(row, 'how-to/index.md');
    expect(page).toMatch(/<h3 id="how-deep">How deep\? <a class="header-anchor" href="#how-deep">/);
  });
});
