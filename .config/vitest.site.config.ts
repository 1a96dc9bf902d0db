import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

// tests import the package by its own name; here that name means the sources
const alias = [
  { find: /^settline$/, replacement: `${root}src/index.ts` },
  { find: /^settline\/([a-z-]+)$/, replacement: `${root}src/$1/index.ts` },
];

// These tests open the built documentation site in a real browser: `npm run docs` comes first.
export default defineConfig({
  root,
  resolve: { alias },
  test: {
    include: ['tests/built-site/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 240_000,
  },
});
