import { attempt } from 'settline/errors';
import { allowableEsals, type AllowableEsalsOptions } from 'settline/structure';
import { entry, shownResult, type Block } from '../block/block.js';

const number = { isNumber: true } as const;

export const block: Block = {
  title: 'Traffic that an asphalt road carries',
  calls: ['allowableEsals'],
  fields: [
    entry('structuralNumber', 'Structural number', number),
    entry('resilientModulus', 'Resilient modulus of the subgrade'),
    entry('reliability', 'Reliability, percent', number),
    entry('overallDeviation', 'Overall standard deviation', number),
    entry('serviceabilityLoss', 'Loss of serviceability', number),
  ],
  options: {
    structuralNumber: 2.5,
    resilientModulus: '5000 psi',
    reliability: 80,
    overallDeviation: 0.45,
    serviceabilityLoss: 2,
  },
  run: (options) =>
    attempt(() => {
      const road = allowableEsals(options as unknown as AllowableEsalsOptions);
      const passes = Math.round(road.esals);
      return shownResult(
        road,
        `The road carries ${passes} passes of the standard axle by this equation. An engineer decides on pavers.`,
      );
    }),
};
