import { join } from 'node:path';
import ts from 'typescript';

/**
 * Makes a test whether the compiler refuses a source with another text: `npm test` would stop there
 * before it runs a test.
 */
export function makeCompiler(root) {
  const file = join(root, 'tsconfig.json');
  const { options, fileNames } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(file, ts.sys.readFile).config,
    ts.sys,
    root,
  );
  const changed = new Map();
  let version = 0;
  const service = ts.createLanguageService({
    getCompilationSettings: () => ({ ...options, noEmit: true }),
    getScriptFileNames: () => fileNames,
    getScriptVersion: (name) => String(changed.get(name)?.version ?? 0),
    getScriptSnapshot: (name) => {
      const text = changed.get(name)?.text ?? ts.sys.readFile(name);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => root,
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: ts.sys.fileExists,
    readFile: ts.sys.readFile,
    readDirectory: ts.sys.readDirectory,
    directoryExists: ts.sys.directoryExists,
    getDirectories: ts.sys.getDirectories,
  });
  return (name, text) => {
    const path = join(root, name);
    version += 1;
    changed.set(path, { text, version });
    const faults = [
      ...service.getSyntacticDiagnostics(path),
      ...service.getSemanticDiagnostics(path),
    ];
    version += 1;
    changed.set(path, { text: ts.sys.readFile(path), version });
    return faults.length > 0;
  };
}
