import { attempt } from 'settline/errors';
import { siteVolumes, type SiteVolumesOptions } from 'settline/volumes';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

const number = { isNumber: true } as const;

export const block: Block = {
  title: 'Dig from spot levels',
  calls: ['siteVolumes'],
  fields: [
    {
      kind: 'rows',
      path: ['existing', 'points'],
      label: 'Spot levels of the existing ground',
      one: 'spot',
      columns: [entry([0], 'x', number), entry([1], 'y', number), entry([2], 'elevation', number)],
      fresh: () => [12, 0, 100.4],
    },
    {
      kind: 'choice',
      path: ['existing', 'unit'],
      label: 'Unit of the spot levels',
      choices: [
        ['ft', 'feet'],
        ['m', 'metres'],
      ],
    },
    entry(['design', 'z0'], 'Elevation of the subgrade at x 0, y 0'),
    entry(['design', 'gradeX'], 'Grade of the subgrade along x', { hint: 'negative: falls' }),
    entry(['design', 'gradeY'], 'Grade of the subgrade along y'),
  ],
  options: {
    existing: {
      unit: 'ft',
      points: [
        [0, 0, 100.6],
        [24, 0, 100.4],
        [24, 18, 100.1],
        [0, 18, 100.3],
        [12, 9, 100.7],
      ],
    },
    design: { z0: '99 ft', gradeX: '-2%', gradeY: '0%' },
  },
  run: (options) =>
    attempt(() => {
      const site = siteVolumes(options as unknown as SiteVolumesOptions);
      const { cut, fill, deepestCut } = site;
      const deepest = deepestCut === null ? '' : ` The deepest cut is ${both(deepestCut.depth)}.`;
      return shownResult(
        site,
        `Cut ${both(cut.volume)} of bank soil, fill ${both(fill.volume)} compacted.${deepest}`,
      );
    }),
};
