import { expect, test } from 'vitest';
import { planJob, type JobInput } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';

/** A level site of 27 ft by 27 ft, dug 1 ft deep, with nothing beyond its edges. */
function squareDig(east: number, north: number): JobInput {
  const { pavements, stringLines, oldPaving, ...job } = cedarCourtJob();
  expect(oldPaving).toHaveLength(1);
  const [court] = pavements;
  const [line] = stringLines;
  if (court === undefined || line === undefined) expect.unreachable();
  const corners = [
    [east, north],
    [east + 27, north],
    [east + 27, north + 27],
    [east, north + 27],
  ] as const;
  const points = corners.map(([x, y]) => [x, y, 100] as const);
  const stakes = corners.map(([x, y], k) => ({
    id: `S${k}`,
    x: `${x} ft`,
    y: `${y} ft`,
    finish: '100 ft',
  }));
  return {
    ...job,
    existingLevels: { unit: 'ft', points },
    pavements: [
      {
        ...court,
        layers: [
          { kind: 'paver', thickness: '3 in', material: 'paver' },
          { kind: 'bedding', thickness: '1 in', material: 'sand' },
          { kind: 'base', thickness: '8 in', material: 'stone' },
        ],
        outline: { unit: 'ft', points: corners },
        edges: ['restraint', 'restraint', 'restraint', 'restraint'],
      },
    ],
    stakes,
    stringLines: [{ ...line, pavement: court.id, stakes: stakes.map(({ id }) => id) }],
    truck: { boxVolume: '27 yd3', payload: '1000 t' },
    soil: { ...job.soil, loosePerBank: 1 },
  };
}

test.each([
  [0, 0],
  [500_000, 4_500_000],
])('a dig of exactly 27 yd3 is one load of 27 yd3, at %s, %s ft', (east, north) => {
  const plan = planJob(squareDig(east, north));
  expect(plan.pavements[0]?.earth.cut.to('yd3').toString()).toBe('27');
  expect(plan.totals.spoil?.loads.count).toBe(1);
});
