import { attempt } from 'settline/errors';
import { soilPhases } from 'settline/ground';
import { entry, shownResult, type Block } from '../block/block.js';
import { drawingOptions, systemOf } from '../block/drawing-options.js';
import { both } from '../page/both-systems.js';

const percent = (share: number): string => `${(100 * share).toFixed(1)}%`;

export const block: Block = {
  title: 'Solids, water and air',
  calls: ['soilPhases', 'drawSoilPhases'],
  fields: [
    entry('dryDensity', 'Dry density'),
    entry('moisture', 'Moisture', { isNumber: true, hint: 'water over dry mass' }),
    entry('specificGravity', 'Density of the solids over that of water', {
      isNumber: true,
      hint: 'of the laboratory; 2.65 is usual for sand',
    }),
  ],
  options: { dryDensity: '132 lb/ft3', moisture: 0.06, specificGravity: 2.7 },
  run: (options) =>
    attempt(() => {
      const soil = soilPhases(options);
      const { saturation, saturatedMoisture, wetDensity } = soil;
      return shownResult(
        soil,
        `${percent(saturation)} of the voids is water. They are full at a moisture of ${percent(saturatedMoisture)}. In place it weighs ${both(wetDensity)}.`,
        async (width) => {
          const { drawSoilPhases } = await import('settline/drawing');
          return drawSoilPhases(soil, drawingOptions(systemOf(options), width));
        },
      );
    }),
};
