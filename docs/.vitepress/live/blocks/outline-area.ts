import { outlineArea, widenOutline, type OutlineAreaOptions } from 'settline/outline';
import { attempt } from 'settline/errors';
import { shownResult, type Block } from '../block/block.js';
import { drawOutlines } from '../block/draw-outlines.js';
import { cornersField, unitField } from '../block/outline-fields.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Area of an outline',
  calls: ['outlineArea'],
  fields: [cornersField('Corners of the paving, in order'), unitField],
  options: {
    outline: {
      unit: 'ft',
      points: [
        [0, 0],
        [36, 0],
        [36, 14],
        [20, 14],
        [20, 22],
        [0, 22],
      ],
    },
  },
  run: (options) =>
    attempt(() => {
      const given = options as unknown as OutlineAreaOptions;
      const area = outlineArea(given);
      const { outline } = widenOutline({ outline: given.outline, by: '0 m' });
      return shownResult(
        area,
        `The area is ${both(area.area)}, the perimeter ${both(area.perimeter)}.`,
        (width) => drawOutlines([outline], width),
      );
    }),
};
