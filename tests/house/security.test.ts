// What comes with the package: licences, scripts that run at an install, and what the lockfile pins.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { BUILT_IN } from '../../.config/built-in.mjs';

const root = join(import.meta.dirname, '..', '..');
const json = (...path: readonly string[]) =>
  JSON.parse(readFileSync(join(root, ...path), 'utf8')) as unknown;

interface Manifest {
  readonly license?: string;
  readonly scripts?: Readonly<Record<string, string>>;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}
interface Locked extends Manifest {
  readonly version?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

const manifest = json('package.json') as Manifest;
const lock = json('package-lock.json') as {
  readonly lockfileVersion: number;
  readonly packages: Readonly<Record<string, Locked>>;
};
const { '': own, ...locked } = lock.packages;
const installed = Object.keys(manifest.dependencies ?? {});
const builtIn = BUILT_IN as readonly string[];
const runtime = [...new Set([...installed, ...builtIn])].sort();

/** Licences that ask for their notice and for nothing else. */
const PERMISSIVE = new Set(['MIT', 'ISC', 'BSL-1.0', 'Unlicense', '0BSD']);
const AT_INSTALL = ['preinstall', 'install', 'postinstall', 'prepare', 'prepublish'];

describe('what a user runs', () => {
  test('there is something', () => {
    expect(installed.length).toBeGreaterThan(2);
    expect(builtIn.length).toBeGreaterThan(2);
  });

  test.each(runtime)('%s: a permissive licence, and no script at its install', (name) => {
    const { license, scripts } = json('node_modules', name, 'package.json') as Manifest;
    expect(PERMISSIVE).toContain(license);
    expect(
      ['preinstall', 'install', 'postinstall'].filter((one) => scripts?.[one] !== undefined),
    ).toEqual([]);
    expect(locked[`node_modules/${name}`]?.hasInstallScript).toBeUndefined();
  });

  test('the package itself runs nothing at its install', () => {
    expect(AT_INSTALL.filter((one) => manifest.scripts?.[one] !== undefined)).toEqual([]);
  });

  test('no package comes along that nobody looked at', () => {
    const users = Object.entries(locked).filter(
      ([, { dev, devOptional }]) => dev !== true && devOptional !== true,
    );
    expect(users.map(([path]) => path.replace('node_modules/', '')).sort()).toEqual(
      runtime.filter((name) => installed.includes(name)),
    );
  });
});

describe('the lockfile', () => {
  test('is of the manifest', () => {
    expect(lock.lockfileVersion).toBe(3);
    for (const kind of ['dependencies', 'devDependencies', 'peerDependencies'] as const) {
      expect(own?.[kind]).toEqual(manifest[kind]);
    }
  });

  test('has the hash of every package, and none from elsewhere than the registry', () => {
    const odd = Object.entries(locked).filter(
      ([, { integrity, resolved, link }]) =>
        !/^sha512-[\w+/]{86}==$/.test(integrity ?? '') ||
        link === true ||
        (resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/')),
    );
    expect(odd.map(([path]) => path)).toEqual([]);
    expect(Object.keys(locked).length).toBeGreaterThan(300);
  });
});
