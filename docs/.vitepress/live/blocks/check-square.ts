import { attempt } from 'settline/errors';
import { checkSquare, type CheckSquareOptions } from 'settline/stakes';
import { entry, shownResult, type Block } from '../block/block.js';

export const block: Block = {
  title: 'Four corners square',
  calls: ['checkSquare'],
  fields: [
    entry('length', 'Length'),
    entry('width', 'Width'),
    entry(['diagonals', 0], 'Near left to far right'),
    entry(['diagonals', 1], 'Near right to far left'),
    entry('tolerance', 'Tolerance', { isOptional: true, hint: 'empty: no verdict' }),
  ],
  options: {
    length: '24 ft',
    width: '10 ft',
    diagonals: ['26\' 0 1/2"', '25\' 11 1/2"'],
    tolerance: '1/4 in',
  },
  run: (options) =>
    attempt(() => {
      const check = checkSquare(options as unknown as CheckSquareOptions);
      return shownResult(check, check.note);
    }),
};
