import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const job = join(import.meta.dirname, '../../src/job');
/** The rooms of the job, in the order in which they build on each other. */
const ROOMS = [
  'schema',
  'read',
  'plan',
  'saved',
  'warnings',
  'check',
  'tables',
  'order',
  'steps',
  'compare',
  'uncertainty',
  'explain',
  'sheet',
];

describe('the rooms of the job import earlier rooms only', () => {
  test.each(ROOMS)('%s', (room) => {
    const files = readdirSync(join(job, room));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const text = readFileSync(join(job, room, file), 'utf8');
      for (const [, other = ''] of text.matchAll(/from '\.\.\/([a-z]+)\//g)) {
        expect(ROOMS.indexOf(other), `${file} imports ${other}`).toBeGreaterThanOrEqual(0);
        expect(ROOMS.indexOf(other), `${file} imports ${other}`).toBeLessThan(ROOMS.indexOf(room));
      }
    }
  });
});

test.each(['mark.ts', 'require-plan.ts'])(
  '%s, which all rooms use, knows the plan alone',
  (file) => {
    const text = readFileSync(join(job, file), 'utf8');
    for (const [, room] of text.matchAll(/from '\.\/([a-z]+)\//g)) expect(room).toBe('plan');
  },
);
