import { attempt } from 'settline/errors';
import { fitLine } from 'settline/geometry';
import { fromNumber } from 'settline/units';
import { entry, shownResult, type Block } from '../block/block.js';
import { refuseUnknown } from '../block/refuse-unknown.js';
import { both } from '../page/both-systems.js';

const number = { isNumber: true } as const;

export const block: Block = {
  title: 'Line through points, in metres',
  calls: ['fitLine'],
  fields: [
    {
      kind: 'rows',
      path: ['points'],
      label: 'Points, in metres',
      one: 'point',
      columns: [entry([0], 'x', number), entry([1], 'y', number)],
      fresh: (index) => [index * 3, index * 4],
    },
  ],
  options: {
    points: [
      [0, 0],
      [3, 4.004],
      [6, 7.998],
      [9, 12.001],
    ],
  },
  run: ({ points, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const { rms, centroid, direction, residuals } = fitLine(
        points as unknown as readonly (readonly [number, number])[],
      );
      const offsets = Array.from(residuals, (offset) => fromNumber(offset, 'm'));
      const worst = offsets.reduce((most, one) => (one.abs().greaterThan(most) ? one.abs() : most));
      return shownResult(
        { rms: fromNumber(rms, 'm'), centroid, direction, offsets },
        `The points lie within ${both(worst.abs())} of the line.`,
      );
    }),
};
