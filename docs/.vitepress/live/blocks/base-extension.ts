import { baseExtension, type BaseExtensionOptions } from 'settline/build-up';
import { attempt } from 'settline/errors';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Base past the edge',
  calls: ['baseExtension'],
  fields: [entry('baseThickness', 'Compacted base')],
  options: { baseThickness: '8 in' },
  run: (options) =>
    attempt(() => {
      const base = baseExtension(options as unknown as BaseExtensionOptions);
      const why =
        base.governedBy === 'base-thickness'
          ? 'as far as the base is thick'
          : 'the published minimum';
      return shownResult(
        base,
        `Extend the base ${both(base.extension)} past the edge restraint on open edges: ${why}.`,
      );
    }),
};
