// What an editor makes of the installed package: hover, completion and the way to the definition.
import { existsSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterAll, describe, expect, inject, test } from 'vitest';
import ts from 'typescript';

const consumer = inject('consumer');
const installed = join(consumer, 'node_modules', 'settline');
const api = join(import.meta.dirname, '..', 'api');
const FILE = join(consumer, 'in-the-editor.mts');

/** Functions of every folder, with what stands before their options. */
const CALLS = [
  ['build-up', 'buildUp', ''],
  ['build-up', 'lifts', ''],
  ['string-line', 'stringDepths', ''],
  ['string-line', 'stringSag', ''],
  ['stakes', 'checkStakeLine', ''],
  ['stakes', 'threeFourFive', ''],
  ['grading', 'checkSlope', ''],
  ['grading', 'rampRun', ''],
  ['levelling', 'twoPegTest', ''],
  ['outline', 'outlineArea', ''],
  ['outline', 'widenOutline', ''],
  ['volumes', 'loads', ''],
  ['volumes', 'siteVolumes', ''],
  ['materials', 'geotextile', ''],
  ['materials', 'jointSand', ''],
  ['site', 'rootZone', ''],
  ['haul', 'machineTime', ''],
  ['structure', 'structuralNumber', ''],
  ['checks', 'checkFlatness', ''],
  ['job', 'renderJobSheet', '{} as JobPlan, '],
  ['many-jobs', 'planJobs', '[], '],
] as const;

/** A file of the consumer that calls them all, and where the options of each begin. */
function writtenFile() {
  const lines = CALLS.map(([folder, name]) => `import { ${name} } from 'settline/${folder}';`);
  let text = `${lines.join('\n')}\nimport type { JobPlan } from 'settline/job';\n`;
  const places = new Map<string, { readonly call: number; readonly options: number }>();
  for (const [, name, before] of CALLS) {
    const call = text.length;
    text += `${name}(${before}{ `;
    places.set(name, { call, options: text.length });
    text += ' });\n';
  }
  return { text, places };
}

const { text, places } = writtenFile();
const read = (path: string) => (path === FILE ? text : ts.sys.readFile(path));
const service = ts.createLanguageService({
  getScriptFileNames: () => [FILE],
  getScriptVersion: () => '1',
  getScriptSnapshot: (path) => {
    const content = read(path);
    return content === undefined ? undefined : ts.ScriptSnapshot.fromString(content);
  },
  getCurrentDirectory: () => consumer,
  getCompilationSettings: () => ({
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    strict: true,
    types: [],
  }),
  getDefaultLibFileName: (options) => ts.getDefaultLibFilePath(options),
  fileExists: (path) => path === FILE || existsSync(path),
  readFile: read,
  readDirectory: (...given) => ts.sys.readDirectory(...given),
  directoryExists: (path) => ts.sys.directoryExists(path),
  getDirectories: (path) => ts.sys.getDirectories(path),
});
afterAll(() => service.dispose());

const placesOf = (name: string) => places.get(name) ?? { call: -1, options: -1 };
const words = (parts: readonly ts.SymbolDisplayPart[] | undefined) =>
  (parts ?? []).map((part) => part.text).join('');

/** The fields of the options of a function, by the report of the public names. */
function fieldsOf(folder: string, name: string): string[] {
  const options = `${name === 'renderJobSheet' ? 'jobSheet' : name}Options`.replace(/^./, (first) =>
    first.toUpperCase(),
  );
  const report = readFileSync(join(api, `${folder}.txt`), 'utf8');
  const [, body = ''] =
    new RegExp(`interface ${options}[^{]*\\{([\\s\\S]*?)\\n\\}`).exec(report) ?? [];
  return [...body.matchAll(/^ {4}readonly (\w+)/gm)].map(([, field = '']) => field);
}

describe.each(CALLS)('%s: %s', (folder, name) => {
  test('hover says what it does, with an example', () => {
    const info = service.getQuickInfoAtPosition(FILE, placesOf(name).call);
    expect(words(info?.displayParts)).toContain(`${name}(`);
    expect(words(info?.documentation).length).toBeGreaterThan(60);
    const tags = (info?.tags ?? []).map((tag) => tag.name);
    expect(tags).toContain('example');
  });

  test('completion offers every field of the options, each with its text', () => {
    const { options } = placesOf(name);
    const found = service.getCompletionsAtPosition(FILE, options, {})?.entries ?? [];
    const offered = found.filter(({ kind }) => kind === ts.ScriptElementKind.memberVariableElement);
    const names = offered.map((entry) => entry.name);
    const fields = fieldsOf(folder, name);
    expect(fields.length).toBeGreaterThan(0);
    expect(names).toEqual(expect.arrayContaining(fields));
    const bare = names.filter((field) => {
      const details = service.getCompletionEntryDetails(
        FILE,
        options,
        field,
        {},
        undefined,
        {},
        undefined,
      );
      return words(details?.documentation) === '';
    });
    expect(bare).toEqual([]);
  });

  test('the way to the definition ends at a declaration whose map leads to the source', () => {
    const [found] = service.getDefinitionAtPosition(FILE, placesOf(name).call) ?? [];
    const { fileName = '', textSpan } = found ?? {};
    expect(relative(installed, fileName)).toMatch(/^(?:dist|src)\//);
    const declared = readFileSync(fileName, 'utf8');
    expect(declared.slice(textSpan?.start).startsWith(name)).toBe(true);
    const source = fileName.replace('/dist/', '/src/').replace(/(?:\.d)?\.ts$/, '.ts');
    expect(readFileSync(source, 'utf8')).toContain(`export function ${name}(`);
  });
});
