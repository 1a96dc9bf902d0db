import { entry } from '../invariant.js';
import type { Length } from '../units/quantity.js';
import { subtractRatios, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { NO_LENGTH } from '../units/zero.js';
import { isWithin, missOf, type LevelledShot } from './benchmark-checks.js';
import { correctionsOf } from './spread-misclosure.js';

/** A reading of the day with its level. */
export interface DayShot {
  /** Point the rod stood on. */
  readonly point: string;
  /** Elevation from the height of instrument in the morning. */
  readonly elevation: Length;
  /** `check`: on a known mark; `suspect`: shot after the last good check; `good`: any other. */
  readonly status: 'good' | 'suspect' | 'check';
  /** Correction from the adjustment; null if the shot is not adjusted. */
  readonly correction: Length | null;
  /** Elevation with the correction; null if the shot is not adjusted. */
  readonly adjusted: Length | null;
}

/** Adjusts run after run, until a check is outside the allowable. Internal. */
export function adjustedShots(shots: readonly LevelledShot[], allowable: Length): DayShot[] {
  let start: RunStart | null = { miss: NO_LENGTH, at: ZERO_RATIO };
  return runsOf(shots).flatMap((run) => {
    const last = run.at(-1);
    const miss = (last === undefined ? undefined : missOf(last)) ?? NO_LENGTH;
    if (start === null || !isWithin(miss, allowable)) {
      start = null;
      return run.map(suspectShot);
    }
    const adjusted = adjustRun(run, start, miss);
    start = { miss, at: last?.at ?? start.at };
    return adjusted;
  });
}

interface RunStart {
  readonly miss: Length;
  readonly at: Ratio;
}

/** The shots in runs that each end with a check. */
function runsOf(shots: readonly LevelledShot[]): LevelledShot[][] {
  const runs: LevelledShot[][] = [[]];
  for (const shot of shots) {
    runs.at(-1)?.push(shot);
    if (shot.known !== undefined) runs.push([]);
  }
  return runs;
}

const suspectShot = ({ point, elevation, known }: LevelledShot): DayShot => ({
  point,
  elevation,
  status: known === undefined ? 'suspect' : 'check',
  correction: null,
  adjusted: null,
});

/** Spreads the change in misclosure of a run evenly over it. */
function adjustRun(run: readonly LevelledShot[], start: RunStart, miss: Length): DayShot[] {
  const along = run.map(({ at }) => subtractRatios(at, start.at));
  const more = correctionsOf(miss.minus(start.miss), along);
  return run.map(({ point, elevation, known }, k): DayShot => {
    const correction = entry(more, k).minus(start.miss);
    const status = known === undefined ? 'good' : 'check';
    return { point, elevation, status, correction, adjusted: elevation.plus(correction) };
  });
}
