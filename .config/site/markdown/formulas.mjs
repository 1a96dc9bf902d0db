// Formulas become MathML, set by `formulaTeX` of the library and temml: those in fences named
// `formula`, and code in the text that is one. Code that only looks like one stays code.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import temml from 'temml';
import { MATH_LETTERS } from '../math-font.mjs';
import { ROOT } from '../paths.mjs';

const attribute = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');

/** Whether code in a text may be a formula: one sign of equality, and nothing of a program. */
const looksLikeFormula = (text) =>
  /^[^=]*[^=<>!]=[^=]+$/.test(text) && !/['"`{}:;\]]|=>/.test(text) && /[-+*/^(]|\s=\s/.test(text);

/** Names of functions, and symbols of up to three letters with digits behind them. */
const SYMBOL =
  /^(?:sqrt|sin|cos|tan|asin|acos|atan|log|log10|exp|abs|min|max|ceil|floor|round|sum|mean|count|[A-Za-z]{1,3}\d*)$/;

const hasSymbolsOnly = (text) =>
  (text.match(/[A-Za-z]\w*/g) ?? []).every((name) => SYMBOL.test(name));

/** Comments write `2 s` for `2 * s`: the sign of multiplication is put in, unless words are there. */
function withSigns(text) {
  if (!hasSymbolsOnly(text)) return text;
  return text.replaceAll(/([\w)\]])\s+(?=[\w(])|\)(?=\()/g, (whole) => `${whole.trim()} * `);
}

/** The font of formulas holds what formulas are set with; another letter would come in another font. */
function refuseStrangers(math, formula) {
  const letters = math.replace(/<[^>]*>/g, '').replace(/&[a-z]+;/g, '');
  const stranger = [...letters].find((letter) => !MATH_LETTERS.has(letter));
  if (stranger === undefined) return;
  const code = stranger.codePointAt(0).toString(16);
  throw new Error(`${formula}: the font of formulas has no "${stranger}" (U+${code})`);
}

/** Makes the plugin; the library must be built. */
export async function formulas() {
  const { formulaTeX } = await import(pathToFileURL(join(ROOT, 'dist/formulas/index.js')).href);
  const mathOf = (text, displayMode) => {
    for (const form of [text, withSigns(text)]) {
      let math;
      try {
        const tex = `\\displaystyle ${formulaTeX(form)}`;
        math = temml.renderToString(tex, { displayMode, throwOnError: true });
      } catch {
        continue; // not in the grammar: the other form, or code
      }
      refuseStrangers(math, text);
      return math;
    }
    return undefined;
  };
  return (markdown) => {
    const { code_inline: code, fence } = markdown.renderer.rules;
    markdown.renderer.rules.code_inline = (tokens, index, ...rest) => {
      const { content } = tokens[index];
      const isFormula = looksLikeFormula(content) && hasSymbolsOnly(content);
      const math = isFormula ? mathOf(content, false) : undefined;
      if (math === undefined) return code(tokens, index, ...rest);
      return `<span v-pre class="formula" title="${attribute(content)}">${math}</span>`;
    };
    markdown.renderer.rules.fence = (tokens, index, ...rest) => {
      if (tokens[index].info.trim() !== 'formula') return fence(tokens, index, ...rest);
      const text = tokens[index].content.trim();
      const math = mathOf(text, true);
      if (math === undefined) return `<p><code v-pre>${attribute(text)}</code></p>\n`;
      const label = attribute(`Formula: ${text}`);
      return `<div v-pre class="formula-block" tabindex="0" role="group" aria-label="${label}">${math}</div>\n`;
    };
  };
}
