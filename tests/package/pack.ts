import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    tarball: string;
    consumer: string;
  }
}

const run = (command: string, args: readonly string[], cwd: string) =>
  execFileSync(command, [...args], { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

/** Packs the built package and installs it, with its dependencies, in an empty project. */
export default function setup(project: TestProject): () => void {
  const root = project.config.root;
  const folder = mkdtempSync(join(tmpdir(), 'settline-package-'));
  run('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], root);
  const [name] = readdirSync(folder).filter((file) => file.endsWith('.tgz'));
  if (name === undefined) throw new Error('npm pack made no tarball');
  const tarball = join(folder, name);
  const consumer = join(folder, 'consumer');
  mkdirSync(consumer);
  writeFileSync(
    join(consumer, 'package.json'),
    JSON.stringify({ name: 'consumer', private: true, version: '1.0.0' }),
  );
  run('npm', ['install', '--no-audit', '--no-fund', '--prefer-offline', tarball], consumer);
  cpSync(join(root, 'tests', 'package', 'fixtures'), consumer, { recursive: true });
  cpSync(join(root, 'examples', 'cedar-court.json'), join(consumer, 'cedar-court.json'));
  project.provide('tarball', tarball);
  project.provide('consumer', consumer);
  return () => {
    rmSync(folder, { recursive: true, force: true });
  };
}
