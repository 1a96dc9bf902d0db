import { attempt } from 'settline/errors';
import { berggrenDepth, type BerggrenDepthOptions } from 'settline/ground';
import { entry, shownResult, type Block, type ChoiceField } from '../block/block.js';
import { drawingOptions, systemOf } from '../block/drawing-options.js';
import { both } from '../page/both-systems.js';

const SOILS: ChoiceField['choices'] = [
  ['sandy', 'sand, gravel, stone'],
  ['silt-clay', 'silt or clay'],
];

const layers = [
  { name: 'base', thickness: '300 mm', soil: 'sandy', dryDensity: '2000 kg/m3', moisture: 0.05 },
  { name: 'silt', soil: 'silt-clay', dryDensity: '1600 kg/m3', moisture: 0.2 },
];

export const block: Block = {
  title: 'Depth of frost',
  calls: ['berggrenDepth', 'drawFrostDepth'],
  fields: [
    entry(['airIndex', 'value'], 'Freezing index of the air, in C-days', { isNumber: true }),
    {
      kind: 'choice',
      path: ['surface'],
      label: 'Surface',
      choices: [
        ['concrete', 'concrete'],
        ['asphalt', 'asphalt'],
        ['bare-soil', 'bare ground or stone'],
        ['shaded', 'in the shade'],
        ['snow', 'snow'],
        ['turf', 'turf'],
        ['trees', 'under trees'],
      ],
    },
    entry('seasonDays', 'Length of the freezing season in days', { isNumber: true }),
    entry(['meanAnnual', 'value'], 'Mean temperature of the year, in degrees C', {
      isNumber: true,
    }),
    {
      kind: 'rows',
      path: ['layers'],
      label: 'Layers, from the top down',
      one: 'layer',
      columns: [
        entry('name', 'name'),
        entry('thickness', 'thickness', { isOptional: true, hint: 'last layer: empty' }),
        { kind: 'choice', path: ['soil'], label: 'soil', choices: SOILS },
        entry('dryDensity', 'dry density'),
        entry('moisture', 'moisture', { isNumber: true }),
      ],
      fresh: (index) => ({
        name: `layer ${index + 1}`,
        soil: 'silt-clay',
        dryDensity: '1600 kg/m3',
        moisture: 0.2,
      }),
    },
  ],
  options: {
    airIndex: { value: 450, unit: 'C-days' },
    surface: 'concrete',
    seasonDays: 100,
    meanAnnual: { value: 8, unit: 'C' },
    layers,
  },
  run: (options) =>
    attempt(() => {
      const frost = berggrenDepth(options as unknown as BerggrenDepthOptions);
      const { depth, twoZoneDepth, extrapolated } = frost;
      const ask = extrapolated ? ' Plan with the deeper one, and ask.' : '';
      return shownResult(
        frost,
        `Frost goes ${both(depth)} deep by the closed form, ${both(twoZoneDepth)} by heat in two zones.${ask}`,
        async (width) => {
          const { drawFrostDepth } = await import('settline/drawing');
          return drawFrostDepth(frost, drawingOptions(systemOf(options), width));
        },
      );
    }),
};
