// What the search indexes, and how it ranks. The functions run in the browser too, each as its own
// text: they may use nothing from outside themselves.
import { inRows } from './markdown/row-places.mjs';

/**
 * Words of a text: a decimal number is one word, and `UNIT_MISSING` is three.
 *
 * @param {string} text
 * @returns {string[]}
 */
function tokenize(text) {
  const words = text.match(/\d+(?:\.\d+)?|[\p{L}\p{N}_]+/gu) ?? [];
  return words.flatMap((word) => (word.includes('_') ? [word, ...word.split('_')] : [word]));
}

/**
 * A word as it is kept: words of every sentence are left out, plurals and spellings are one. The
 * name of a function is no plural: `planJobs` is not `planJob`.
 *
 * @param {string} term
 * @returns {string | null}
 */
function processTerm(term) {
  const word = term.toLowerCase();
  const common =
    /^(?:a|an|and|are|as|at|be|by|can|do|does|for|from|has|here|how|i|if|in|is|it|its|me|my|no|not|of|on|or|s|so|such|t|that|the|then|there|they|this|to|was|what|which|will|with|you|your)$/;
  if (common.test(word)) return null;
  if (/[a-z][A-Z]/.test(term)) return word;
  const spelled = word.replace(/^(centi|milli)?meter/, '$1metre').replace(/^color/, 'colour');
  return /^[a-z]{3,}[^s\W\d]s$/.test(spelled) ? spelled.slice(0, -1) : spelled;
}

/** Long words may be misspelled; short ones must be right. */
function fuzzy(term) {
  return term.length > 4 ? 0.2 : false;
}

/** Short words must be whole. */
function prefix(term) {
  return term.length > 2;
}

/**
 * Questions first, then pages for reading, then functions; lists of all fields and figures last.
 *
 * @param {string} id
 * @returns {number}
 */
function boostDocument(id) {
  if (/\/how-to\/#[^#]+-/.test(id)) return 2;
  if (/\/api\/(?:checked-figures|sources|job-file-fields)|\/types\.html/.test(id)) return 0.3;
  if (/\/api\//.test(id)) return 0.6;
  return /\/reference\/measured/.test(id) ? 0.4 : 1;
}

/** Settings of the generator's search. */
export const searchOptions = {
  disableDetailedView: true,
  translations: { button: { buttonText: 'Search', buttonAriaLabel: 'Search' } },
  _render: (text, env, markdown) => inRows(markdown.render(text, env), env.relativePath),
  miniSearch: {
    options: { tokenize, processTerm },
    searchOptions: { fuzzy, prefix, boostDocument, boost: { title: 5, text: 2, titles: 1 } },
  },
};
