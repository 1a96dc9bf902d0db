import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { AXLE_GROUP_FORMULA, type AxleLimitName } from '../sources/axle-limits.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput, MassInput } from '../units/construct.js';
import type { Length, Mass } from '../units/quantity.js';
import { withWorking, type Step, type Worked } from '../working.js';
import { readAxleCaps, type AxleCaps, type AxleCapsInput, type Cap } from './axle-caps.js';
import { groupFormula, groupStep, roundedGroup } from './axle-group-limit.js';
import { ANY_LENGTH, MASS } from '../site/limits.js';

/** An axle, from the front of the vehicle to the back. */
export interface AxleInput {
  readonly id: string;
  /** Distance from any mark, growing toward the back. */
  readonly position: LengthInput;
  /** What the axle carries, if it is known. */
  readonly load?: MassInput;
}

/** What sets the limit of a group. */
export type AxleLimiter = 'formula' | 'single' | 'tandem' | 'gross' | 'two-tandems';

/** One axle or group of consecutive axles against its limit. */
export interface AxleGroup {
  /** Ids from the first axle of the group to the last. */
  readonly axles: readonly string[];
  /** First to last axle; zero for one axle. */
  readonly spread: Length;
  /** What the formula allows, to 500 lb; null for one axle, where it is not defined. */
  readonly formula: Mass | null;
  /** The least of the formula and the caps that apply; null where no cap was given for one axle. */
  readonly limit: Mass | null;
  readonly limitedBy: AxleLimiter | null;
  /** How far the figure that decides can be traced; `given` for the caller's own. */
  readonly status: SourceStatus | 'given' | null;
  readonly source: SourceId | null;
  /** Sum of the loads, if all are known. */
  readonly load: Mass | null;
  /** Load less limit: positive is too much; null where one of them is not known. */
  readonly excess: Mass | null;
  readonly over: boolean | null;
}

/** Every axle and group of axles of a vehicle. */
export interface AxleGroups extends Worked {
  readonly groups: readonly AxleGroup[];
  /** The group with the greatest excess, if loads are known. */
  readonly worst: AxleGroup | null;
  /** Groups that carry too much. */
  readonly over: readonly AxleGroup[];
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Checks every axle and every group of two or more consecutive axles against the axle-group formula
 * and the caps: `W = 500 (L N / (N - 1) + 12 N + 36)` to the nearest 500 lb, and no more than the
 * single, tandem and gross caps. A load exactly on the limit is not over it.
 *
 * @param options.axles - 2 to 20, front to back: `id`, `position` [length, growing], `load` [mass]
 * @param options.caps - `us-interstate`, or your own `single`, `tandem` with `tandemSpread`,
 *   `gross`, `singleSpread`, `twoTandemsFrom`; `{}` for the formula alone. No default: the law of the
 *   road decides
 * @returns each axle and group with its formula weight, limit, what sets it and how far that can be
 *   traced, load and excess; the worst; cautions
 * @throws `TOO_FEW_AXLES`, `NOT_INCREASING`, `DUPLICATE_ID`, `CAPACITY_EXCEEDED`, `REQUIRED`,
 *   `UNKNOWN_CHOICE` and the reading codes
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
 * truck.over.map(({ axles, limitedBy }) => `${axles.join(' + ')}: ${limitedBy}`)
 * //=> ['drive 1 + drive 2: tandem']
 * truck.worst?.excess?.to('lb').toString() //=> '1000'
 */
export function checkAxleGroups(options: {
  readonly axles: readonly AxleInput[];
  readonly caps: AxleLimitName | AxleCapsInput;
}): AxleGroups {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const axles = readAxles(reader, fields['axles']);
  const caps = readAxleCaps(reader, fields['caps'], ['caps']);
  reader.finish();
  const groups = axles.flatMap((_, first) =>
    axles.slice(first).map((__, extra) => {
      return judgeGroup(axles.slice(first, first + extra + 1), caps, axles.length);
    }),
  );
  const weighed = groups.filter(({ excess }) => excess !== null);
  const worst = weighed.reduce<AxleGroup | null>(heavier, null);
  const found = {
    groups,
    worst,
    over: groups.filter(({ over }) => over === true),
    notes: NOTES,
    cautions: cautionsFor('loads'),
  };
  return withWorking(found, () => groups.flatMap(showGroup));
}

const NOTES: readonly string[] = Object.freeze([
  'The formula and federal caps hold on Interstate highways. States, towns, bridges and private drives may post less.',
  'Printed tables go by whole feet of spread; the formula takes the spread as measured and can come out one step of 500 lb apart.',
  'The weight a tyre, axle or hitch is rated for may be the lower limit.',
]);
const MOST_AXLES = 20;

interface Axle {
  readonly id: string;
  readonly position: Length;
  readonly load: Mass | undefined;
}

function readAxles(reader: Reader, value: unknown): Axle[] {
  const ids = new Set<string>();
  const axles = reader.list(value, ['axles']).map((item, index): Axle => {
    const path: FieldPath = ['axles', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id))
      reader.fail('DUPLICATE_ID', [...path, 'id'], `${id} stands twice`);
    ids.add(id);
    const position = reader.quantity(
      'length',
      fields['position'],
      [...path, 'position'],
      ANY_LENGTH,
    );
    const load =
      fields['load'] === undefined
        ? undefined
        : reader.quantity('mass', fields['load'], [...path, 'load'], MASS);
    return { id, position, load };
  });
  if (axles.length === 1)
    reader.fail('TOO_FEW_AXLES', ['axles'], 'a vehicle has two axles or more');
  if (axles.length > MOST_AXLES) reader.fail('CAPACITY_EXCEEDED', ['axles'], 'more than 20 axles');
  axles.forEach(({ position }, index) => {
    const before = axles[index - 1];
    if (before !== undefined && position.compare(before.position) <= 0) {
      reader.fail(
        'NOT_INCREASING',
        ['axles', index, 'position'],
        'each axle must stand behind the one before it',
      );
    }
  });
  return axles;
}

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
    over: excess === null ? null : !excess.isNegative() && !excess.isZero(),
  };
}

function spreadOf(axles: readonly Axle[]): Length {
  const [first, last] = [axles[0], axles.at(-1)];
  if (first === undefined || last === undefined) throw new TypeError('a group has an axle');
  return last.position.minus(first.position);
}

interface GroupCase {
  readonly formula: Mass | null;
  readonly spread: Length;
  readonly caps: AxleCaps;
  readonly isWhole: boolean;
}

/** The least of what applies; of equals the cap, because it is the plainer rule. */
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

/** The formula, or two tandem caps where two tandems stand far enough apart. */
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
  return [groupStep(axles.length, spread, groupFormula(axles.length, spread), formula)];
}
