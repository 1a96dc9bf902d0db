// Tables scroll in a region of their own that the keyboard reaches.

/** Teaches a Markdown renderer this. */
export function tables(markdown) {
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
