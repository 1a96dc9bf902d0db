// Tables scroll in a region of their own that the keyboard reaches; error codes can be linked to.

const CODES = 'reference/error-codes.md';

/** Gives the code in the first cell of each row an id. */
function markCodes({ tokens, env }) {
  if (env.relativePath !== CODES) return;
  tokens.forEach(({ type }, at) => {
    const [code] = tokens[at + 2]?.children ?? [];
    if (type !== 'tr_open' || code?.type !== 'code_inline') return;
    code.attrSet('id', code.content.toLowerCase());
  });
}

/** Teaches a Markdown renderer both. */
export function tables(markdown) {
  markdown.core.ruler.push('mark_codes', markCodes);
  const head = (tokens, index) => {
    const words = [];
    for (let at = index; tokens[at].type !== 'thead_close'; at += 1) {
      if (tokens[at].type === 'inline') words.push(tokens[at].content.replaceAll(/[`"<>&{}]/g, ''));
    }
    return words.filter(Boolean).join(', ') || 'figures';
  };
  markdown.renderer.rules.table_open = (tokens, index) =>
    `<div class="scroll" tabindex="0" role="group" aria-label="Table: ${head(tokens, index)}">\n<table>\n`;
  markdown.renderer.rules.table_close = () => '</table>\n</div>\n';
}
