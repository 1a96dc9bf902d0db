import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { compileFunction } from 'node:vm';
import ts from 'typescript';
import { indexFiles, src } from '../house/source-files.js';
import { job } from '../cedar-court.js';

/** A call of a public function as its own example makes it. */
export interface RecordedCall {
  readonly name: string;
  readonly call: (...given: readonly unknown[]) => unknown;
  readonly given: readonly unknown[];
}

type Public = Readonly<Record<string, unknown>>;

/** Runs the example of every public function and keeps the calls that it makes of that function. */
export async function recordedCalls(): Promise<{
  readonly calls: readonly RecordedCall[];
  readonly silent: readonly string[];
}> {
  const modules = await Promise.all(
    indexFiles.map(async (index) => ({ index, own: (await import(join(src, index))) as Public })),
  );
  const scope: Record<string, unknown> = { job };
  for (const { own } of modules) Object.assign(scope, own);
  Object.assign(scope, (await import(join(src, 'index.ts'))) as Public);
  const calls: RecordedCall[] = [];
  const silent: string[] = [];
  for (const { index } of [{ index: 'index.ts' }, ...modules]) {
    for (const { name, path } of functionsOf(index)) {
      const code = exampleOf(path, name);
      if (code === undefined || typeof scope[name] !== 'function') continue;
      if (calls.some((call) => call.name === name)) continue;
      const made = await callsIn(code, name, scope);
      if (made.length === 0) silent.push(name);
      calls.push(...made);
    }
  }
  return { calls, silent };
}

async function callsIn(code: string, name: string, scope: Public): Promise<RecordedCall[]> {
  const call = scope[name] as RecordedCall['call'];
  const made: RecordedCall[] = [];
  const spied = (...given: readonly unknown[]) => {
    made.push({ name, call, given });
    return call(...given);
  };
  const names = Object.keys(scope).filter((one) => one !== 'default');
  const values = names.map((one) => (one === name ? spied : scope[one]));
  const { outputText } = ts.transpileModule(code, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
  });
  const body = outputText.replace(/^import .*$/gm, '').replace(/^export \{\};$/gm, '');
  // a block of its own: an example may use a name of the library for a value
  const run = compileFunction(`return (async () => { ${body} })();`, names) as (
    ...given: unknown[]
  ) => Promise<void>;
  await run(...values);
  return made;
}

function functionsOf(index: string): { readonly name: string; readonly path: string }[] {
  const file = parsed(join(src, index));
  return file.statements.flatMap((statement) => {
    const clause = ts.isExportDeclaration(statement) ? statement.exportClause : undefined;
    if (clause === undefined || !ts.isNamedExports(clause)) return [];
    const { moduleSpecifier, isTypeOnly } = statement as ts.ExportDeclaration;
    if (isTypeOnly) return [];
    const from = (moduleSpecifier as ts.StringLiteral).text.replace(/\.js$/, '.ts');
    return clause.elements
      .filter((element) => !element.isTypeOnly)
      .map((element) => ({ name: element.name.text, path: join(src, dirname(index), from) }));
  });
}

const parsed = (path: string): ts.SourceFile =>
  ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);

/** The example in the doc comment of a function. */
function exampleOf(path: string, name: string): string | undefined {
  for (const statement of parsed(path).statements) {
    if (!ts.isFunctionDeclaration(statement) || statement.name?.text !== name) continue;
    const tag = ts.getJSDocTags(statement).find((one) => one.tagName.text === 'example');
    if (tag !== undefined) return ts.getTextOfJSDocComment(tag.comment);
  }
  return undefined;
}
