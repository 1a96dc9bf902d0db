import { gradeLine, type GradeLineOptions } from 'settline/grading';
import type { LengthInput } from 'settline/units';
import { entry, shownResult, type Block } from '../block/block.js';
import { inTurn } from '../block/in-turn.js';
import { both } from '../page/both-systems.js';

const points = [
  { station: '0 ft', elevation: '100 ft' },
  { station: '20 ft', elevation: '99.5 ft' },
  { station: '30 ft', elevation: '98.9 ft' },
];

export const block: Block = {
  title: 'Grade between levels that cannot move',
  calls: ['gradeLine'],
  fields: [
    {
      kind: 'rows',
      path: ['points'],
      label: 'Fixed levels along the line',
      one: 'level',
      columns: [entry('station', 'station'), entry('elevation', 'elevation')],
      fresh: (index) => ({ station: `${index * 10} ft`, elevation: '99 ft' }),
    },
    entry('station', 'Station to work out'),
  ],
  options: { points, station: '12 ft' },
  run: ({ station, ...rest }) =>
    inTurn(
      () => gradeLine(rest as unknown as GradeLineOptions),
      () => gradeLine({ points }),
      (line) => {
        const at = line.at(station as LengthInput);
        const beyond = at.extrapolated ? ' That is past the last fixed level.' : '';
        const answer = `Finished grade at ${both(at.station)} is ${both(at.elevation)}, on a grade of ${both(at.grade)}.${beyond}`;
        const { segments, breaks, length } = line;
        const shown = shownResult({ at, length, segments, breaks }, answer);
        return { ...shown, working: line.working };
      },
    ),
};
