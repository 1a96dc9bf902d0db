// Doc comments as Markdown.

const PARTS = {
  text: ({ text }) =>
    text.replaceAll('<', '&lt;').replaceAll('{{', '&#123;&#123;').replaceAll(/\n +/g, '\n'),
  code: ({ text }) => text,
  'inline-tag': ({ text }) => `\`${text.trim()}\``,
  'relative-link': ({ text }) => text,
};

/** Parts of a comment as Markdown. */
export function partsText(parts = []) {
  return parts
    .map((part) => PARTS[part.kind](part))
    .join('')
    .trim();
}

/** The text in front of the tags. */
export const summaryOf = (comment) => partsText(comment?.summary);

/** The first sentence, for lists. */
export function firstSentence(comment) {
  const [paragraph = ''] = summaryOf(comment).split('\n\n');
  const line = paragraph.replaceAll(/\s*\n\s*/g, ' ');
  const [found = line] = /^.*?[.:](?=\s|$)/.exec(line) ?? [];
  return found.replace(/:$/, '.');
}

/** The texts of every tag of a name. */
export const tagTexts = (comment, name) =>
  (comment?.blockTags ?? [])
    .filter(({ tag }) => tag === name)
    .map(({ content }) => partsText(content));

/** Text for a cell of a table. */
export const cell = (text) => text.replaceAll(/\s*\n\s*/g, ' ').replaceAll('|', '\\|');

/** Text without marks, for the description of a page. */
export const plain = (text) =>
  text
    .replaceAll(/[`*]/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&#123;', '{')
    .replaceAll(/\s+/g, ' ');
