import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// These tests open the built documentation site in a real browser: `npm run docs` comes first.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/built-site/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 600_000,
    hookTimeout: 240_000,
  },
});
