// What a bundler needs to put the elements of docs/.vitepress/live into pages: the library under its
// own name is the sources, droppable where a page does not use them, and workers are ES modules.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { withPureConstants } from '../pure-modules.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

const alias = [
  { find: /^settline$/, replacement: `${root}src/index.ts` },
  { find: /^settline\/([a-z-]+)$/, replacement: `${root}src/$1/index.ts` },
];

/** The plugin of pure-modules.mjs for Vite: a page keeps of the sources only what it uses. */
const pureSources = () => ({
  name: 'pure sources',
  enforce: 'pre',
  load(id) {
    if (!id.startsWith(`${root}src/`) || !id.endsWith('.ts')) return null;
    return { code: withPureConstants(id, readFileSync(id, 'utf8')), moduleSideEffects: false };
  },
});

/**
 * Settings of Vite for pages with the elements in them.
 *
 * @type {import('vite').UserConfig}
 */
export const livePages = {
  resolve: { alias },
  plugins: [pureSources()],
  worker: { format: 'es', plugins: () => [pureSources()] },
  build: { target: 'es2022' },
};
