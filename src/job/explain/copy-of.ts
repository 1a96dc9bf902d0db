import { entry, known, present } from '../../invariant.js';
import type { FieldPath } from '../../errors.js';
import { isQuantity } from '../../units/quantity.js';
import { isSame } from './same-value.js';
import { depthPath } from '../plan/working/depth-path.js';
import type { JobPlan, LooseOrderPlan, PavementPlan } from '../plan/plan.js';
import { warningField } from './warning-field.js';

/**
 * The field that a field of the plan repeats: of the job inside it, as `['job', ...]`, or of the plan
 * itself. Null where it repeats none. Internal.
 */
export function copyOf(plan: JobPlan, path: FieldPath): FieldPath | null {
  const [list, index, ...rest] = path;
  const k = Number(index);
  if (list === 'pavements') return inPavement(plan, k, rest);
  if (list === 'stringLines') return inString(plan, k, rest);
  if (list === 'levelBook') return inBook(plan, path.slice(1));
  if (list === 'levelling') return inLevelling(plan, path.slice(1));
  if (list === 'warnings') return warningField(plan, path);
  const isPlain =
    list === 'stringHeight' || (list === 'minimumFall' && plan.job.minimumFall !== undefined);
  if (isPlain) return ['job', list];
  return null;
}

function inPavement({ job, pavements }: JobPlan, k: number, path: FieldPath): FieldPath | null {
  const [first, second, third, fourth] = path;
  const own = entry(pavements, k);
  const asked = (...rest: FieldPath): FieldPath => ['job', 'pavements', k, ...rest];
  switch (first) {
    case 'buildUp':
      return fourth === 'thickness' && third !== undefined
        ? asked('layers', third, 'thickness')
        : null;
    case 'settlement':
      return [...materialAt(job, 'sands', own.bedding), 'settlement'];
    case 'oldPaving':
      return third === 'thickness' || third === 'density'
        ? oldPavingAt(job, own, Number(second), third)
        : null;
    case 'stones':
    case 'bedding': {
      const order = first === 'bedding' ? own.bedding : own.stones[Number(second)];
      if (path.at(-1) !== 'compactedDryDensity' || order === undefined) return null;
      const group = first === 'bedding' ? 'sands' : 'stones';
      return [...materialAt(job, group, order), 'compactedDryDensity'];
    }
    case 'pavers':
      return second === 'area' ? ['pavements', k, 'areas', 'paving'] : null;
    case 'grade':
      if (second === 'levels' && third !== undefined && fourth !== undefined) {
        return ['x', 'y', 'elevation'].includes(String(fourth))
          ? asked('grade', 'levels', third, fourth)
          : null;
      }
      return second === 'stretches' && fourth === 'crossSlope'
        ? asked('grade', 'crossSlope')
        : null;
    case 'nearby':
      return second === 'handDig' && third === 'digArea' ? ['pavements', k, 'areas', 'dig'] : null;
    default:
      return null;
  }
}

const materialAt = (
  job: JobPlan['job'],
  group: 'stones' | 'sands',
  { material }: LooseOrderPlan,
): FieldPath => [
  'job',
  'materials',
  group,
  job.materials[group].findIndex(({ id }) => id === material),
];

/** The pieces of a plan are those of the job that lie in the dig, in their order. */
function oldPavingAt(
  { oldPaving = [] }: JobPlan['job'],
  { id, oldPaving: planned }: PavementPlan,
  index: number,
  field: 'thickness' | 'density',
): FieldPath | null {
  const piece = planned[index];
  const found = oldPaving.findIndex(
    (one) =>
      one.material === piece?.material &&
      (one.pavement === undefined || one.pavement === id) &&
      isQuantity(one[field]) &&
      isSame(piece[field], one[field]),
  );
  return found < 0 ? null : ['job', 'oldPaving', found, field];
}

function inString(
  { job, stringLines, pavements }: JobPlan,
  k: number,
  path: FieldPath,
): FieldPath | null {
  const line = entry(stringLines, k);
  const [first, second, third] = path;
  switch (first) {
    case 'stringHeight':
      return job.stringLines[k]?.height === undefined
        ? ['job', 'stringHeight']
        : ['job', 'stringLines', k, 'height'];
    case 'tolerance':
      return ['job', 'stakeTolerance'];
    case 'stakes': {
      const { id } = entry(line.stakes, Number(second));
      const stake = job.stakes.findIndex((one) => one.id === id);
      if (third === 'ground') return ['job', 'stakes', stake, 'ground'];
      return third === 'finishElevation' ? ['job', 'stakes', stake, 'finish'] : null;
    }
    case 'surfaces': {
      if (third !== 'belowFinish') return null;
      const { belowFinish } = entry(line.surfaces, Number(second));
      const at = pavements.findIndex(({ id }) => id === line.pavement);
      return ['pavements', at, ...depthPath(entry(pavements, at), belowFinish)];
    }
    default:
      return null;
  }
}

const READINGS = ['back', 'intermediate', 'fore', 'distance'];

function inBook({ job }: JobPlan, path: FieldPath): FieldPath | null {
  const [list, , field] = path;
  if (list === 'rows' && READINGS.includes(String(field))) return ['job', 'levelBook', ...path];
  return list === 'allowable' && job.levelBook?.allowable !== undefined
    ? ['job', 'levelBook', 'allowable']
    : null;
}

function inLevelling({ job, levelBook }: JobPlan, path: FieldPath): FieldPath | null {
  const [first, second] = path;
  if (first !== 'elevation') {
    return first === 'backsight' || (first === 'closing' && second !== 'drift')
      ? ['job', 'levelling', ...path]
      : null;
  }
  const { benchmark } = known(job.levelling, 'levelling');
  if (benchmark.elevation !== undefined) return ['job', 'levelling', 'benchmark', 'elevation'];
  const { rows } = present(levelBook, 'level book');
  const row = rows.findIndex(({ point }) => point === benchmark.levelled);
  return ['levelBook', 'rows', row, 'adjusted'];
}
