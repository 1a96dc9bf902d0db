import { lifts, type LiftsOptions } from 'settline/build-up';
import { attempt } from 'settline/errors';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Lifts of a layer',
  calls: ['lifts'],
  fields: [
    entry('thickness', 'Compacted thickness of the layer'),
    entry('maxLift', 'Thickest lift the machine compacts', { hint: 'compacted' }),
    entry('compactedPerLoose', 'Compacted over loose thickness', {
      isNumber: true,
      hint: '0.5 to 1; measure it on a trial strip',
    }),
  ],
  options: { thickness: '8 in', maxLift: '3 in', compactedPerLoose: 0.8 },
  run: (options) =>
    attempt(() => {
      const layer = lifts(options as unknown as LiftsOptions);
      const { count, loose, compacted } = layer;
      return shownResult(
        layer,
        `${count} ${count === 1 ? 'lift' : 'lifts'}: spread ${both(loose)}, compact to ${both(compacted)}.`,
      );
    }),
};
