import { attempt } from 'settline/errors';
import { plateTime, type PlateTimeOptions } from 'settline/haul';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

const number = { isNumber: true } as const;

export const block: Block = {
  title: 'Hours with the plate',
  calls: ['plateTime'],
  fields: [
    entry('area', 'Area to compact'),
    entry('plateWidth', 'Width of the plate'),
    entry('overlap', 'Overlap of lanes, as a share', number),
    entry('speed', 'Speed of travel', { hint: 'such as 20 m/min' }),
    entry('passes', 'Passes for each lift', number),
    entry('lifts', 'Lifts', number),
    entry('efficiency', 'Share of the time that it works', {
      isNumber: true,
      hint: '0.75, or 50/60',
    }),
  ],
  options: {
    area: '640 ft2',
    plateWidth: '20 in',
    overlap: 0.1,
    speed: '20 m/min',
    passes: 4,
    lifts: 3,
    efficiency: 0.75,
  },
  run: (options) =>
    attempt(() => {
      const plate = plateTime(options as unknown as PlateTimeOptions);
      return shownResult(
        plate,
        `The plate takes ${both(plate.time)} in all, ${both(plate.perLift)} for each lift.`,
      );
    }),
};
