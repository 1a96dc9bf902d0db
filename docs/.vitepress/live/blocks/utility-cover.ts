import { attempt } from 'settline/errors';
import { utilityCover, type UtilityCoverOptions } from 'settline/site';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Cover over a buried line',
  calls: ['utilityCover'],
  fields: [
    entry('found', 'Depth of the top of the line', { hint: 'measured in a test hole' }),
    entry('dig', 'Depth of the dig there'),
    entry('minimumCover', 'Minimum cover', { hint: 'from the owner of the line; no default' }),
    entry('uncertainty', 'Uncertainty of the depth', { isOptional: true, hint: 'empty: 0' }),
  ],
  options: { found: '22 in', dig: '12 1/4 in', minimumCover: '6 in', uncertainty: '1 in' },
  run: (options) =>
    attempt(() => {
      const line = utilityCover(options as unknown as UtilityCoverOptions);
      const shown = shownResult(line, `${both(line.cover)} of cover is left. ${line.note.us}`);
      return { ...shown, result: { cover: line.cover, verdict: line.verdict, code: line.code } };
    }),
};
