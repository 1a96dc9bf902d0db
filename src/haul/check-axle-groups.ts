import { entry, lastOf } from '../invariant.js';
import type { FieldPath } from '../errors.js';
import { list, object, optional, quantity, text } from '../input/field.js';
import { PAYLOAD, SITE_OFFSET } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { AXLE_GROUP_FORMULA, type AxleLimitName } from '../sources/axle-limits.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput, MassInput } from '../units/construct.js';
import type { Length, Mass } from '../units/quantity.js';
import { withWorking, type Step, type Worked } from '../working.js';
import { axleCaps, type AxleCaps, type AxleCapsInput, type Cap } from './axle-caps.js';
import { groupFormula, groupSteps, roundedGroup } from './axle-group-limit.js';

/** An axle, from the front of the vehicle to the back. */
export interface AxleInput {
  /** What the crew calls it. Each id once in a vehicle. */
  readonly id: string;
  /** Distance behind any mark [length], up to 10 km either way. Grows from axle to axle. */
  readonly position: LengthInput;
  /** What the axle carries [mass], more than 0 and at most 10 000 t. Default: not known. */
  readonly load?: MassInput;
}

/** A vehicle and the caps that apply to it. */
export interface CheckAxleGroupsOptions {
  /** Axles from front to back, 2 to 20. */
  readonly axles: readonly AxleInput[];
  /**
   * The name of a set of `AXLE_LIMITS`, such as `us-interstate`, or your own caps; `{}` for the
   * formula alone. No default: it depends on the law of the road.
   */
  readonly caps: AxleLimitName | AxleCapsInput;
}

const AXLE = shapeOf<AxleInput>()({
  id: text(),
  position: quantity(SITE_OFFSET),
  load: optional(quantity(PAYLOAD)),
});

const OPTIONS = shapeOf<CheckAxleGroupsOptions>()({
  axles: list(object(AXLE), { of: 'axles', least: 2, most: 20, unique: 'id' }),
  caps: axleCaps,
});

/** What sets the limit of a group. */
export type AxleLimiter = 'formula' | 'single' | 'tandem' | 'gross' | 'two-tandems';

/** One axle or group of consecutive axles against its limit. */
export interface AxleGroup {
  /** Ids from the first axle of the group to the last. */
  readonly axles: readonly string[];
  /** First to last axle; zero for one axle. */
  readonly spread: Length;
  /** Weight by the formula, to 500 lb; null for one axle, where it is not defined. */
  readonly formula: Mass | null;
  /** Lowest of the formula and the caps that apply; null for one axle if no cap is given. */
  readonly limit: Mass | null;
  /** What sets the limit; null if there is none. */
  readonly limitedBy: AxleLimiter | null;
  /** How far the limit can be traced; `given` for your own caps; null if there is no limit. */
  readonly status: SourceStatus | 'given' | null;
  /** Where the limit is printed; null for your own caps, or if there is no limit. */
  readonly source: SourceId | null;
  /** Sum of the loads; null if one of them is not known. */
  readonly load: Mass | null;
  /** Load less limit, + too much; null if one of them is not known. */
  readonly excess: Mass | null;
  /** True if the load is over the limit; null if one of them is not known. */
  readonly isOver: boolean | null;
}

/** Every axle and group of axles of a vehicle. */
export interface AxleGroups extends Cautioned, Worked {
  /** Each axle and each group of consecutive axles. */
  readonly groups: readonly AxleGroup[];
  /** The group with the largest excess; null if no loads are known. */
  readonly worst: AxleGroup | null;
  /** Groups that carry too much. */
  readonly overloaded: readonly AxleGroup[];
  /** What the figures do not cover. */
  readonly notes: readonly string[];
}

/**
 * Checks every axle and every group of two or more consecutive axles against the axle-group formula
 * and the caps: `W = 500 (L N / (N - 1) + 12 N + 36)` to the nearest 500 lb, and no more than the
 * single, tandem and gross caps. A load exactly on the limit is not over it.
 *
 * @param options - see {@link CheckAxleGroupsOptions}
 * @returns each axle and group with its weight by the formula, its limit, what sets it and how far that
 *   can be traced, load and excess; the worst; cautions
 * @throws `TOO_FEW`, `TOO_MANY`, `NOT_INCREASING`, `DUPLICATE_ID`, `REQUIRED`, `UNKNOWN_CHOICE` and the
 *   reading codes
 * @source bridge-formula
 * @source vehicle-weights
 * @example
 * const truck = checkAxleGroups({
 *   axles: [
 *     { id: 'steer', position: '0 ft', load: '14000 lb' },
 *     { id: 'drive 1', position: '14 ft', load: '18000 lb' },
 *     { id: 'drive 2', position: '18 ft', load: '17000 lb' },
 *   ],
 *   caps: 'us-interstate',
 * });
 * truck.overloaded.map(({ axles, limitedBy }) => `${axles.join(' + ')}: ${limitedBy}`)
 * //=> ['drive 1 + drive 2: tandem']
 * truck.worst?.excess?.to('lb').toString() //=> '1000'
 */
