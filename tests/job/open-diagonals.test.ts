import { planJob, renderJobSheet } from 'settline/job';
import { siteVolumes } from 'settline/volumes';
import { expect, test } from 'vitest';
import { heronYardFile } from '../heron-yard.js';

/** Four levels at the corners of a square of 20 m, one of them half a metre up. */
const SQUARE = {
  unit: 'm' as const,
  points: [
    [-4, -3, 52],
    [16, -3, 52],
    [16, 17, 52.5],
    [-4, 17, 52],
  ] as const,
};

test('a plan says how far its earth is open where four levels lie on one circle', () => {
  const plan = planJob({ ...heronYardFile(), existingLevels: SQUARE, oldPaving: [] } as never);
  const [drive] = plan.pavements;
  if (drive === undefined) throw new Error('gone');
  const found = siteVolumes({
    existing: SQUARE,
    // finished grade falls 2.5% to the street; the subgrade is 455 mm below it
    design: { z0: '51.595 m', gradeX: '0%', gradeY: '2.5%' },
    outline: { points: drive.digOutline, arcs: drive.digArcs, holes: drive.digHoles },
  });
  expect(found.diagonalDoubt.toNumber('m3')).toBeGreaterThan(1);
  expect(drive.earth.diagonalDoubt.toNumber('m3')).toBeCloseTo(
    found.diagonalDoubt.toNumber('m3'),
    9,
  );
  const sheet = renderJobSheet(plan, { system: 'metric' });
  expect(sheet).toContain(`more or less by`);
  expect(sheet).toMatch(
    new RegExp(`more or less by +${found.diagonalDoubt.toNumber('m3').toFixed(2)} m3`),
  );
});

test('scattered levels leave nothing open', () => {
  const plan = planJob(heronYardFile() as never);
  expect(plan.pavements.map(({ earth }) => earth.diagonalDoubt.isZero())).toEqual([true, true]);
  expect(renderJobSheet(plan, { system: 'metric' })).not.toContain('more or less by');
});
