import { expect, test } from 'vitest';
import { planJob, renderJobSheet } from 'settline/job';
import { counted } from '../../src/job/counted.js';
import { slateWharfJob } from '../slate-wharf.js';

test.each([
  ['pallet', 1, '1 pallet'],
  ['pallet', 5, '5 pallets'],
  ['box', 2, '2 boxes'],
  ['batch', 2, '2 batches'],
  ['tray', 2, '2 trays'],
  ['lorry', 3, '3 lorries'],
  ['big bag', 4, '4 big bags'],
  ['bags', 4, '4 bags'],
  ['bag (25 kg)', 4, '4 bag (25 kg)'],
  ['BB', 2, '2 BB'],
] as const)('%s, %i: %s', (name, count, text) => {
  expect(counted(count, name)).toBe(text);
});

test('a surplus that prints as nothing has no line', () => {
  const sheets = (['us', 'metric'] as const).map((system) =>
    renderJobSheet(planJob(slateWharfJob()), { system }),
  );
  for (const sheet of sheets) {
    expect(sheet).not.toMatch(/left over +0(?:\.0+)?(?: |$)/m);
    expect(sheet).toMatch(/left over +\d/);
  }
});
