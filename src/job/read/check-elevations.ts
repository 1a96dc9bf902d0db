import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { entry } from '../../invariant.js';
import type { Length } from '../../units/quantity.js';
import type { PartJob, PartPavement } from './part-job.js';

/** How far the levels of one site may be from the middle one [m]. */
const MOST_APART = 50;
/** Levels less apart than this [m] are one level that was shot twice. */
const LEAST_RISE = 0.1;

interface Level {
  readonly elevation: Length;
  /** In metres. */
  readonly z: number;
  readonly path: FieldPath;
}

/**
 * Checks that the levels of the job are those of one site: none far above or below the others, and no
 * two fixed levels of a pavement with a rise longer than its run. Internal.
 */
export function checkElevations(reader: Reader, job: PartJob, input: unknown): void {
  const levels = levelsOf(job, input);
  if (levels.length === 0) return;
  const middle = median(levels.map(({ z }) => z));
  for (const { elevation, z, path } of levels) {
    if (Math.abs(z - middle) <= MOST_APART) continue;
    const [got, most] = [elevation.toString(), `${MOST_APART} m`];
    const message = `${got} is more than ${most} above or below the other levels. Check the digits and the unit`;
    reader.fail('OUT_OF_RANGE', path, message, { got, most });
  }
  job.pavements?.forEach((pavement, index) => {
    checkSteepness(reader, pavement?.grade, {
      middle,
      path: ['pavements', index, 'grade', 'levels'],
    });
  });
}

/** Every level of the job that could be read. */
function levelsOf(job: PartJob, input: unknown): readonly Level[] {
  const { existingLevels, levelling, levelBook, stakes = [], pavements = [] } = job;
  const given = isPlain(input) ? input : {};
  return [
    ...levelsAt(spots(existingLevels, given['existingLevels'], ['existingLevels'])),
    ...levelsAt([
      [levelling?.benchmark?.elevation, ['levelling', 'benchmark', 'elevation']],
      [levelBook?.start, ['levelBook', 'start']],
      [levelBook?.known, ['levelBook', 'known']],
      ...stakes.map((stake, k) => [stake?.finish, ['stakes', k, 'finish']] as const),
    ]),
    ...pavements.flatMap((pavement, k) =>
      pavement === undefined
        ? []
        : levelsOfPavement(pavement, pavementOf(given, k), ['pavements', k]),
    ),
  ];
}

type At = readonly [elevation: Length | undefined, path: FieldPath];

const levelsAt = (list: readonly At[]): Level[] =>
  list.flatMap(([elevation, path]) =>
    elevation === undefined ? [] : [{ elevation, z: elevation.toNumber('m'), path }],
  );

function levelsOfPavement(
  { grade, edges = [], finishedLevels }: PartPavement,
  given: unknown,
  path: FieldPath,
): Level[] {
  const raw = isPlain(given) ? given['finishedLevels'] : undefined;
  return levelsAt([
    ...(grade?.levels ?? []).map((level, k): At => [
      level?.elevation,
      [...path, 'grade', 'levels', k, 'elevation'],
    ]),
    ...edges.map((edge, k): At => [edge?.level, [...path, 'edges', k, 'level']]),
    ...spots(finishedLevels, raw, [...path, 'finishedLevels']),
  ]);
}

const pavementOf = (input: Readonly<Record<string, unknown>>, index: number): unknown =>
  Array.isArray(input['pavements']) ? input['pavements'][index] : undefined;

/** Spot heights, each where the job has it: in a list of lengths, or in a table of one unit. */
const spots = (read: PartJob['existingLevels'], given: unknown, path: FieldPath): readonly At[] =>
  (read ?? []).map((spot, k) => [
    spot?.z,
    Array.isArray(given) ? [...path, k, 'z'] : [...path, 'points', k, 2],
  ]);

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = entry(sorted, half);
  return sorted.length % 2 === 1 ? upper : (entry(sorted, half - 1) + upper) / 2;
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
