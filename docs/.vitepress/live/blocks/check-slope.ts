import { attempt } from 'settline/errors';
import { checkSlope, type CheckSlopeOptions } from 'settline/grading';
import { entry, shownResult, type Block } from '../block/block.js';

export const block: Block = {
  title: 'Fall against its limits',
  calls: ['checkSlope'],
  fields: [
    entry('fall', 'Fall', { hint: '2%, 1:48, 1/4 in per ft' }),
    entry(['limits', 'minimum'], 'Minimum fall', { isOptional: true }),
    entry(['limits', 'maximum'], 'Maximum fall', { isOptional: true }),
    entry('uncertainty', 'Uncertainty', { isOptional: true, hint: 'empty: 0' }),
  ],
  options: { fall: '1.8%', limits: { minimum: '1.5%', maximum: '5%' }, uncertainty: '0.2%' },
  run: (options) =>
    attempt(() => {
      const slope = checkSlope(options as unknown as CheckSlopeOptions);
      return shownResult(slope, slope.note);
    }),
};
