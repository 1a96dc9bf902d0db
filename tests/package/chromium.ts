import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const CHROMIUM = '/usr/bin/chromium';

/** The browser of this machine, or why there is none. */
export type Browser =
  | { readonly command: string; readonly reason?: undefined }
  | { readonly command?: undefined; readonly reason: string };

/** Finds Debian's Chromium; where it is missing and this is root, installs it. */
export function findChromium(): Browser {
  if (existsSync(CHROMIUM)) return { command: CHROMIUM };
  if (process.getuid?.() !== 0) return { reason: 'no Chromium here, and not root to install it' };
  try {
    const apt = (...args: string[]) =>
      execFileSync('apt-get', ['-qq', '-y', ...args], { stdio: 'pipe', timeout: 180_000 });
    apt('update');
    apt('install', '--no-install-recommends', 'chromium');
  } catch {
    return { reason: 'no Chromium here, and it could not be installed from Debian packages' };
  }
  return existsSync(CHROMIUM) ? { command: CHROMIUM } : { reason: 'Chromium did not install' };
}

/** Opens a page of this disk without a window and returns its document once its script has run. */
export function openPage(command: string, file: string): string {
  const profile = mkdtempSync(join(tmpdir(), 'settline-browser-'));
  try {
    return execFileSync(
      command,
      [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        `--user-data-dir=${profile}`,
        '--dump-dom',
        pathToFileURL(file).href,
      ],
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], timeout: 60_000 },
    );
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
