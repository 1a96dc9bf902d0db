import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const isDeep = process.env['SETTLINE_DEPTH'] !== undefined;

// These tests see the package as a stranger does: packed, and installed in fresh projects.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/package/**/*.test.ts'],
    // what takes minutes runs before a release and once a week
    exclude: isDeep ? [] : ['tests/package/deep/**'],
    globalSetup: ['tests/package/pack.ts'],
    fileParallelism: false,
    testTimeout: isDeep ? 900_000 : 240_000,
    hookTimeout: 240_000,
  },
});
