import { attempt } from 'settline/errors';
import { widenOutline, type WidenOutlineOptions } from 'settline/outline';
import { entry, shownResult, type Block } from '../block/block.js';
import { drawOutlines } from '../block/draw-outlines.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Dig line outside the paving',
  calls: ['widenOutline'],
  fields: [
    {
      kind: 'rows',
      path: ['outline', 'points'],
      label: 'Corners of the paving, in order',
      one: 'corner',
      columns: [entry([0], 'x', { isNumber: true }), entry([1], 'y', { isNumber: true })],
      fresh: () => [0, 0],
    },
    {
      kind: 'choice',
      path: ['outline', 'unit'],
      label: 'Unit of the corners',
      choices: [
        ['ft', 'feet'],
        ['m', 'metres'],
        ['in', 'inches'],
        ['mm', 'millimetres'],
      ],
    },
    entry('by', 'Distance outside every edge'),
    {
      kind: 'choice',
      path: ['corners'],
      label: 'Corners of the dig',
      choices: [
        ['mitred', 'mitred'],
        ['round', 'round'],
      ],
    },
  ],
  options: {
    outline: {
      unit: 'ft',
      points: [
        [0, 0],
        [30, 0],
        [30, 12],
        [18, 12],
        [18, 20],
        [0, 20],
      ],
    },
    by: '8 in',
    corners: 'mitred',
  },
  run: (options) =>
    attempt(() => {
      const given = options as unknown as WidenOutlineOptions;
      const widened = widenOutline(given);
      const paving = widenOutline({ outline: given.outline, by: '0 m' });
      const closed = widened.closesUp ? ' A notch closes up.' : '';
      return shownResult(
        widened,
        `The dig is ${both(widened.area)}, the paving ${both(paving.area)}.${closed}`,
        widened.arcs.length > 0
          ? null
          : (width) => drawOutlines([paving.outline, widened.outline], width),
      );
    }),
};
