import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

// tests import the package by its own name; here that name means the sources
const alias = [
  { find: /^settline$/, replacement: `${root}src/index.ts` },
  { find: /^settline\/([a-z-]+)$/, replacement: `${root}src/$1/index.ts` },
];

// These tests see the pages as a reader does: built, served from a sub-path, in Debian's Chromium.
export default defineConfig({
  root,
  resolve: { alias },
  test: {
    include: ['tests/live/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 240_000,
  },
});
