import { attempt } from 'settline/errors';
import { rootZone, type RootZoneOptions } from 'settline/site';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

const PERCENT = 100;

export const block: Block = {
  title: 'Root zone of a tree',
  calls: ['rootZone'],
  fields: [
    entry('trunkDiameter', 'Diameter of the trunk'),
    entry(['rule', 'radiusPerDiameter'], 'Radius of the zone over trunk diameter', {
      isNumber: true,
      hint: 'from the authority; there is no default',
    }),
    entry(['dig', 'near'], 'Middle of the trunk to the dig'),
  ],
  options: {
    trunkDiameter: '14 in',
    rule: { radiusPerDiameter: 12 },
    dig: { near: '9 ft' },
  },
  run: (options) =>
    attempt(() => {
      const zone = rootZone(options as unknown as RootZoneOptions);
      const cut =
        zone.cut === null ? '' : ` The dig cuts ${(zone.cut.share * PERCENT).toFixed(1)}% of it.`;
      return shownResult(zone, `The root zone reaches ${both(zone.radius)} from the trunk.${cut}`);
    }),
};
