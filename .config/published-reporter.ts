// Writes every figure of the published checks to one file, for the pages of the documentation.
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Reporter, TestCase, TestModule } from 'vitest/node';
import { hashOfChecks } from './site/published-inputs.mjs';
import type { PublishedCheck } from '../tests/published/published.js';

const root = join(import.meta.dirname, '..');
const published = join(root, 'tests', 'published');
const target = join(root, 'node_modules', '.cache', 'settline', 'published-checks.json');

/** A check with the file and the test that it stands in. */
interface Row extends PublishedCheck {
  readonly file: string;
  readonly test: string;
  readonly passed: boolean;
}

/** Keeps what the published checks recorded; a run that leaves some of them out writes nothing. */
export class PublishedReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const ran = modules.filter(({ moduleId }) => dirname(moduleId) === published);
    const files = readdirSync(published).filter((name) => name.endsWith('.test.ts'));
    const tests = ran.flatMap((module) => [...module.children.allTests()]);
    const isWhole =
      ran.length === files.length && tests.every((one) => one.result().state !== 'skipped');
    if (!isWhole) return;
    const rows = tests.flatMap(rowOf);
    rows.sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, `${JSON.stringify({ inputs: hashOfChecks(), rows }, null, 1)}\n`);
  }
}

function rowOf(test: TestCase): Row[] {
  const check = test.meta().published;
  const file = basename(test.module.moduleId);
  if (check === undefined) return [];
  return [{ ...check, file, test: test.fullName, passed: test.ok() }];
}

const keyOf = ({ source, file, test }: Row): string => [source, file, test].join('\n');
