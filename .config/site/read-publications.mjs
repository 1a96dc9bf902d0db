// The publications that only a check cites, from the TypeScript file of the tests.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { ROOT } from './paths.mjs';

/** Title, status and address of each, by id. */
export function readPublications() {
  const path = join(ROOT, 'tests', 'published', 'publications.ts');
  const options = { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 };
  const { outputText } = ts.transpileModule(readFileSync(path, 'utf8'), {
    compilerOptions: options,
  });
  const module = { exports: {} };
  new Function('exports', outputText)(module.exports);
  return module.exports.PUBLICATIONS;
}
