import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { compiledSources } from './compiled-sources.mjs';
import { writeExamples } from './examples.mjs';
import { PublishedReporter } from './published-reporter.js';

await writeExamples();

const root = fileURLToPath(new URL('..', import.meta.url));
const depth = Number(process.env['SETTLINE_DEPTH'] ?? 1);

// tests import the package by its own name; here that name means the sources
const alias = [
  { find: /^settline$/, replacement: `${root}src/index.ts` },
  { find: /^settline\/([a-z-]+)$/, replacement: `${root}src/$1/index.ts` },
];

// coverage and mutants are seen in the sources themselves
const isPlain = process.argv.includes('--coverage') || process.env['SETTLINE_SOURCES'] === 'ts';

export default defineConfig({
  root,
  plugins: isPlain ? [] : [await compiledSources()],
  resolve: { alias },
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', new PublishedReporter()],
    exclude: ['tests/package/**', 'tests/built-site/**', 'tests/live/**'],
    setupFiles: ['tests/fixed-seed.ts'],
    // no test changes what another sees: the sources are loaded once a thread, not once a file
    pool: 'threads',
    isolate: false,
    maxWorkers: 2,
    // properties run thousands of cases: a busy machine takes its time
    testTimeout: 60_000 * depth,
    hookTimeout: 60_000 * depth,
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      reporter: ['text-summary', 'json-summary'],
      thresholds: { statements: 99, branches: 95, functions: 99, lines: 99 },
    },
  },
});
