import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { isLeftOut } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { Length } from '../../units/quantity.js';
import type { PlanPoint } from '../../units/vector.js';
import { counted } from '../counted.js';
import type { PartJob, PartPavement } from './part-job.js';
import { areFarApart, farApart } from './far-apart.js';
import { areCorners } from './four-corners.js';

type PartGrade = NonNullable<PartPavement['grade']>;
type PartLevel = NonNullable<NonNullable<PartGrade['levels']>[number]>;
type Known = Pick<PartLevel, 'elevation' | 'levelled'>;

/** Checks fixed levels, level book and instrument against the rest of the job. Internal. */
export function checkLevels(reader: Reader, job: PartJob): void {
  const { levelBook, levelling } = job;
  if (levelBook?.allowable !== undefined && levelBook.rule !== undefined) {
    conflict(reader, ['levelBook', 'rule'], 'give allowable or rule, not both');
  }
  if (levelling?.benchmark !== undefined) {
    checkKnown(reader, job, { level: levelling.benchmark, path: ['levelling', 'benchmark'] });
  }
  job.pavements?.forEach((pavement, index) => {
    if (pavement === undefined) return;
    if (pavement.finishedLevels !== undefined && isLeftOut(job, 'existingLevels')) {
      const message = 'missing. Give the existing levels: finished levels are compared with them';
      reader.fail('REQUIRED', ['existingLevels'], message);
    }
    checkGrade(reader, job, { pavement, index });
  });
  checkFinishes(reader, job);
}

const conflict = (reader: Reader, path: FieldPath, message: string): void =>
  reader.fail('CONFLICTING_FIELDS', path, message);

/** Refuses a level at a stake if the pavement has a grade through fixed levels. */
function checkFinishes(
  reader: Reader,
  { pavements = [], stringLines = [], stakes = [] }: PartJob,
): void {
  const laid = new Set(pavements.filter((one) => one?.grade !== undefined).map((one) => one?.id));
  const served = new Map(
    stringLines
      .filter((line) => line?.pavement !== undefined && laid.has(line.pavement))
      .flatMap((line) => line?.stakes?.map((id) => [id, line.pavement] as const) ?? []),
  );
  stakes.forEach((stake, index) => {
    if (stake?.finish === undefined) return;
    const pavement = served.get(stake.id);
    if (pavement === undefined) return;
    const message = `${shown(pavement)} already has a grade through fixed levels. Remove one of them`;
    conflict(reader, ['stakes', index, 'finish'], message);
  });
}

function checkGrade(
  reader: Reader,
  job: PartJob,
  { pavement, index }: { readonly pavement: PartPavement; readonly index: number },
): void {
  const { grade } = pavement;
  if (grade === undefined) return;
  for (const name of ['finishedLevels', 'crossSlope'] as const) {
    if (pavement[name] === undefined) continue;
    const message = 'the grade through fixed levels already gives it. Remove one of them';
    conflict(reader, ['pavements', index, name], message);
  }
  const { kind, levels = [] } = grade;
  const path = ['pavements', index, 'grade'];
  if (grade.crossSlope !== undefined && kind !== undefined && kind !== 'line') {
    const message = 'only a grade of kind line has a cross slope. Remove it';
    conflict(reader, [...path, 'crossSlope'], message);
  }
  levels.forEach((level, k) => {
    if (level === undefined) return;
    const at = [...path, 'levels', k];
    checkKnown(reader, job, { level, path: at });
    if (level.fixed === undefined || kind === undefined || kind === 'plane') return;
    const message = 'lines and corners always meet their levels. Remove it, or use kind plane';
    conflict(reader, [...at, 'fixed'], message);
  });
  checkCount(reader, grade, [...path, 'levels']);
}

const LEAST = { line: 2, plane: 3, warped: 4 } as const;

function checkCount(reader: Reader, { kind, levels }: PartGrade, path: FieldPath): void {
  if (kind === undefined || levels === undefined || levels.length === 0) return;
  const [least, got] = [LEAST[kind], levels.length];
  if (got < least) {
    const message = `${counted(got, 'level')}. Give ${least} for a grade of kind ${kind}`;
    reader.fail('TOO_FEW', path, message, { least, got });
    return;
  }
  const places = levels.flatMap((level): PlanPoint[] =>
    level?.x === undefined || level.y === undefined ? [] : [{ x: level.x, y: level.y }],
  );
  if (kind === 'warped' && places.length === got && !areCorners(places)) {
    const message = 'the corners do not form a rectangle. Give the four corners in order around it';
    reader.fail('NOT_FOUR_CORNERS', path, message);
  }
  if (kind === 'line') checkApart(reader, levels, path);
}

function checkApart(
  reader: Reader,
  levels: NonNullable<PartGrade['levels']>,
  path: FieldPath,
): void {
  const isSame = (a: Length | undefined, b: Length | undefined) =>
    a !== undefined && b !== undefined && a.equals(b);
  levels.forEach((level, k) => {
    const before = k === 0 ? undefined : levels[k - 1];
    if (!isSame(level?.x, before?.x) || !isSame(level?.y, before?.y)) return;
    const message = 'this level is at the same point as the one before it. Remove one of them';
    reader.fail('POINTS_COINCIDE', [...path, k], message);
  });
  const far = levels.findIndex((level, k) => k > 0 && areFarApart(levels[k - 1], level));
  if (far > 0) reader.fail('OUT_OF_RANGE', [...path, far], farApart('level'));
}

/** Checks that a level is given or named from the level book, not both. */
function checkKnown(
  reader: Reader,
  job: PartJob,
  { level, path }: { readonly level: Known; readonly path: FieldPath },
): void {
  const { elevation, levelled } = level;
  if (isLeftOut(level, 'elevation') && isLeftOut(level, 'levelled')) {
    const message = 'missing. Give it, or name a point of the level book in levelled';
    reader.fail('REQUIRED', [...path, 'elevation'], message);
  }
  if (levelled === undefined) return;
  const at = [...path, 'levelled'];
  if (elevation !== undefined) conflict(reader, at, 'give elevation or levelled, not both');
  checkPoint(reader, job, { levelled, at });
}

/** Checks that a point is listed once in the level book. */
function checkPoint(
  reader: Reader,
  job: PartJob,
  { levelled, at }: { readonly levelled: string; readonly at: FieldPath },
): void {
  const rows = isLeftOut(job, 'levelBook') ? [] : job.levelBook?.rows;
  // a book that could not be read may contain the point
  if (rows === undefined) return;
  const points = rows.map((row) => row?.point);
  if (!points.includes(undefined) && !points.includes(levelled)) {
    const message = `no point of the level book is called ${shown(levelled)}`;
    reader.fail('UNKNOWN_ID', at, message, { id: levelled });
  }
  const found = points.flatMap((point, k) => (point === levelled ? [k] : []));
  // a loop of levels starts and ends on one mark, which has one adjusted level
  const isLoop = found.length === 2 && found[0] === 0 && found[1] === points.length - 1;
  if (found.length > 1 && !isLoop) {
    const message = `${shown(levelled)} is listed ${found.length} times in the level book. Give each point its own name`;
    reader.fail('DUPLICATE_ID', at, message, { id: levelled });
  }
}
