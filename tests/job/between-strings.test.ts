// Depths below a line from one string to another, row by row.
import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { tryPlanJob } from 'settline/job';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import type { LooseJob } from '../loose-job.js';
import { planFile } from '../plan-file.js';

// A drive of 8 by 5 m between strings 6.4 m apart; layers of 0.4 m.
const site = (spacing: string, change: (job: LooseJob) => unknown = () => undefined): LooseJob => {
  const drive = pavementOn(rectangle(0, 0, 8, 5), {
    id: 'drive',
    betweenStrings: { from: 'south', to: 'north', spacing },
  });
  const job = levelSite([drive], {
    stakes: [
      { id: 'S1', x: '-1 m', y: '-0.7 m' },
      { id: 'S2', x: '9 m', y: '-0.7 m' },
      { id: 'N1', x: '-1 m', y: '5.7 m' },
      { id: 'N2', x: '9 m', y: '5.7 m' },
    ],
    stringLines: [
      { id: 'south', pavement: 'drive', stakes: ['S1', 'S2'] },
      { id: 'north', pavement: 'drive', height: '460 mm', stakes: ['N1', 'N2'] },
    ],
  });
  change(job);
  return job;
};
const tableOf = (job: LooseJob) =>
  planFile(job).pavements[0]?.betweenStrings ?? expect.unreachable();
const faultsOf = (job: LooseJob) => {
  const outcome = tryPlanJob(job);
  return outcome.ok
    ? []
    : outcome.errors.map(({ path, code, message }) => `${pathText(path)} ${code}: ${message}`);
};

describe('depths between two strings', () => {
  test('run from the height of one to that of the other', () => {
    const table = tableOf(site('2 m'));
    expect(table.width.to('m').toString()).toBe('6.4');
    // from 300 to 460 mm in 6.4 m, 25 mm a metre; the subgrade 400 mm below
    expect(
      table.rows.map(({ distance, toFinish, toSubgrade }) => [
        distance.to('m').toString(),
        toFinish.to('mm').toString(),
        toSubgrade.to('mm').toString(),
      ]),
    ).toEqual([
      ['0', '300', '700'],
      ['2', '350', '750'],
      ['4', '400', '800'],
      ['6', '450', '850'],
      ['6.4', '460', '860'],
    ]);
  });

  test('end with the other string, once', () => {
    const rows = tableOf(site('3.2 m')).rows.map(({ distance }) => distance.to('m').toString());
    expect(rows).toEqual(['0', '3.2', '6.4']);
    const wide = tableOf(site('20 m')).rows.map(({ distance }) => distance.to('m').toString());
    expect(wide).toEqual(['0', '6.4']);
  });

  test('whichever side the other string stands on, and whichever way it runs', () => {
    const turned = tableOf(
      site('2 m', (job) => {
        for (const line of job.stringLines) line.stakes.reverse();
      }),
    );
    expect(turned).toEqual(tableOf(site('2 m')));
    const [, north] = site('2 m').stringLines;
    expect(north?.stakes).toEqual(['N1', 'N2']);
    expect(tableOf(site('2 m', (job) => job.stringLines[1]?.stakes.reverse()))).toEqual(turned);
  });

  test('strings out of parallel by more than their stakes may be out of line are refused', () => {
    const moved = (y: string) => site('2 m', (job) => Object.assign(job.stakes[3] ?? {}, { y }));
    // 10 mm at each of two stakes
    expect(faultsOf(moved('5.72 m'))).toEqual([]);
    expect(faultsOf(moved('5.7201 m'))).toEqual([
      'pavements[0].betweenStrings.to OUT_OF_RANGE: the strings are not parallel: 6.400 m apart at the first stake of the second string, 6.420 m at its last. Name two parallel strings',
    ]);
    expect(faultsOf(moved('-7.1 m'))[0]).toContain('OUT_OF_RANGE');
  });

  test('up to 200 rows, and the one at the other string', () => {
    // 6.4 m over 200
    expect(tableOf(site('32 mm')).rows).toHaveLength(201);
    expect(faultsOf(site('31.999 mm'))).toEqual([
      'pavements[0].betweenStrings.spacing OUT_OF_RANGE: makes more than 200 rows. Check the digits and the unit',
    ]);
  });

  test('strings that meet are refused', () => {
    const meeting = site('2 m', (job) => Object.assign(job.stakes[2] ?? {}, { y: '-0.7 m' }));
    expect(faultsOf(meeting)).toEqual([
      'pavements[0].betweenStrings.to POINTS_COINCIDE: the two strings meet at the first stake. Name two strings that are apart',
    ]);
  });
});
