// A calculation as npm run new writes it, filled in: it compiles, passes lint, its tests and the rules
// of the house, in a copy of the repository.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..', '..');
const copy = mkdtempSync(join(tmpdir(), 'settline-copy-'));
afterAll(() => rmSync(copy, { recursive: true, force: true }));

const LEFT_OUT = new Set([
  ...['node_modules', 'dist', 'site', 'coverage', '.git'],
  ...[join('docs', 'api'), join('docs', '.vitepress', '.temp'), join('tests', 'generated')],
]);

function run(command: string, args: readonly string[]): string {
  try {
    return execFileSync(command, [...args], { cwd: copy, encoding: 'utf8', stdio: 'pipe' });
  } catch (error) {
    const { stdout, stderr } = error as { stdout: string; stderr: string };
    throw new Error(`${command} ${args.join(' ')}\n${stdout}\n${stderr}`, { cause: error });
  }
}
const bin = (name: string) => join(root, 'node_modules', '.bin', name);

test('a new calculation passes every check once it is filled in', () => {
  cpSync(root, copy, {
    recursive: true,
    filter: (path) => !LEFT_OUT.has(relative(root, path)),
  });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  run('npm', ['run', '--silent', 'new', '--', 'build-up/edge-bench']);
  const source = join('src', 'build-up', 'edge-bench.ts');
  const own = join('tests', 'build-up', 'edge-bench.test.ts');
  const written = readFileSync(join(copy, source), 'utf8');
  expect(written).toContain('TODO: ');
  writeFileSync(join(copy, source), written.replaceAll('TODO: ', ''));
  run('npm', ['run', '--silent', 'exports']);
  expect(readFileSync(join(copy, 'src', 'index.ts'), 'utf8')).toContain('edgeBench');
  const files = [source, own, 'src/build-up/index.ts'];
  run(bin('prettier'), ['--write', '--log-level', 'warn', 'src/build-up/index.ts']);
  run(bin('prettier'), ['--check', ...files]);
  run('npm', ['run', '--silent', 'check:types']);
  run('npm', ['run', '--silent', 'lint:code']);
  const config = ['run', '--config', '.config/vitest.config.ts'];
  expect(run(bin('vitest'), [...config, own, 'tests/house'])).toContain('edge-bench.test.ts');
});
