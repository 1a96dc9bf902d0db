import { known } from '../../invariant.js';
import { belowString, digAt } from '../../string-line/below-string.js';
import { fromSI, type Length } from '../../units/quantity.js';
import { between, norm } from '../../units/vector.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { SpotHeight } from '../schema/spot-heights-field.js';
import { heightOf } from '../schema/string-height.js';

/** A stake of a job. Internal. */
export type Stake = ReadJob['stakes'][number];
/** A string of a job. Internal. */
export type StringLine = ReadJob['stringLines'][number];

/** The stakes of a job by their ids. Internal. */
export type StakesById = ReadonlyMap<string, Stake>;

/** Finds stakes by their ids. Internal. */
export const stakesById = (job: ReadJob): StakesById =>
  new Map(job.stakes.map((stake) => [stake.id, stake]));

/** The stakes of a string in order. Internal. */
export const stakesOf = (line: StringLine, stakes: StakesById): Stake[] =>
  line.stakes.map((id) => known(stakes.get(id), 'stake'));

/** True for the string that the ground at a stake was measured from. Internal. */
export const isMeasuredFrom = (line: StringLine, { groundFrom }: Stake): boolean =>
  groundFrom === undefined || groundFrom === line.id;

/** A stake of a string, with the dig there if the ground was measured from this string. Internal. */
export interface StakeDig {
  readonly id: string;
  /** Distance along the string from its first stake. */
  readonly station: Length;
  /** Depth from the existing surface to the subgrade; null if it was not measured. */
  readonly dig: Length | null;
  /** The existing surface as a spot height; null if its elevation is not known. */
  readonly spot: SpotHeight | null;
}

/** The digs at the stakes of the strings of a pavement, string by string. Internal. */
export function digsAlongStrings(
  job: ReadJob,
  stakes: StakesById,
  {
    id,
    total,
    finishAt,
  }: {
    readonly id: string;
    readonly total: Length;
    /** Finished grade at a stake; null if it is not known. */
    readonly finishAt: (stake: Stake) => Length | null;
  },
): readonly (readonly StakeDig[])[] {
  return job.stringLines
    .filter(({ pavement }) => pavement === id)
    .map((line) => {
      const height = heightOf(job, line);
      let station = NO_LENGTH;
      const own = stakesOf(line, stakes);
      return own.map((stake, index): StakeDig => {
        const before = own[index - 1];
        if (before !== undefined) {
          station = station.plus(fromSI('length', norm(between(before, stake))));
        }
        const ground = isMeasuredFrom(line, stake) ? stake.ground : undefined;
        if (ground === undefined) return { id: stake.id, station, dig: null, spot: null };
        const finish = finishAt(stake);
        const z = finish?.plus(height).minus(ground);
        return {
          id: stake.id,
          station,
          dig: digAt(belowString(height, total), ground),
          spot: z === undefined ? null : { x: stake.x, y: stake.y, z },
        };
      });
    });
}
