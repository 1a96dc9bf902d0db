import { minimumBuildUp, type MinimumBuildUpOptions } from 'settline/build-up';
import { frostBase, type FrostBaseOptions } from 'settline/ground';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { drawingOptions, systemOf } from '../block/drawing-options.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Base by two rules',
  calls: ['minimumBuildUp', 'frostBase', 'drawMinimumBuildUp'],
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
    entry('frostDepth', 'Depth of frost, in base without end'),
    entry('pavement', 'Pavers and bedding over the base'),
    entry('subgradeMoisture', 'Moisture of the subgrade', {
      isNumber: true,
      hint: 'water over dry mass',
    }),
    entry('baseMoisture', 'Moisture of the base', { isNumber: true }),
  ],
  options: {
    use: 'residential-driveway',
    subgrade: 'clay',
    frost: true,
    frostDepth: '36 in',
    pavement: '4 1/4 in',
    subgradeMoisture: 0.2,
    baseMoisture: 0.05,
  },
  run: ({ use, subgrade, frost: isFrosty = false, ...rule }) =>
    inTurn(
      () => minimumBuildUp({ use, subgrade, frost: isFrosty } as unknown as MinimumBuildUpOptions),
      () => minimumBuildUp({ use: 'residential-driveway', subgrade: 'clay', frost: true }),
      (least) => {
        const frost = frostBase(rule as unknown as FrostBaseOptions);
        const shown = shownResult(
          { minimum: least, frost },
          `At least ${both(least.base)} of base; ${both(least.publishedBase)} of it is the published minimum. A base of ${both(frost.limited)} limits frost in the subgrade, ${both(frost.complete)} keeps it out.`,
          async (width) => {
            const { drawMinimumBuildUp } = await import('settline/drawing');
            return drawMinimumBuildUp(least, { ...drawingOptions(systemOf(rule), width), frost });
          },
        );
        return {
          ...shown,
          working: [...least.working, ...frost.working],
          notes: least.notes,
          cautions: [...least.cautions, ...frost.cautions],
        };
      },
    ),
};
