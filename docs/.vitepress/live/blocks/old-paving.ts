import { attempt } from 'settline/errors';
import { oldPaving, type OldPavingOptions } from 'settline/site';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Old paving to take up',
  calls: ['oldPaving'],
  fields: [
    {
      kind: 'rows',
      path: ['layers'],
      label: 'Layers, from the top down',
      one: 'layer',
      columns: [
        {
          kind: 'choice',
          path: ['material'],
          label: 'material',
          choices: [
            ['asphalt', 'asphalt'],
            ['concrete', 'concrete'],
          ],
        },
        entry('area', 'area'),
        entry('thickness', 'thickness'),
      ],
      fresh: () => ({ material: 'concrete', area: '100 ft2', thickness: '4 in' }),
    },
  ],
  options: {
    layers: [
      { material: 'asphalt', area: '400 ft2', thickness: '3 in' },
      { material: 'concrete', area: '400 ft2', thickness: '5 in' },
    ],
  },
  run: (options) =>
    attempt(() => {
      const old = oldPaving(options as unknown as OldPavingOptions);
      return shownResult(
        old,
        `Haul away ${both(old.mass)}, which fills ${both(old.loose.volume)} when it is broken up.`,
      );
    }),
};
