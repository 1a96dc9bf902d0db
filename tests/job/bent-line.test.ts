// Finished grade of a pavement along a line of levels that bends.
import { describe, expect, test } from 'vitest';
import { tryPlanJob } from 'settline/job';
import { pathText } from 'settline';
import type { LooseJob } from '../loose-job.js';
import { plainCourtAlone } from '../plain-court.js';
import { planFile } from '../plan-file.js';

const level = (x: number, y: number, elevation: string) => ({
  x: `${x} ft`,
  y: `${y} ft`,
  elevation,
});

/** The plain court alone, its finish along a line of levels. */
const courtAlong = (levels: readonly object[]) => {
  const job: LooseJob = plainCourtAlone();
  const [court] = job.pavements;
  if (court === undefined) expect.unreachable();
  court['grade'] = { kind: 'line', levels };
  // its stakes take their finish from the line
  for (const stake of job.stakes) delete stake['finish'];
  return job;
};
const faultsOf = (job: LooseJob) => {
  const tried = tryPlanJob(job);
  return tried.ok ? [] : tried.errors;
};

describe('a line of levels that bends in the paving', () => {
  const bent = [level(0, 7, '100 ft'), level(18, 7, '99.64 ft'), level(18, 60, '98.58 ft')];

  test('stakes on the mitre get one elevation', () => {
    const finishAt = (x: number, y: number) => {
      const job = courtAlong(bent);
      Object.assign(job.stakes[0] ?? {}, { x: `${x} ft`, y: `${y} ft` });
      const stake = planFile(job).stringLines[0]?.stakes[0];
      return stake?.finishElevation?.toNumber('ft');
    };
    // on the mitre, 5 ft inside the bend; planes would miss each other by 2.4 in
    expect(finishAt(13, 12)).toBeCloseTo(99.64, 9);
    expect(finishAt(12.99, 12)).toBeCloseTo(99.64 + (0.36 * 0.01) / 13, 6);
    expect(finishAt(13.01, 12)).toBeCloseTo(99.64, 3);
  });

  test('paving beyond what is left of a leg inside the bend is refused, with the step', () => {
    const tight = [level(0, 0, '100 ft'), level(30, 0, '99.4 ft'), level(30, 4, '99.2 ft')];
    const [first, ...rest] = faultsOf(courtAlong(tight));
    expect(rest).toEqual([]);
    expect(first?.code).toBe('BEND_TOO_TIGHT');
    expect(pathText(first?.path ?? [])).toBe('pavements[0].grade.levels[1]');
    expect(first?.params).toMatchObject({ from: 'level 2', to: 'level 3', step: '0.2 ft' });
    expect(first?.message).toContain('its rise of 0.2 ft becomes a step');
  });

  test('a line that turns straight back is refused at its level', () => {
    const back = [level(0, 7, '100 ft'), level(30, 7, '99.4 ft'), level(10, 7, '99.2 ft')];
    const [first] = faultsOf(courtAlong(back));
    expect(first?.code).toBe('SELF_INTERSECTION');
    expect(pathText(first?.path ?? [])).toBe('pavements[0].grade.levels[1]');
  });
});
