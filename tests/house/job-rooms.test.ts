import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
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

/** The room of a path in the job; undefined beside the rooms. */
const roomOf = (path: string): string | undefined => {
  const parts = relative(job, path).split(sep);
  return parts.length > 1 && parts[0] !== '..' ? parts[0] : undefined;
};

/** What a file imports of the job. */
function importedRooms(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  return [...text.matchAll(/from '(\.[^']+)'/g)].flatMap(([, to = '']) => {
    const room = roomOf(join(dirname(path), to));
    return room === undefined ? [] : [room];
  });
}

test('every folder of the job is one of its rooms', () => {
  const folders = readdirSync(job, { withFileTypes: true }).filter((one) => one.isDirectory());
  expect(folders.map(({ name }) => name).sort()).toEqual([...ROOMS].sort());
});

describe('the rooms of the job import earlier rooms only', () => {
  test.each(ROOMS)('%s', (room) => {
    const files = readdirSync(join(job, room), { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.ts'),
    );
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      for (const other of importedRooms(join(job, room, file))) {
        if (other === room) continue;
        expect(ROOMS.indexOf(other), `${file} imports ${other}`).toBeGreaterThanOrEqual(0);
        expect(ROOMS.indexOf(other), `${file} imports ${other}`).toBeLessThan(ROOMS.indexOf(room));
      }
    }
  });
});

test.each(['mark.ts', 'require-plan.ts'])(
  '%s, which all rooms use, knows the plan alone',
  (file) => {
    for (const room of importedRooms(join(job, file))) expect(room).toBe('plan');
  },
);
