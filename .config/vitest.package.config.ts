import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// These tests see the package as a stranger does: packed, and installed in fresh projects.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/package/**/*.test.ts'],
    globalSetup: ['tests/package/pack.ts'],
    fileParallelism: false,
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});
