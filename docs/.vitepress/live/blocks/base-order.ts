import { attempt } from 'settline/errors';
import { baseOrder, type BaseOrderOptions } from 'settline/volumes';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Stone to order',
  calls: ['baseOrder'],
  fields: [
    entry('area', 'Area of the base, extension included'),
    entry('thickness', 'Compacted thickness'),
    entry('compactedDryDensity', 'Compacted dry density'),
    entry('compactedPerLoose', 'Compacted over loose volume', { isNumber: true, hint: '0.5 to 1' }),
    entry('moisture', 'Moisture, water over dry mass', { isNumber: true, isOptional: true }),
    entry('waste', 'Waste, as a share', { isNumber: true, isOptional: true }),
  ],
  options: {
    area: '640 ft2',
    thickness: '8 in',
    compactedDryDensity: '3650 lb/yd3',
    compactedPerLoose: 0.8,
    moisture: 0.03,
    waste: 0.05,
  },
  run: (options) =>
    attempt(() => {
      const order = baseOrder(options as unknown as BaseOrderOptions);
      const mass =
        order.deliveredMass === null ? '' : `${both(order.deliveredMass)} as delivered, `;
      return shownResult(order, `Order ${mass}${both(order.loose.volume)} loose.`);
    }),
};
