import { planJob } from 'settline/job';
import { expect, test } from 'vitest';
import { heronYardFile } from '../heron-yard.js';

const drive = (taperedBase: boolean) => {
  const file = heronYardFile();
  const layers = [
    { kind: 'paver', thickness: '80 mm', material: 'drive' },
    { kind: 'bedding', thickness: '20 mm', material: 'grit' },
    { kind: 'base', thickness: '100 mm', material: 'base' },
    { kind: 'sub-base', thickness: '200 mm', material: 'sub-base' },
  ];
  const outline = {
    unit: 'm',
    points: [
      [0, 0],
      [10, 0],
      [10, 4],
      [0, 4],
    ],
  };
  const edges = ['restraint', 'restraint', 'open', 'restraint'];
  const [first] = file.pavements;
  const pavement = {
    id: 'drive',
    use: first?.use,
    subgrade: first?.subgrade,
    layers,
    outline,
    edges,
    ...(taperedBase ? { taperedBase } : {}),
  };
  return planJob({
    ...file,
    existingLevels: undefined,
    oldPaving: [],
    stakes: file.stakes.filter(({ id }) => String(id).startsWith('W')),
    edgeRestraintWidth: '100 mm',
    pavements: [pavement],
    stringLines: [{ id: 'west', pavement: 'drive', stakes: ['W1', 'W2', 'W3'] }],
  } as never);
};

const cubic = (plan: ReturnType<typeof drive>) =>
  plan.pavements[0]?.stones.map(({ order }) => order.compacted.volume.to('m3').toString());

test('stone beyond the restraint is counted at full thickness, or tapered where the job says so', () => {
  // 300 mm of stone: the base goes 100 + 300 mm past the one open edge of 10 m, 10 x 4.4 = 44 m2
  expect(drive(false).pavements[0]?.edges[2]?.base.to('mm').toString()).toBe('400');
  expect(cubic(drive(false))).toEqual(['4.4', '8.8']);
  // tapered: 400 mm out at the foot, 300 mm at 100 mm up ..., 200 mm at 200 mm, 100 mm at the top
  // base, top 100 mm: 10 x 0.1 x (4.2 + 4.1) / 2 = 4.15; sub-base: 10 x 0.2 x (4.4 + 4.2) / 2 = 8.6
  expect(cubic(drive(true))).toEqual(['4.15', '8.6']);
});
