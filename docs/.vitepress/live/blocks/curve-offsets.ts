import {
  arcFromChord,
  chordOffsets,
  type ArcFromChordOptions,
  type ChordOffsetsOptions,
} from 'settline/stakes';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { both } from '../page/both-systems.js';

const sound = { chord: '16 ft', middleOrdinate: '2 ft' };

export const block: Block = {
  title: 'Offsets from a chord',
  calls: ['arcFromChord', 'chordOffsets'],
  fields: [
    entry('chord', 'Chord, straight from end to end'),
    entry('middleOrdinate', 'Middle ordinate', { hint: 'from the middle of the chord to the arc' }),
    entry('uncertainty', 'Uncertainty of the middle ordinate', { isOptional: true }),
    entry('spacing', 'Spacing of the offsets'),
  ],
  options: { ...sound, uncertainty: '1/4 in', spacing: '4 ft' },
  run: ({ spacing, ...arc }) =>
    inTurn(
      () => arcFromChord(arc as unknown as ArcFromChordOptions),
      () => arcFromChord(sound),
      (curve) => {
        const { chord, middleOrdinate } = arc;
        const given = { chord, middleOrdinate, spacing };
        const offsets = chordOffsets(given as unknown as ChordOffsetsOptions);
        const radius =
          curve.radius === null ? 'The line is straight' : `The radius is ${both(curve.radius)}`;
        const shown = shownResult(
          { ...curve, rows: offsets.rows },
          `${radius}, and the arc is ${both(curve.arcLength)} long.`,
        );
        return { ...shown, working: [...curve.working, ...offsets.working], notes: [curve.note] };
      },
    ),
};
