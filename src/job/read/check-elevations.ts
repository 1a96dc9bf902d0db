import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { at } from '../../geometry/floats.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { entry } from '../../invariant.js';
import type { Length } from '../../units/quantity.js';
import type { PartJob, PartPavement } from './part-job.js';

/** How far the levels of one site may be from the middle one [m]. Common practice, no source. */
const MOST_APART = 50;
/** Levels less apart than this [m] are one level that was shot twice. Common practice, no source. */
const LEAST_RISE = 0.1;

/** Levels of a part of the job, and where each one is in it. */
interface Levels {
  readonly elevations: readonly (Length | undefined)[];
  readonly pathAt: (index: number) => FieldPath;
}

/**
 * Checks that the levels of the job are those of one site: none far above or below the others, and no
 * two fixed levels of a pavement with a rise longer than its run. Internal.
 */
export function checkElevations(reader: Reader, job: PartJob, input: unknown): void {
  const parts = levelsOf(job, input);
  const heights = parts.flatMap(({ elevations }) =>
    elevations.flatMap((one) => (one === undefined ? [] : one.toNumber('m'))),
  );
  if (heights.length === 0) return;
  const middle = median(heights);
  let next = 0;
  for (const { elevations, pathAt } of parts) {
    elevations.forEach((elevation, index) => {
      if (elevation === undefined) return;
      const z = entry(heights, next);
      next += 1;
      if (Math.abs(z - middle) <= MOST_APART) return;
      const [got, most] = [elevation.toString(), `${MOST_APART} m`];
      const message = `${got} is more than ${most} (164 ft) above or below the other levels. Check the digits and the unit`;
      reader.fail('OUT_OF_RANGE', pathAt(index), message, { got, most });
    });
  }
  job.pavements?.forEach((pavement, index) => {
    checkSteepness(reader, pavement?.grade, {
      middle,
      path: ['pavements', index, 'grade', 'levels'],
    });
  });
}

/** Every level of the job; undefined for one that could not be read. */
function levelsOf(job: PartJob, input: unknown): readonly Levels[] {
  const { existingLevels, levelling, levelBook, stakes = [], pavements = [] } = job;
  const given = isPlain(input) ? input : {};
  return [
    spots(existingLevels, given['existingLevels'], ['existingLevels']),
    {
      elevations: [levelling?.benchmark?.elevation],
      pathAt: () => ['levelling', 'benchmark', 'elevation'],
    },
    {
      elevations: [levelBook?.start, levelBook?.known],
      pathAt: (k) => ['levelBook', k === 0 ? 'start' : 'known'],
    },
    {
      elevations: stakes.map((stake) => stake?.finish),
      pathAt: (k) => ['stakes', k, 'finish'],
    },
    ...pavements.flatMap((pavement, k) =>
      pavement === undefined
        ? []
        : levelsOfPavement(pavement, pavementOf(given, k), ['pavements', k]),
    ),
  ];
}

function levelsOfPavement(
  { grade, edges = [], finishedLevels }: PartPavement,
  given: unknown,
  path: FieldPath,
): Levels[] {
  const raw = isPlain(given) ? given['finishedLevels'] : undefined;
  return [
    {
      elevations: (grade?.levels ?? []).map((level) => level?.elevation),
      pathAt: (k) => [...path, 'grade', 'levels', k, 'elevation'],
    },
    {
      elevations: edges.map((edge) => edge?.level),
      pathAt: (k) => [...path, 'edges', k, 'level'],
    },
    spots(finishedLevels, raw, [...path, 'finishedLevels']),
  ];
}

const pavementOf = (input: Readonly<Record<string, unknown>>, index: number): unknown =>
  Array.isArray(input['pavements']) ? input['pavements'][index] : undefined;

/** Spot heights, each where the job has it: in a list of lengths, or in a table of one unit. */
const spots = (read: PartJob['existingLevels'], given: unknown, path: FieldPath): Levels => ({
  elevations: (read ?? []).map((spot) => spot?.z),
  pathAt: (k) => (Array.isArray(given) ? [...path, k, 'z'] : [...path, 'points', k, 2]),
});

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  const upper = at(sorted, half);
  return sorted.length % 2 === 1 ? upper : (at(sorted, half - 1) + upper) / 2;
}

type PartGrade = PartPavement['grade'];

interface Placed {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly elevation: Length;
  readonly index: number;
  /** What a message calls it. */
  readonly name: string;
}

/** Refuses the one of two levels that is farther from the middle of all. */
function checkSteepness(
  reader: Reader,
  grade: PartGrade,
  { middle, path }: { readonly middle: number; readonly path: FieldPath },
): void {
  const levels = (grade?.levels ?? []).flatMap((level, index): Placed[] => {
    const { x, y, elevation, name } = level ?? {};
    if (x === undefined || y === undefined || elevation === undefined) return [];
    const label = name === undefined ? `level ${index + 1}` : shown(name);
    const z = elevation.toNumber('m');
    // a level that is far off is refused as such
    if (Math.abs(z - middle) > MOST_APART) return [];
    return [{ x: x.toNumber('m'), y: y.toNumber('m'), z, elevation, index, name: label }];
  });
  const refused = new Set<number>();
  levels.forEach((one, k) => {
    for (const other of levels.slice(k + 1)) {
      const [rise, run] = [Math.abs(other.z - one.z), Math.hypot(other.x - one.x, other.y - one.y)];
      if (run === 0 || rise <= run || rise <= LEAST_RISE) continue;
      const isOne = Math.abs(one.z - middle) > Math.abs(other.z - middle);
      const [wrong, right] = isOne ? [one, other] : [other, one];
      if (refused.has(one.index) || refused.has(other.index)) continue;
      refused.add(wrong.index);
      const [got, percent] = [wrong.elevation.toString(), Math.round((100 * rise) / run)];
      const message = `${got} makes a slope of ${percent}% to ${right.name}. Check the digits and the unit`;
      reader.fail('OUT_OF_RANGE', [...path, wrong.index, 'elevation'], message, { got, percent });
    }
  });
}
