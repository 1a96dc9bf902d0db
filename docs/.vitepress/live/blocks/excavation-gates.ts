import { attempt } from 'settline/errors';
import { excavationGates, type ExcavationGatesOptions } from 'settline/site';
import { entry, shownResult, type Block } from '../block/block.js';
import { both } from '../page/both-systems.js';

export const block: Block = {
  title: 'Rules that an open dig reaches',
  calls: ['excavationGates'],
  fields: [
    entry('depth', 'Depth of the dig'),
    {
      kind: 'choice',
      path: ['soil'],
      label: 'Soil, as a competent person classified it',
      choices: [
        ['not-classified', 'nobody has classified it'],
        ['A', 'type A'],
        ['B', 'type B'],
        ['C', 'type C'],
        ['stable-rock', 'stable rock'],
      ],
    },
    entry('spoilDistance', 'Spoil heap back from the edge', { isOptional: true }),
  ],
  options: { depth: '4.5 ft', soil: 'not-classified', spoilDistance: '1 ft' },
  run: (options) =>
    attempt(() => {
      const dig = excavationGates(options as unknown as ExcavationGatesOptions);
      const { daylightOffset, gates } = dig;
      const slope =
        daylightOffset === null
          ? ''
          : ` If the sides are sloped, the top edge is ${both(daylightOffset)} back.`;
      const shown = shownResult(
        dig,
        `${gates.length} rules apply.${slope} A competent person decides.`,
      );
      return {
        ...shown,
        notes: [...gates.map(({ text }) => text.us), dig.whoDecides, ...dig.notes],
      };
    }),
};
