import { loads, stateVolume, type LoadsOptions } from 'settline/volumes';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Truck loads',
  calls: ['stateVolume', 'loads'],
  fields: [
    entry('volume', 'Loose volume to haul'),
    entry('looseDensity', 'Loose density, water included', { hint: 'such as 2400 lb/yd3' }),
    entry('boxVolume', 'Volume of the box, filled level'),
    entry('payload', 'Legal payload', { hint: 'the truck operator and the law decide it' }),
  ],
  options: {
    volume: '54 yd3',
    looseDensity: '2450 lb/yd3',
    boxVolume: '14 yd3',
    payload: '15 ton-us',
  },
  run: ({ volume, ...rest }) =>
    inTurn(
      () => stateVolume(volume as string, 'loose'),
      () => stateVolume('1 m3', 'loose'),
      (loose) => {
        const hauled = loads({ ...rest, volume: loose } as unknown as LoadsOptions);
        const limit = hauled.limitedBy === 'mass' ? 'weight' : 'the box';
        const { count } = hauled;
        return shownResult(
          hauled,
          `${count} ${count === 1 ? 'load' : 'loads'} of at most ${both(hauled.perLoad.volume)}, limited by ${limit}.`,
        );
      },
    ),
};
