import { rodTargets, type RodTargetsOptions } from 'settline/levelling';
import { entry, shownResult, type Block } from '../block/block.js';
import { drawLayers } from '../block/draw-layers.js';
import { inTurn } from '../block/in-turn.js';
import { LAYERS, layersField, layersOf, standInLayers } from '../block/layers.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'What to read on the rod',
  calls: ['buildUp', 'rodTargets'],
  fields: [
    entry(['instrumentHeight', 'benchmark'], 'Elevation of the benchmark'),
    entry(['instrumentHeight', 'back'], 'Backsight on it'),
    entry('finishedGrade', 'Finished grade'),
    layersField,
    entry('rodLength', 'Length of the rod', { isOptional: true, hint: 'empty: not checked' }),
  ],
  options: {
    instrumentHeight: { benchmark: '100 ft', back: '4.25 ft' },
    finishedGrade: '99.60 ft',
    layers: LAYERS,
  },
  run: ({ layers, ...rest }) =>
    inTurn(
      () => layersOf(layers),
      standInLayers,
      (buildUp) => {
        const targets = rodTargets({ ...rest, buildUp } as unknown as RodTargetsOptions);
        const subgrade = targets.at(-1);
        const answer =
          subgrade === undefined ? '' : `On the subgrade the rod reads ${both(subgrade.rod)}.`;
        const shown = shownResult({ targets: [...targets] }, answer, (width) =>
          drawLayers({ buildUp }, width),
        );
        return { ...shown, working: targets.working };
      },
    ),
};
