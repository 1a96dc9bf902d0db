import { attempt } from 'settline/errors';
import { widenOutline, type WidenOutlineOptions } from 'settline/outline';
import { entry, shownResult, type Block } from '../block/block.js';
import { drawOutlines } from '../block/draw-outlines.js';
import { cornersField, unitField } from '../block/outline-fields.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Dig line outside the paving',
  calls: ['widenOutline'],
  fields: [
    cornersField('Corners of the paving, in order'),
    unitField,
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
