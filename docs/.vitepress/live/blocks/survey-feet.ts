import { attempt } from 'settline/errors';
import { formatLength, length, type Length } from 'settline/units';
import { entry, shownResult, type Block } from '../block/block.js';
import { refuseUnknown } from '../block/refuse-unknown.js';

const metres = (value: Length): string => value.to('m').toFixed(4);

export const block: Block = {
  title: 'One number in the two feet',
  calls: ['length'],
  fields: [entry('feet', 'Feet on the plan', { isNumber: true })],
  options: { feet: 2000000 },
  run: ({ feet, ...rest }) =>
    attempt(() => {
      refuseUnknown(rest);
      const international = length(feet as number, 'ft');
      const survey = length(feet as number, 'ft-us');
      const apart = survey.minus(international);
      const shown = formatLength(apart, { as: 'ft-in', nearest: '1/64 in' });
      return shownResult(
        { internationalFeet: metres(international), surveyFeet: metres(survey), difference: apart },
        `It is ${metres(international)} m in international feet and ${metres(survey)} m in US survey feet: ${shown} apart.`,
      );
    }),
};
