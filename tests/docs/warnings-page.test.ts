import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { warningTexts } from '../../.config/write-warnings.mjs';

const page = readFileSync(new URL('../../docs/reference/warnings.md', import.meta.url), 'utf8');

test('the page has every warning in the words of the sheet, and no other', async () => {
  const rows = page.replaceAll(/ +/g, ' ').match(/^\| `.*$/gm);
  const texts = await warningTexts();
  expect(rows).toEqual(texts.map(([code, text]) => `| \`${code}\` | ${text} |`).sort());
});
