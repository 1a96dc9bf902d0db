// What the run of the published checks wrote. Old figures and failed checks are refused.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CHECKS, ROOT } from './paths.mjs';
import { hashOfChecks } from './published-inputs.mjs';

const written = () => (existsSync(CHECKS) ? JSON.parse(readFileSync(CHECKS, 'utf8')) : undefined);

/** Runs the published checks where their figures are missing or older than sources or checks. */
export function renewChecks() {
  if (written()?.inputs === hashOfChecks()) return;
  const vitest = join(ROOT, 'node_modules', '.bin', 'vitest');
  const args = ['run', '--config', '.config/vitest.config.ts', 'tests/published'];
  const { status } = spawnSync(vitest, args, { cwd: ROOT, stdio: 'inherit' });
  if (status !== 0) throw new Error('the published checks failed');
}

/** The rows of all published checks. */
export function readChecks() {
  const found = written();
  if (found === undefined) throw new Error('no figures of published checks: run the tests');
  if (found.inputs !== hashOfChecks()) {
    throw new Error(
      'the figures of published checks are older than the sources or the checks: run the tests',
    );
  }
  const failed = found.rows.filter(
    ({ passed, figures }) => !passed || figures.some(({ ok }) => !ok),
  );
  if (failed.length === 0) return found.rows;
  throw new Error(`published checks failed: ${failed.map(({ test }) => test).join('; ')}`);
}
