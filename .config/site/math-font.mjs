// The font of formulas: STIX Two Math, cut down to the letters and signs that formulas are set with.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { CACHE, MATH_FONT } from './paths.mjs';

const require = createRequire(import.meta.url);

/** The package of the font: its licence goes into the site. */
export const FONT_PACKAGE = '@fontsource/stix-two-math';
const FILE = `${FONT_PACKAGE}/files/stix-two-math-latin-400-normal.woff2`;

const between = (first, last) =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index));

/** Signs beside those of a keyboard; the last two are invisible: a call, and a product. */
const SIGNS = [...'·×÷−±≤≥≠∑∏√∞π…′⌈⌉⌊⌋‖\u00a0\u200b\u2061\u2062'];
/** A browser sets a symbol of one letter with these: the slanted letters, h and pi apart. */
const SLANTED = [...between(0x1d434, 0x1d467), '\u210e', '\u{1d70b}'];

/** What the font holds. */
export const MATH_LETTERS = new Set([...between(0x20, 0x7e), ...SIGNS, ...SLANTED]);

/** Writes the font, unless it is there from an earlier run with the same letters. */
export async function writeMathFont() {
  const whole = readFileSync(require.resolve(FILE));
  const text = [...MATH_LETTERS].join('');
  const mark = createHash('sha256').update(whole).update(text).digest('hex').slice(0, 16);
  const kept = join(CACHE, `math-font-${mark}.woff2`);
  if (!existsSync(kept)) {
    const subsetFont = require('subset-font');
    mkdirSync(CACHE, { recursive: true });
    writeFileSync(kept, await subsetFont(whole, text, { targetFormat: 'woff2' }));
  }
  mkdirSync(dirname(MATH_FONT), { recursive: true });
  writeFileSync(MATH_FONT, readFileSync(kept));
}
