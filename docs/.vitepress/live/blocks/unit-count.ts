import { attempt } from 'settline/errors';
import { unitCount, type UnitCountOptions } from 'settline/materials';
import { entry, shownResult, type Block } from '../block/block.js';

export const block: Block = {
  title: 'Pavers to order',
  calls: ['unitCount'],
  fields: [
    entry('area', 'Area of the field, borders deducted'),
    entry(['unit', 'length'], 'Length of a paver'),
    entry(['unit', 'width'], 'Width of a paver'),
    entry('joint', 'Width of a joint'),
    {
      kind: 'rows',
      path: ['edge'],
      label: 'Edges with cuts',
      one: 'edge',
      columns: [
        entry('length', 'length'),
        entry('angle', 'angle to the courses', { isOptional: true, hint: 'such as 90 deg' }),
      ],
      fresh: () => ({ length: '10 ft' }),
    },
    entry('breakage', 'Breakage, as a share', {
      isNumber: true,
      isOptional: true,
      hint: '0.02 for 2%',
    }),
  ],
  options: {
    area: '640 ft2',
    unit: { length: '8 in', width: '4 in' },
    joint: '3/32 in',
    edge: [{ length: '40 ft' }, { length: '16 ft', angle: '90 deg' }],
    breakage: 0.03,
  },
  run: (options) =>
    attempt(() => {
      const count = unitCount(options as unknown as UnitCountOptions);
      return shownResult(
        count,
        `Order ${count.order} pavers: ${count.whole} whole, ${count.cut} to cut, the rest for breakage.`,
      );
    }),
};
