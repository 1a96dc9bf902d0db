import { capital } from '../../../capital.js';
import { fault } from '../../../errors.js';
import { object, text } from '../../../input/field.js';
import { isPlain } from '../../../input/plain.js';
import { readOptions, shapeOf } from '../../../input/shape.js';
import { shown } from '../../../input/shown.js';
import { DEPTH_GATES, type DepthGateId } from '../../../sources/excavation-rules.js';
import type { StakeMove } from '../../../stakes/stake-move.js';
import { isQuantity, type Area, type Length, type Slope } from '../../../units/quantity.js';
import type { PlanWarning } from '../../plan/plan.js';
import { isSound } from '../is-measure.js';
import { isMove } from '../is-move.js';
import { readSystem, systemField, type DescribePartOptions } from '../layout/sheet-options.js';
import { inWords, slopeText } from './in-words.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';
import { measureText, unitsOfSheet } from '../layout/units-of-sheet.js';
import { WARNING_WORDS } from './warning-words.js';

/** The stakes that tell left from right. */
export interface StakeFacing {
  /** Id of the stake to stand at: the first of the string. */
  readonly from: string;
  /** Id of the stake to face: the last of the string. */
  readonly to: string;
}

/** How the instruction for a stake is written. */
export interface DescribeMoveOptions extends DescribePartOptions {
  /** Which way to face. */
  readonly facing: StakeFacing;
}

const MOVE_OPTIONS = shapeOf<DescribeMoveOptions>()({
  system: systemField,
  facing: object(shapeOf<StakeFacing>()({ from: text(), to: text() })),
});

/**
 * The instruction for a stake that is out of line, and which way to face.
 *
 * @param move - of a string line, or of a line check
 * @param options - see {@link DescribeMoveOptions}
 * @returns for instance `facing from S1 to S5, move S4 1 3/16 in right`
 * @throws `WRONG_TYPE` if it is not a move, `REQUIRED`, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * describeMove(
 *   { id: 'S4', distance: length('1 3/16 in'), direction: 'right' },
 *   { system: 'us', facing: { from: 'S1', to: 'S5' } },
 * ) //=> 'facing from S1 to S5, move S4 1 3/16 in right'
 */
export function describeMove(move: StakeMove, options: DescribeMoveOptions): string {
  if (!isMove(move)) throw fault('WRONG_TYPE', `pass a move of a string line, got ${shown(move)}`);
  return moveText(move, readOptions(options, MOVE_OPTIONS));
}

/** A move in words. Internal. */
export function moveText(move: StakeMove, { system, facing }: DescribeMoveOptions): string {
  const by = unitsOfSheet(system).depthWithUnit(move.distance);
  return `facing from ${facing.from} to ${facing.to}, move ${move.id} ${by} ${move.direction}`;
}

/**
 * A warning of a plan in words.
 *
 * @param warning - of the `warnings` of a plan
 * @param options - see {@link DescribePartOptions}
 * @throws `WRONG_TYPE` if it is not a warning, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * describeWarning(
 *   { code: 'STAKE_IN_DIG', subject: 'stake S4', values: { pavement: 'Drive' } },
 *   { system: 'us' },
 * ) //=> 'Stake S4 is inside the dig of Drive and will be dug out. Reset it outside the dig line.'
 */
export function describeWarning(warning: PlanWarning, options: DescribePartOptions): string {
  if (!isWarning(warning)) {
    throw fault('WRONG_TYPE', `pass a warning of a plan, got ${shown(warning)}`);
  }
  const system = readSystem(options);
  const { reach, rule } = warning.values;
  const say = speaker(warning, system);
  const subject = capital(warning.subject);
  return WARNING_WORDS[warning.code]({ subject, say, reach, rule: ruleText(rule, system) });
}

/** A rule for open digs in words; none where there is no such rule. */
const ruleText = (rule: unknown, system: SheetSystem): string =>
  typeof rule === 'string' && Object.hasOwn(DEPTH_GATES, rule)
    ? DEPTH_GATES[rule as DepthGateId].text[system]
    : '';

function isWarning(value: unknown): value is PlanWarning {
  if (!isPlain(value)) return false;
  const { code, subject, values } = value;
  const isKnown = typeof code === 'string' && Object.hasOwn(WARNING_WORDS, code);
  return (
    isKnown &&
    typeof subject === 'string' &&
    isPlain(values) &&
    Object.values(values).every(isFigure)
  );
}

const isFigure = (value: unknown): boolean =>
  typeof value === 'string' || Number.isFinite(value) || isSound(value);

/** Places and reaches are said as long lengths, the rest as depths. */
const PLACES = new Set(['x', 'y', 'reach', 'run', 'far', 'farLimit']);

function speaker(warning: PlanWarning, system: SheetSystem): (name: string) => string {
  const units = unitsOfSheet(system);
  return (name) => {
    const value = warning.values[name];
    if (!isQuantity(value)) return inWords(String(value ?? ''));
    switch (value.dimension) {
      case 'length':
        return PLACES.has(name)
          ? units.long(value as Length)
          : units.depthWithUnit(value as Length);
      case 'area':
        return units.area(value as Area);
      case 'slope':
        return slopeText(value as Slope);
      default:
        return measureText(value, system);
    }
  };
}
