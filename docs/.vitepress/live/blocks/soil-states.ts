import { stateVolume, toState, type SoilFactors, type SoilState } from 'settline/volumes';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { refuseUnknown } from '../block/refuse-unknown.js';
import { both } from '../page/both-systems.js';

const STATES = [
  ['bank', 'bank: undisturbed in the ground'],
  ['loose', 'loose: dug, in a heap or a truck'],
  ['compacted', 'compacted in place'],
] as const;

export const block: Block = {
  title: 'Bank, loose and compacted',
  calls: ['stateVolume', 'toState'],
  fields: [
    entry('volume', 'Volume'),
    { kind: 'choice', path: ['state'], label: 'State it was measured in', choices: STATES },
    entry(['factors', 'loosePerBank'], 'Loose over bank', { isNumber: true, hint: '0.9 to 3' }),
    entry(['factors', 'compactedPerBank'], 'Compacted over bank', {
      isNumber: true,
      hint: '0.4 to 2',
    }),
  ],
  options: {
    volume: '20 yd3',
    state: 'bank',
    factors: { loosePerBank: 1.25, compactedPerBank: 0.9 },
  },
  run: ({ volume, state, factors, ...rest }) =>
    inTurn(
      () => stateVolume(volume as string, state as SoilState),
      () => stateVolume('1 m3', 'bank'),
      (from) => {
        refuseUnknown(rest);
        const soil = factors as unknown as SoilFactors;
        const [bank, loose, compacted] = (['bank', 'loose', 'compacted'] as const).map(
          (to) => toState(from, to, soil).volume,
        );
        return shownResult(
          { bank, loose, compacted },
          `${both(from.volume)} ${from.state} soil: ${[bank, loose, compacted]
            .map(
              (one, index) => `${one === undefined ? '' : both(one)} ${STATES[index]?.[0] ?? ''}`,
            )
            .join(', ')}.`,
        );
      },
    ),
};