export function checkAxleGroups(options: CheckAxleGroupsOptions): AxleGroups {
  const { axles, caps } = readOptions(options, OPTIONS, checkOrder);
  const groups = axles.flatMap((_, first) =>
    axles.slice(first).map((__, extra) => {
      return judgeGroup(axles.slice(first, first + extra + 1), caps, axles.length);
    }),
  );
  const weighed = groups.filter(({ excess }) => excess !== null);
  const found = {
    groups,
    worst: weighed.reduce<AxleGroup | null>(heavier, null),
    overloaded: groups.filter(({ isOver }) => isOver === true),
    notes: NOTES,
    cautions: cautionsFor('loads'),
  };
  return withWorking(found, () => groups.flatMap(showGroup));
}

const NOTES: readonly string[] = Object.freeze([
  'The formula and federal caps apply on Interstate highways. States, towns, bridges and private drives may post less.',
  'Printed tables use whole feet of spread. The formula takes the spread as measured and can differ by one step of 500 lb.',
  'The rating of a tyre, axle or hitch may be the lower limit.',
]);

/** Each axle is behind the one before it. */
const checkOrder: Check<typeof OPTIONS> = (reader, { axles = [] }, path: FieldPath) => {
  axles.forEach(({ id, position }, index) => {
    const before = axles[index - 1];
    if (before === undefined || position.compare(before.position) > 0) return;
    const message = `axle ${id} is not behind the axle before it. List axles from front to back`;
    reader.fail('NOT_INCREASING', [...path, 'axles', index, 'position'], message);
  });
};

type Axle = Values<typeof AXLE>;

interface Limit {
  readonly by: AxleLimiter;
  readonly cap: Cap;
}

function judgeGroup(axles: readonly Axle[], caps: AxleCaps, all: number): AxleGroup {
  const spread = spreadOf(axles);
  const formula = axles.length < 2 ? null : roundedGroup(groupFormula(axles.length, spread));
  const limit = limitOf(axles, { formula, spread, caps, isWhole: axles.length === all });
  const loads = axles.flatMap((axle) => (axle.load === undefined ? [] : [axle.load]));
  const load = loads.length === axles.length ? sum(loads) : null;
  const excess = load === null || limit === undefined ? null : load.minus(limit.cap.mass);
  return {
    axles: axles.map(({ id }) => id),
    spread,
    formula,
    limit: limit?.cap.mass ?? null,
    limitedBy: limit?.by ?? null,
    status: limit?.cap.status ?? null,
    source: limit?.cap.source ?? null,
    load,
    excess,
    isOver: excess === null ? null : !excess.isNegative() && !excess.isZero(),
  };
}

function spreadOf(axles: readonly Axle[]): Length {
  return lastOf(axles).position.minus(entry(axles, 0).position);
}

interface GroupCase {
  readonly formula: Mass | null;
  readonly spread: Length;
  readonly caps: AxleCaps;
  readonly isWhole: boolean;
}

/** The lowest of what applies; of equals the cap, because it is the plainer rule. */
function limitOf(axles: readonly Axle[], group: GroupCase): Limit | undefined {
  const { formula, spread, caps, isWhole } = group;
  const limits: Limit[] = [];
  const isSingle = axles.length === 1 || isWithin(spread, caps.singleSpread);
  if (isSingle && caps.single !== undefined) limits.push({ by: 'single', cap: caps.single });
  if (axles.length > 1 && isWithin(spread, caps.tandemSpread) && caps.tandem !== undefined) {
    limits.push({ by: 'tandem', cap: caps.tandem });
  }
  if (isWhole && caps.gross !== undefined) limits.push({ by: 'gross', cap: caps.gross });
  if (formula !== null) limits.push(formulaLimit(axles, formula, caps));
  return limits.reduce<Limit | undefined>(
    (least, one) => (least === undefined || one.cap.mass.compare(least.cap.mass) < 0 ? one : least),
    undefined,
  );
}

const isWithin = (spread: Length, most: Length | undefined): boolean =>
  most !== undefined && spread.compare(most) <= 0;

/** The formula, or two tandem caps where two tandems are far enough apart. */
function formulaLimit(axles: readonly Axle[], formula: Mass, caps: AxleCaps): Limit {
  const { step } = AXLE_GROUP_FORMULA;
  const plain: Limit = {
    by: 'formula',
    cap: { mass: formula, status: statusOf(step.source), source: step.source },
  };
  const { tandem, tandemSpread, twoTandemsFrom } = caps;
  if (tandem === undefined || twoTandemsFrom === undefined || axles.length !== 4) return plain;
  const isFar = spreadOf(axles).compare(twoTandemsFrom) >= 0;
  const pairs = [axles.slice(0, 2), axles.slice(2)];
  const areTandems = pairs.every((pair) => isWithin(spreadOf(pair), tandemSpread));
  const both = tandem.mass.times(2);
  if (!isFar || !areTandems || both.compare(formula) <= 0) return plain;
  return { by: 'two-tandems', cap: { ...tandem, mass: both } };
}

function heavier(worst: AxleGroup | null, group: AxleGroup): AxleGroup {
  if (worst?.excess === undefined || worst.excess === null) return group;
  return group.excess !== null && group.excess.compare(worst.excess) > 0 ? group : worst;
}

function showGroup({ axles, spread, formula }: AxleGroup): Step[] {
  if (formula === null) return [];
  return groupSteps(axles.length, spread, groupFormula(axles.length, spread), formula);
}
