import { compactionMethod, liftWater } from 'settline/ground';
import type { CompactionMethodOptions, LiftWaterOptions } from 'settline/ground';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { both } from '../page/both-systems.js';

const READY = {
  area: '640 ft2',
  thickness: '4 in',
  dryDensity: '132 lb/ft3',
  moisture: 0.03,
  targetMoisture: 0.06,
};

export const block: Block = {
  title: 'Water and passes for a lift',
  calls: ['liftWater', 'compactionMethod'],
  fields: [
    entry('area', 'Area of the lift'),
    entry('thickness', 'Compacted thickness of the lift'),
    entry('dryDensity', 'Dry density once compacted'),
    entry('moisture', 'Moisture now', { isNumber: true, hint: 'water over dry mass' }),
    entry('targetMoisture', 'Moisture to compact at', {
      isNumber: true,
      hint: 'the optimum of the laboratory test',
    }),
    entry('evaporation', 'Share that dries off before the plate is there', {
      isNumber: true,
      isOptional: true,
      hint: '0 to 0.9; empty: none',
    }),
    entry('mass', 'Mass of the plate'),
    entry('plateArea', 'Area of the plate on the ground'),
  ],
  options: { ...READY, mass: '400 kg', plateArea: '0.25 m2' },
  run: ({ mass, plateArea, ...lift }) =>
    inTurn(
      () => liftWater(lift as unknown as LiftWaterOptions),
      () => liftWater(READY),
      (water) => {
        const machine = { plant: 'plate', fill: 'granular', mass, plateArea };
        const method = compactionMethod(machine as unknown as CompactionMethodOptions);
        const { thickestLift, passes } = method;
        const plate =
          thickestLift === null
            ? method.note
            : `The plate compacts lifts of at most ${both(thickestLift)}, with ${passes} passes.`;
        const shown = shownResult({ ...water, plate: method }, `${water.note} ${plate}`);
        return { ...shown, working: [...water.working, ...method.working] };
      },
    ),
};
