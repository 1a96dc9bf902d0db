import { execFileSync, spawnSync } from 'node:child_process';

const isThere = () => spawnSync('redis-server', ['--version']).status === 0;

/** Why there is no Redis server here; undefined if there is one. Installs it where this is root. */
export function whyNoRedis(): string | undefined {
  if (isThere()) return undefined;
  if (process.getuid?.() !== 0) return 'no redis-server here, and not root to install it';
  try {
    const apt = (...args: string[]) =>
      execFileSync('apt-get', ['-qq', '-y', ...args], { stdio: 'pipe', timeout: 180_000 });
    apt('update');
    apt('install', '--no-install-recommends', 'redis-server');
  } catch {
    return 'no redis-server here, and it could not be installed from Debian packages';
  }
  return isThere() ? undefined : 'redis-server did not install';
}
