// Public names in code become links to the pages that describe them.
import { existsSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { NAMES } from '../paths.mjs';

let names;
const known = () => (names ??= existsSync(NAMES) ? JSON.parse(readFileSync(NAMES, 'utf8')) : {});
const entryOf = (word) => (Object.hasOwn(known(), word) ? known()[word] : undefined);

const linkTo = ({ page, hash }, from) =>
  `${posix.relative(posix.dirname(from), page)}.html${hash === undefined ? '' : `#${hash}`}`;

const escapeHtml = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

function linked(word, entry, from) {
  const isOwnPage = `${entry.page}.md` === from && entry.hash === undefined;
  const text = escapeHtml(word);
  return isOwnPage ? text : `<a href="${linkTo(entry, from)}">${text}</a>`;
}

/** Code that is a public name, or on a page of the reference a type that is made of some. */
function withLinks(code, from) {
  const own = entryOf(code);
  if (own !== undefined) return linked(code, own, from);
  if (!from.startsWith('api/')) return escapeHtml(code);
  const parts = code.split(/('[^']*'|\b[A-Z]\w*)/);
  return parts
    .map((part) => {
      const entry = /^[A-Z]/.test(part) ? entryOf(part) : undefined;
      return entry === undefined ? escapeHtml(part) : linked(part, entry, from);
    })
    .join('');
}

/** Marks code that lies in a heading or in a link, where no link may be. */
function markPlain({ tokens }) {
  tokens.forEach(({ type, children }, at) => {
    if (type !== 'inline') return;
    const isHeading = tokens[at - 1]?.type === 'heading_open';
    let depth = 0;
    for (const child of children) {
      if (child.type === 'link_open') depth += 1;
      if (child.type === 'link_close') depth -= 1;
      if (child.type === 'code_inline' && (isHeading || depth > 0)) child.meta = { isPlain: true };
    }
  });
}

/** Teaches a Markdown renderer to link names. */
export function linkNames(markdown) {
  markdown.core.ruler.push('mark_plain_code', markPlain);
  markdown.renderer.rules.code_inline = (tokens, index, _options, env, renderer) => {
    const { content, meta } = tokens[index];
    const from = env.relativePath ?? '';
    const isPlain = meta?.isPlain === true || from === '';
    const text = isPlain ? escapeHtml(content) : withLinks(content, from);
    return `<code v-pre${renderer.renderAttrs(tokens[index])}>${text}</code>`;
  };
}
