// The resolver of Metro, the bundler of React Native, over the packed package: every subpath, and every
// file and package that the files import from there on.
import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, sep } from 'node:path';
import { expect, inject, test } from 'vitest';

interface Resolver {
  readonly resolve: (
    context: object,
    name: string,
    platform: string,
  ) => { readonly type: string; readonly filePath?: string };
}

const consumer = inject('consumer');
const installed = join(consumer, 'node_modules', 'settline');
const { resolve } = createRequire(import.meta.url)('metro-resolver') as Resolver;

/** What Metro's own settings hand to its resolver, with the files of this machine. */
function contextOf(originModulePath: string, isESMImport: boolean): object {
  return {
    originModulePath,
    isESMImport,
    allowHaste: false,
    assetExts: new Set(['png']),
    customResolverOptions: {},
    dev: false,
    disableHierarchicalLookup: false,
    extraNodeModules: null,
    nodeModulesPaths: [],
    preferNativePlatform: true,
    mainFields: ['react-native', 'browser', 'main'],
    sourceExts: ['js', 'jsx', 'json', 'ts', 'tsx'],
    unstable_conditionNames: ['react-native'],
    unstable_conditionsByPlatform: {},
    unstable_enablePackageExports: true,
    unstable_incrementalResolution: false,
    unstable_logWarning: (message: string) => {
      throw new Error(message);
    },
    doesFileExist: (path: string) => existsSync(path) && statSync(path).isFile(),
    fileSystemLookup: (path: string) =>
      existsSync(path)
        ? { exists: true, type: statSync(path).isFile() ? 'f' : 'd', realPath: realpathSync(path) }
        : { exists: false },
    getPackage: (path: string): unknown =>
      existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null,
    getPackageForModule: packageOf,
    redirectModulePath: (path: string) => path,
    resolveAsset: () => null,
    resolveHasteModule: () => null,
    resolveHastePackage: () => null,
    resolveRequest: null,
  };
}

/** The package a file or a folder lies in: the nearest package.json, its own or above it. */
function packageOf(path: string): object | null {
  for (let folder = path; dirname(folder) !== folder; folder = dirname(folder)) {
    const file = join(folder, 'package.json');
    if (!existsSync(file)) continue;
    const packageJson: unknown = JSON.parse(readFileSync(file, 'utf8'));
    return {
      packageJson,
      rootPath: folder,
      packageRelativePath: path.slice(folder.length + sep.length),
    };
  }
  return null;
}

const FROM = {
  import: /^(?:(?:import|export|\})[^'"\n]* from |import )['"]([^'"\n]+)['"];$/gm,
  require: /\brequire\(['"]([^'"\n]+)['"]\)/g,
};

/** All files that an app loads for a subpath, found by the resolver alone. */
function filesOf(name: string, kind: 'import' | 'require'): ReadonlySet<string> {
  const found = new Set<string>();
  const follow = (specifier: string, origin: string) => {
    const { type, filePath = '' } = resolve(contextOf(origin, kind === 'import'), specifier, 'ios');
    expect(type, `${specifier} from ${origin}`).toBe('sourceFile');
    if (found.has(filePath)) return;
    found.add(filePath);
    // what a dependency imports is its own affair
    if (!filePath.startsWith(installed + sep)) return;
    for (const [, next = ''] of readFileSync(filePath, 'utf8').matchAll(FROM[kind]))
      follow(next, filePath);
  };
  follow(name, join(consumer, 'app.js'));
  return found;
}

const { exports } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as {
  readonly exports: Readonly<Record<string, unknown>>;
};
/** Worker threads are for Node: no app on a phone imports them. */
const subpaths = Object.keys(exports).filter(
  (name) => !name.includes('.json') && name !== './node-threads',
);

test.each(['import', 'require'] as const)('Metro finds every file of each %s', (kind) => {
  expect(subpaths.length).toBeGreaterThan(20);
  const folder = join(installed, 'dist', kind === 'import' ? '' : 'cjs');
  for (const subpath of subpaths) {
    const [entry = '', ...files] = filesOf(join('settline', subpath), kind);
    expect(entry).toBe(join(folder, subpath, kind === 'import' ? 'index.js' : 'index.cjs'));
    for (const file of files) expect(file).toMatch(/\.(?:js|cjs|mjs)$/);
  }
  const all = [...filesOf('settline', kind)];
  expect(all.length).toBeGreaterThan(20);
  expect(all.filter((file) => file.includes('decimal.js')).length).toBe(1);
});
