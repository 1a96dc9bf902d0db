import { attempt } from 'settline/errors';
import { checkStakeLine, type CheckStakeLineOptions } from 'settline/stakes';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

const WIDE = 600;

export const block: Block = {
  title: 'Stakes in one line',
  calls: ['checkStakeLine'],
  fields: [
    {
      kind: 'rows',
      path: ['stakes'],
      label: 'Stakes, in order along the line',
      one: 'stake',
      columns: [
        entry('id', 'stake'),
        entry('x', 'along'),
        entry('y', 'across', { hint: 'plus is left, facing along the line' }),
      ],
      fresh: (index) => ({ id: `P${index + 1}`, x: `${index * 12} ft`, y: '0 in' }),
    },
    entry('tolerance', 'Tolerance', { hint: 'offset that still passes' }),
    {
      kind: 'choice',
      path: ['reference'],
      label: 'Line to check against',
      choices: [
        ['ends', 'hold the first and the last stake'],
        ['best-fit', 'best fit: hold none'],
      ],
    },
  ],
  options: {
    stakes: [
      { id: 'A', x: '0 ft', y: '0 in' },
      { id: 'B', x: '12 ft', y: '1 in' },
      { id: 'C', x: '24 ft', y: '0 in' },
      { id: 'D', x: '36 ft', y: '1/8 in' },
    ],
    tolerance: '1/4 in',
    reference: 'ends',
  },
  run: (options) =>
    attempt(() => {
      const line = checkStakeLine(options as unknown as CheckStakeLineOptions);
      const moves = line.moves.map(
        ({ id, distance, direction }) => `Move ${id} ${both(distance)} ${direction}.`,
      );
      const answer = [line.note, ...moves].join(' ');
      return shownResult(
        { ...line, working: line.working, note: answer },
        answer,
        async (width) => {
          const { drawStakeRow } = await import('settline/drawing');
          return drawStakeRow(line, {
            system: 'us',
            theme: 'screen',
            ...(width < WIDE ? { narrow: true } : {}),
          });
        },
      );
    }),
};
