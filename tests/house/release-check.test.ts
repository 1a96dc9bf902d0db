import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const script = join(import.meta.dirname, '..', '..', '.config', 'release-check.mjs');

/** What the check says of a manifest, and how it ends. */
function check(manifest: object): { readonly status: number | null; readonly lines: string[] } {
  const folder = mkdtempSync(join(tmpdir(), 'settline-release-'));
  try {
    const file = join(folder, 'package.json');
    writeFileSync(file, JSON.stringify(manifest));
    const { status, stdout } = spawnSync('node', [script, file], { encoding: 'utf8' });
    return { status, lines: stdout.trimEnd().split('\n') };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const fieldsIn = (lines: readonly string[]) =>
  lines.slice(1).map((line) => line.trim().split(' ')[0]);
const address = 'https://code.invalid/crew/settline';
const WHOLE = {
  repository: { type: 'git', url: `git+${address}` },
  homepage: address,
  bugs: { url: `${address}/faults` },
  author: 'The crew',
};

test('names every field that only the owner can fill in, and fails', () => {
  const { status, lines } = check({ name: 'settline' });
  expect(status).toBe(1);
  expect(lines[0]).toBe('Before a release the owner fills in, in package.json:');
  expect(fieldsIn(lines)).toEqual(['repository', 'homepage', 'bugs', 'author']);
  expect(lines[1]).toContain('"git+https://..."');
});

test('is content when all are there', () => {
  const { status, lines } = check(WHOLE);
  expect(lines).toEqual(['package.json has all that only its owner can fill in.']);
  expect(status).toBe(0);
});

test.each([
  ['repository', ''],
  ['repository', { type: 'git', url: 'settline' }],
  ['homepage', 'https://example.com/settline'],
  ['bugs', {}],
  ['author', ' '],
])('asks for %s in place of %j', (field, value) => {
  const { status, lines } = check({ ...WHOLE, [field]: value });
  expect(status).toBe(1);
  expect(fieldsIn(lines)).toEqual([field]);
});
