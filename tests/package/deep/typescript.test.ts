// The declarations of the packed package, checked by every line of TypeScript from 5.4 on.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';

const VERSIONS = ['5.4', '5.5', '5.6', '5.7', '5.8', '5.9', '6.0', 'latest'];
const folder = mkdtempSync(join(tmpdir(), 'settline-typescript-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(command: string, args: readonly string[]): string {
  try {
    return execFileSync(command, [...args], { cwd: folder, encoding: 'utf8', stdio: 'pipe' });
  } catch (error) {
    const { stdout, stderr } = error as { stdout: string; stderr: string };
    throw new Error(`${command} ${args.join(' ')}\n${stdout}\n${stderr}`, { cause: error });
  }
}

beforeAll(() => {
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'types', private: true }));
  copyFileSync(join(import.meta.dirname, '..', 'fixtures', 'strict.ts'), join(folder, 'strict.ts'));
  const flags = ['--no-audit', '--no-fund', '--prefer-offline', '--ignore-scripts'];
  run('npm', ['install', ...flags, inject('tarball')]);
}, 300_000);

describe.each(VERSIONS)('TypeScript %s', (version) => {
  beforeAll(() => {
    const flags = ['--no-audit', '--no-fund', '--prefer-offline', '--ignore-scripts', '--no-save'];
    run('npm', ['install', ...flags, inject('tarball'), `typescript@${version}`]);
  }, 300_000);

  test.each([
    ['node16', 'node16'],
    ['esnext', 'bundler'],
  ])('module %s, resolution %s', (module, moduleResolution) => {
    const compilerOptions = {
      module,
      moduleResolution,
      target: 'es2022',
      strict: true,
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
      skipLibCheck: false,
      types: [],
      noEmit: true,
    };
    writeFileSync(
      join(folder, 'tsconfig.json'),
      JSON.stringify({ compilerOptions, files: ['strict.ts'] }),
    );
    const tsc = join(folder, 'node_modules', 'typescript', 'bin', 'tsc');
    if (version !== 'latest')
      expect(run('node', [tsc, '--version'])).toContain(`Version ${version}.`);
    expect(run('node', [tsc, '-p', 'tsconfig.json'])).toBe('');
  });
});
