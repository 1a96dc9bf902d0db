import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { areCorners } from '../plan/finish-surface.js';
import type { Pavement } from '../plan/layer-kinds.js';
import type { Job } from '../schema/schema.js';

type Grade = NonNullable<Pavement['grade']>;
type KnownLevel = Grade['levels'][number] | NonNullable<Job['levelling']>['benchmark'];

/** Faults in fixed levels, level book and instrument that only the whole job shows. Internal. */
export function checkLevels(reader: Reader, job: Job): void {
  const { levelBook, levelling } = job;
  if (levelBook?.allowable !== undefined && levelBook.rule !== undefined) {
    reader.fail('ONE_OF', ['levelBook', 'rule'], 'give allowable or rule, not both');
  }
  if (levelling !== undefined) {
    checkKnown(reader, job, { level: levelling.benchmark, path: ['levelling', 'benchmark'] });
  }
  job.pavements.forEach((pavement, index) => {
    if (pavement.finishedLevels !== undefined && job.existingLevels === undefined) {
      const why = 'is missing: finished levels are held against the levels now there';
      reader.fail('REQUIRED', ['existingLevels'], why);
    }
    if (pavement.grade !== undefined) checkGrade(reader, job, { pavement, index });
  });
  const laid = new Set(
    job.pavements.filter(({ grade }) => grade !== undefined).map(({ id }) => id),
  );
  job.stringLines.forEach(({ pavement, stakes }, line) => {
    if (!laid.has(pavement)) return;
    stakes.forEach(({ finish }, stake) => {
      if (finish === undefined) return;
      const why = `gives its own level, but ${pavement} has a grade through fixed levels: keep one`;
      reader.fail('ONE_OF', ['stringLines', line, 'stakes', stake, 'finish'], why);
    });
  });
}

function checkGrade(
  reader: Reader,
  job: Job,
  { pavement, index }: { readonly pavement: Pavement; readonly index: number },
): void {
  const { grade, crossFall, finishedLevels } = pavement;
  if (grade === undefined) return;
  const path = ['pavements', index, 'grade'];
  if (finishedLevels !== undefined) {
    const why = 'the grade through fixed levels tells the finished surface: keep one';
    reader.fail('ONE_OF', ['pavements', index, 'finishedLevels'], why);
  }
  if (crossFall !== undefined) {
    const why = 'the grade through fixed levels tells the cross fall: keep one';
    reader.fail('ONE_OF', ['pavements', index, 'crossFall'], why);
  }
  if (grade.crossSlope !== undefined && grade.kind !== 'line') {
    reader.fail('UNKNOWN_FIELD', [...path, 'crossSlope'], 'belongs to a grade of kind line alone');
  }
  grade.levels.forEach((level, k) => {
    checkKnown(reader, job, { level, path: [...path, 'levels', k] });
    if (level.fixed !== undefined && grade.kind !== 'plane') {
      const why = 'belongs to a grade of kind plane: lines and corners always meet their levels';
      reader.fail('UNKNOWN_FIELD', [...path, 'levels', k, 'fixed'], why);
    }
  });
  checkCount(reader, grade, [...path, 'levels']);
}

const LEAST = { line: 2, plane: 3, warped: 4 } as const;

function checkCount(reader: Reader, { kind, levels }: Grade, path: FieldPath): void {
  const least = LEAST[kind];
  if (levels.length < least) {
    reader.fail('TOO_FEW_POINTS', path, `a grade of kind ${kind} needs ${least} levels`, { least });
    return;
  }
  if (kind === 'warped' && !areCorners(levels)) {
    const why = 'a warped surface needs the four corners of a rectangle, in order round it';
    reader.fail('NOT_FOUR_CORNERS', path, why);
  }
  if (kind !== 'line') return;
  levels.forEach(({ x, y }, k) => {
    const before = levels[k - 1];
    if (before?.x.equals(x) !== true || !before.y.equals(y)) return;
    reader.fail('POINTS_COINCIDE', [...path, k], 'this level lies where the one before it lies');
  });
}

/** A level is given, or named from the level book. */
function checkKnown(
  reader: Reader,
  { levelBook }: Job,
  { level, path }: { readonly level: KnownLevel; readonly path: FieldPath },
): void {
  const { elevation, levelled } = level;
  if (elevation === undefined && levelled === undefined) {
    const why = 'is missing: give it, or name a point of the level book in levelled';
    reader.fail('REQUIRED', [...path, 'elevation'], why);
  }
  if (levelled === undefined) return;
  const at = [...path, 'levelled'];
  if (elevation !== undefined) reader.fail('ONE_OF', at, 'give elevation or levelled, not both');
  const rows = levelBook?.rows ?? [];
  const found = rows.flatMap(({ point }, k) => (point === levelled ? [k] : []));
  if (found.length === 0) {
    const name = JSON.stringify(levelled);
    reader.fail('UNKNOWN_ID', at, `there is no point ${name} in the level book`, { id: levelled });
  }
  // a loop of levels begins and ends on one mark, whose adjusted level is one
  const isLoop = found.length === 2 && found[0] === 0 && found[1] === rows.length - 1;
  if (found.length > 1 && !isLoop) {
    const why = `${JSON.stringify(levelled)} stands ${found.length} times in the level book`;
    reader.fail('DUPLICATE_ID', at, why, { id: levelled });
  }
}
