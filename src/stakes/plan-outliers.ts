import { fault } from '../errors.js';
import { fromSI, type Length } from '../units/quantity.js';
import { ratioToNumber } from '../units/ratio.js';
import { leaveOneOut } from '../geometry/line/leave-one-out.js';
import { areInLine, lineSums, offsetFrom, sumsWithout } from './line-of-stakes.js';
import { planRow, type PlanRow } from './plan-row.js';
import type { LocalStake } from './plan-stake.js';
import type { MeasuredStake } from './stake-against-others.js';
import { moveStake } from './stake-move.js';

/** Measures each stake in plan against the orthogonal line of the others. Internal. */
export function measureInPlan(local: readonly LocalStake[]): MeasuredStake[] {
  const points = local.map(({ at }) => at);
  const row = planRow(points);
  const sums = lineSums(points);
  const deleted = local.map((stake, index) => offsetFromOthers(stake, index, row));
  const flat = points.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
  const rough = leaveOneOut(new Float64Array(flat));
  return deleted.map((offset, index) => {
    const { id, at } = offset;
    const hasScatter = !areInLine(sumsWithout(sums, at));
    return {
      id,
      deleted: offset.length,
      // adding zero turns a negative zero into zero
      studentized: hasScatter ? (rough.studentized[index] ?? 0) + 0 : null,
      leverage: rough.leverage[index] ?? 0,
      move: moveStake(id, offset.length),
    };
  });
}

interface Offset extends LocalStake {
  readonly length: Length;
}

function offsetFromOthers(stake: LocalStake, index: number, row: PlanRow): Offset {
  const line = row.lineWithout(index);
  if (line !== undefined) return { ...stake, length: fromSI('length', offsetFrom(line, stake.at)) };
  const message = 'without this stake the others spread equally in every direction';
  throw fault('DIRECTION_UNDEFINED', message, { id: stake.id }, ['stakes', index]);
}
