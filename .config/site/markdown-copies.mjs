// A Markdown copy beside each page, and llms.txt, which lists them.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { readPages } from './pages.mjs';
import { SITE } from './paths.mjs';

const PARTS = [
  ['Tutorial', 'tutorial/'],
  ['How to', 'how-to/'],
  ['Explanation', 'explanation/'],
  ['Reference', 'reference/'],
  ['Functions and types', 'api/'],
];

/** Scripts, and elements that only a browser can fill, are left out. */
const forReading = (text) =>
  text
    .replaceAll(/\]\(\.\.\/\.\.\/(?=examples\/|job\.schema)/g, '](../')
    .replaceAll(/<script setup>[^]*?<\/script>\n*|<img [^>]*:src=[^>]*>\n*/g, '')
    .replaceAll(/<(settline-[a-z]+|checked-filter)\b[^>]*><\/\1>\n*/g, '')
    .trimStart();

const head = `# settline

> The arithmetic of a small crew that builds segmental paver driveways and walks, as a TypeScript library: exact, traced to its sources, with the working of every number.

Each page of the documentation has a copy in Markdown at the same address, with the ending .md.
`;

export function writeMarkdownCopies() {
  const pages = readPages();
  for (const { path, text } of pages) {
    const target = join(SITE, path);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, forReading(text));
  }
  const lists = PARTS.map(([title, folder]) => {
    const own = pages.filter(({ path }) => path.startsWith(folder));
    const lines = own.map((one) => `- [${one.title}](${one.path}): ${one.description}`);
    return `## ${title}\n\n${lines.join('\n')}`;
  });
  writeFileSync(join(SITE, 'llms.txt'), `${[head, ...lists].join('\n\n')}\n`);
}
