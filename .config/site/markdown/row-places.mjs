// Rows that readers look for have places of their own: each error code, each warning, and each question. Links lead
// to them, and the search finds them as it finds headings.

const CODES = ['reference/error-codes.md', 'reference/warnings.md'];
const QUESTIONS = 'how-to/index.md';

const slug = (text) =>
  text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');

/** Gives the first cell of such a row an id; a code that stands twice keeps its first place. */
function markRows({ tokens, env }) {
  if (![...CODES, QUESTIONS].includes(env.relativePath)) return;
  const used = new Set();
  tokens.forEach(({ type }, at) => {
    const [first, ...rest] = tokens[at + 2]?.children ?? [];
    if (type !== 'tr_open' || first === undefined || rest.length > 0) return;
    const isCode = first.type === 'code_inline';
    const id = isCode ? first.content.toLowerCase() : slug(first.content);
    if (used.has(id) || !(isCode || first.content.endsWith('?'))) return;
    used.add(id);
    (isCode ? first : tokens[at + 1]).attrSet('id', id);
  });
}

/** Teaches a Markdown renderer to mark them. */
export function rowPlaces(markdown) {
  markdown.core.ruler.push('mark_rows', markRows);
}

const heading = (id, title, text) =>
  `<h3 id="${id}">${title} <a class="header-anchor" href="#${id}">&#8203;</a></h3>\n${text}\n`;

/**
 * A page as the search reads it: rows with a place stand as headings.
 *
 * @param {string} html
 * @param {string} path
 * @returns {string}
 */
export function inRows(html, path) {
  if (CODES.includes(path)) {
    return html.replaceAll(
      /<tr>\s*<td><code[^>]*\sid="([^"]+)"[^>]*>([^<]+)<\/code><\/td>([\s\S]*?)<\/tr>/g,
      (_, id, title, rest) => heading(id, title, rest),
    );
  }
  if (path !== QUESTIONS) return html;
  return html.replaceAll(
    /<tr>\s*<td id="([^"]+)">([^<]+)<\/td>([\s\S]*?)<\/tr>/g,
    (_, id, title, rest) => heading(id, title, rest),
  );
}
