import { stringDepths, type StringDepthsOptions } from 'settline/string-line';
import { entry, shownResult, type Block } from '../block/block.js';
import { drawLayers } from '../block/draw-layers.js';
import { inTurn } from '../block/in-turn.js';
import { LAYERS, layersField, layersOf, standInLayers } from '../block/layers.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Depths below a string',
  calls: ['buildUp', 'stringDepths'],
  fields: [
    entry('stringHeight', 'String above finished grade'),
    layersField,
    entry('removedSurface', 'Old paving to strip', { isOptional: true, hint: 'empty: none' }),
    {
      kind: 'rows',
      path: ['stakes'],
      label: 'Stakes along the string',
      one: 'stake',
      columns: [
        entry('id', 'stake'),
        entry('station', 'station', { hint: 'distance along the string' }),
        entry('ground', 'string to ground', { isOptional: true, hint: 'measured straight down' }),
      ],
      fresh: (index) => ({ id: `S${index + 1}`, station: `${index * 10} ft` }),
    },
  ],
  options: {
    stringHeight: '15 in',
    layers: LAYERS,
    stakes: [
      { id: 'S1', station: '0 ft', ground: '17 1/2 in' },
      { id: 'S2', station: '10 ft', ground: '16 3/4 in' },
      { id: 'S3', station: '20 ft', ground: '18 in' },
    ],
  },
  run: ({ layers, ...rest }) =>
    inTurn(
      () => layersOf(layers),
      standInLayers,
      (buildUp) => {
        const depths = stringDepths({ ...rest, buildUp } as unknown as StringDepthsOptions);
        const dug = depths.stakes
          .filter(({ dig }) => dig !== null)
          .map(({ id, dig }) => `${id} ${dig === null ? '' : both(dig)}`);
        const digs = dug.length === 0 ? '' : ` Depth of dig: ${dug.join(', ')}.`;
        return shownResult(
          depths,
          `The subgrade is ${both(depths.subgrade)} below the string.${digs}`,
          (width) => drawLayers({ buildUp, stringHeight: depths.stringHeight }, width),
        );
      },
    ),
};
