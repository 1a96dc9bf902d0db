import { minimumBuildUp, type MinimumBuildUpOptions } from 'settline/build-up';
import { attempt } from 'settline/errors';
import { shownResult, type Block } from '../block/block.js';
import { drawLayers } from '../block/draw-layers.js';
import { layersOf } from '../block/layers.js';
import { both } from '../page/both-systems.js';
import type { Length } from 'settline/units';

const thick = (name: string, thickness: Length) => ({ name, thickness: thickness.toJSON() });

export const block: Block = {
  title: 'Minimum layers',
  calls: ['minimumBuildUp'],
  fields: [
    {
      kind: 'choice',
      path: ['use'],
      label: 'Traffic',
      choices: [
        ['pedestrian', 'people on foot'],
        ['residential-driveway', 'driveway of a house'],
        ['parking-or-residential-street', 'parking, or a residential street'],
      ],
    },
    {
      kind: 'choice',
      path: ['subgrade'],
      label: 'Soil below',
      choices: [
        ['well-drained', 'well drained'],
        ['clay', 'clay'],
        ['wet-or-weak', 'wet or weak'],
      ],
    },
    { kind: 'flag', path: ['frost'], label: 'Frost reaches below the base' },
  ],
  options: { use: 'residential-driveway', subgrade: 'well-drained', frost: false },
  run: (options) =>
    attempt(() => {
      const least = minimumBuildUp(options as unknown as MinimumBuildUpOptions);
      const { paver, bedding, base } = least;
      return shownResult(
        least,
        `At least ${both(paver)} of paver, ${both(bedding)} of bedding and ${both(base)} of compacted base.`,
        (width) => {
          const layers = [thick('paver', paver), thick('bedding', bedding), thick('base', base)];
          return drawLayers({ buildUp: layersOf(layers) }, width);
        },
      );
    }),
};
