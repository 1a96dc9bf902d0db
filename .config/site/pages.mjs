// The pages of the site as Markdown, with what stands in front of each.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DOCS } from './paths.mjs';

/** One line of the front matter. */
function field(front, name) {
  const [, text = ''] = new RegExp(`^${name}: *(.*)$`, 'm').exec(front) ?? [];
  return text.startsWith('"') ? JSON.parse(text) : text.trim();
}

/** Every page with its path, title, description and text. */
export function readPages() {
  return readdirSync(DOCS, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md') && !name.startsWith('.') && !/^api.parts/.test(name))
    .sort()
    .map((path) => {
      const whole = readFileSync(join(DOCS, path), 'utf8');
      const [, front = '', text = whole] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(whole) ?? [];
      const title = field(front, 'title') || (/^# (.+)$/m.exec(text)?.[1] ?? '');
      return {
        path: path.replaceAll('\\', '/'),
        title,
        description: field(front, 'description'),
        text,
      };
    });
}
