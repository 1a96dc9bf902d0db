import type { FieldPath } from '../../../errors.js';
import type { Length } from '../../../units/quantity.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { Pavement } from '../../schema/layer-kinds.js';
import { take, type Taken } from '../placed.js';

interface Level {
  readonly value: Length;
  readonly from: FieldPath;
}

const listed = (symbol: string, name: string, levels: readonly Level[]): Taken[] =>
  levels.length === 0
    ? []
    : [
        take(
          symbol,
          name,
          levels.map(({ value }) => value),
          ...levels.map(({ from }) => from),
        ),
      ];

/** The levels of a job that ground and finished grade of a pavement go through. Internal. */
export function levelsTaken(job: ReadJob, pavement: Pavement): Taken[] {
  const ids = new Set(
    job.stringLines.filter((line) => line.pavement === pavement.id).flatMap(({ stakes }) => stakes),
  );
  const atStakes = (field: 'ground' | 'finish') =>
    job.stakes.flatMap((stake, index): Level[] => {
      const value = stake[field];
      return value === undefined || !ids.has(stake.id)
        ? []
        : [{ value, from: ['job', 'stakes', index, field] }];
    });
  const spots = (job.existingLevels ?? []).map(({ z }, index) => ({
    value: z,
    from: ['job', 'existingLevels', index, 'z'],
  }));
  const finished = (pavement.finishedLevels ?? []).map(({ z }, index) => ({
    value: z,
    from: ['given', 'finishedLevels', index, 'z'],
  }));
  return [
    ...listed('z', 'levels of the ground', spots),
    ...listed('g', 'ground below the string at the stakes', atStakes('ground')),
    ...listed('f', 'finished grade at the stakes', atStakes('finish')),
    ...listed('zf', 'levels of finished grade', finished),
  ];
}
