import { attempt } from 'settline/errors';
import {
  formatLength,
  parseMeasure,
  readLengthText,
  type LengthUnit,
  type MeasureDimension,
} from 'settline/units';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'What a text reads as',
  calls: ['readLengthText', 'parseMeasure', 'formatLength'],
  fields: [
    entry('text', 'Text', { hint: 'as on a tape, a rod or a drawing' }),
    {
      kind: 'choice',
      path: ['dimension'],
      label: 'Kind of measure',
      choices: [
        ['length', 'length'],
        ['area', 'area'],
        ['volume', 'volume'],
        ['mass', 'mass'],
        ['density', 'density'],
        ['pressure', 'pressure'],
      ],
    },
    { kind: 'flag', path: ['decimalComma'], label: 'Decimal comma' },
  ],
  options: { text: '7\' 3 5/8"', dimension: 'length', decimalComma: false },
  run: ({ text, dimension, ...rest }) =>
    attempt(() => {
      const words = text as string;
      if (dimension === 'length') {
        const { length, impliedInches } = readLengthText(words, rest);
        const exact = (unit: LengthUnit): string => length.to(unit).toString();
        return shownResult(
          {
            inches: exact('in'),
            feet: exact('ft'),
            millimetres: exact('mm'),
            metres: exact('m'),
            onTheTape: formatLength(length, { as: 'ft-in' }),
            impliedInches,
          },
          `It reads as ${formatLength(length, { as: 'ft-in' })}: exactly ${exact('in')} in, ${exact('mm')} mm.`,
        );
      }
      const measure = parseMeasure(dimension as MeasureDimension, words, rest);
      return shownResult({ measure }, `It reads as ${both(measure)}.`);
    }),
};
