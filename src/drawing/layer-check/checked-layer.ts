import { fault } from '../../errors.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { isCheckMove } from '../../checks/describe-check-move.js';
import type { CheckMove } from '../../checks/layer-check.js';
import type { AnyLayerCheck, KeptCheck } from '../../checks/report-words.js';
import type { SurfaceCheck } from '../../job/check/check-surface.js';
import { isLength } from '../../units/is-length.js';
import { isQuantity, type AnyQuantity } from '../../units/quantity.js';
import type { Verdict } from '../../verdict.js';

/** A checked layer, or a surface of a checked job, as it is drawn. Internal. */
export interface CheckedLayer {
  readonly check: KeptCheck;
  readonly verdict: Verdict;
  /** What was checked, where it is no surface of a job. */
  readonly subject: string;
  /** Null where it is the check of a layer by itself. */
  readonly surface: SurfaceCheck | null;
}

/** What is read of a reading. */
interface Reading {
  readonly id: string;
  readonly value: AnyQuantity;
  readonly margin: AnyQuantity;
  readonly verdict: Verdict;
  readonly move: CheckMove | null;
}

/**
 * The check of a layer, or of a surface of a job. Internal.
 *
 * @throws `WRONG_TYPE` for anything else
 */
export function checkedLayer(value: AnyLayerCheck | SurfaceCheck): CheckedLayer {
  if (isSurface(value)) {
    const { level, stakes: readings, verdict, surface: subject } = value;
    return { check: { ...level, readings }, verdict, subject, surface: value };
  }
  if (isLayer(value)) {
    return { check: value, verdict: value.verdict, subject: value.subject, surface: null };
  }
  const message = `pass the check of a layer or a surface of checkJob(), got ${shown(value)}`;
  throw fault('WRONG_TYPE', message, { got: shown(value) });
}

function isSurface(value: unknown): value is SurfaceCheck {
  if (!isPlain(value)) return false;
  const { pavement, surface, kind, level, stakes, missing, verdict, thickness } = value;
  return (
    [pavement, surface, kind].every((text) => typeof text === 'string') &&
    isPlain(level) &&
    level['check'] === 'level' &&
    areLimits(level['limits']) &&
    isVerdict(verdict) &&
    Array.isArray(missing) &&
    missing.every((id) => typeof id === 'string') &&
    (thickness === null || isThickness(thickness)) &&
    areReadings(stakes) &&
    stakes.every(isStake)
  );
}

const isThickness = (value: unknown): boolean =>
  isPlain(value) &&
  [value['thinnest'], value['thickest'], value['design']].every(isLength) &&
  isVerdict(value['verdict']);

const isStake = (stake: object): boolean =>
  isPlain(stake) &&
  typeof stake['string'] === 'string' &&
  isLength(stake['plannedBelowString']) &&
  isLength(stake['measuredBelowString']) &&
  (stake['looseToAdd'] === null || isLength(stake['looseToAdd']));

const KINDS: ReadonlySet<unknown> = new Set<AnyLayerCheck['check']>([
  'level',
  'thickness',
  'flatness',
  'lippage',
  'joint-width',
  'bond-line',
  'fall',
  'compaction',
]);

function isLayer(value: unknown): value is AnyLayerCheck {
  if (!isPlain(value)) return false;
  const { check, subject, verdict, limits, readings } = value;
  return (
    KINDS.has(check) &&
    typeof subject === 'string' &&
    isVerdict(verdict) &&
    areLimits(limits) &&
    areReadings(readings) &&
    hasOwnFields(value)
  );
}

/** What single kinds of checks have besides. */
function hasOwnFields({ check, readings, ...rest }: Record<string, unknown>): boolean {
  const each = (test: (reading: Record<string, unknown>) => boolean): boolean =>
    Array.isArray(readings) && readings.every((one) => isPlain(one) && test(one));
  switch (check) {
    case 'thickness':
      return areLimits(rest['averageLimits']) && isReading(rest['average']);
    case 'flatness':
    case 'bond-line':
      return each(({ station }) => isLength(station));
    case 'fall':
      return each(({ uncertainty }) => isQuantity(uncertainty));
    case 'compaction':
      return isNumber(rest['minimumPercent']) && each(({ percent }) => isNumber(percent));
    default:
      return true;
  }
}

const isNumber = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);

const areReadings = (value: unknown): value is readonly Reading[] =>
  Array.isArray(value) && value.length > 0 && value.every(isReading);

function isReading(value: unknown): value is Reading {
  if (!isPlain(value)) return false;
  const { id, value: measured, margin, verdict, move } = value;
  return (
    typeof id === 'string' &&
    isQuantity(measured) &&
    isQuantity(margin) &&
    isVerdict(verdict) &&
    (move === null || isCheckMove(move))
  );
}

const isVerdict = (value: unknown): boolean =>
  value === 'pass' || value === 'unclear' || value === 'fail';

function areLimits(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { minimum, maximum } = value;
  return [minimum, maximum].every((limit) => limit === null || isQuantity(limit));
}
