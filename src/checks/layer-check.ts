import type { SourceId } from '../sources/catalogue.js';
import type { Caution, Cautioned } from '../sources/cautions.js';
import type { Dimension } from '../units/catalogue.js';
import type { AnyQuantity, Length, Quantity } from '../units/quantity.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { withWorking, type Step, type Worked } from '../working.js';
import { marginOf, type Limits } from './limits.js';
import type { ToleranceOrigin } from './tolerance.js';

/** What a check is about. */
export type CheckKind =
  | 'level'
  | 'thickness'
  | 'flatness'
  | 'lippage'
  | 'joint-width'
  | 'bond-line'
  | 'fall'
  | 'compaction';

/** What to do at a reading that is out of tolerance. */
export type CheckAction =
  'cut' | 'add' | 'raise' | 'lower' | 'close' | 'open' | 'move-left' | 'move-right' | 'compact';

/** A correction, with its length if it has one. */
export interface CheckMove {
  /** What to do. */
  readonly action: CheckAction;
  /** Length of the correction, not negative; null for an action without one. */
  readonly by: Length | null;
}

/** One reading compared with its limits. */
export interface CheckedReading<Q extends AnyQuantity = Length> {
  /** The reading. */
  readonly id: string;
  /** The value that is judged: a gap, a thickness, a difference of level ... ... */
  readonly value: Q;
  /** Margin to the nearer limit; negative out of limits. */
  readonly margin: Q;
  /** How the value compares with its limits. */
  readonly verdict: Verdict;
  /** The correction; null if the reading does not fail. */
  readonly move: CheckMove | null;
}

/** Fields of every check of a layer. */
export interface LayerCheck<
  Q extends AnyQuantity = AnyQuantity,
  R extends CheckedReading<Q> = CheckedReading<Q>,
>
  extends Cautioned, Worked, ToleranceOrigin {
  /** Kind of check. */
  readonly check: CheckKind;
  /** The layer or place that was checked, such as `base`. */
  readonly subject: string;
  /** The verdict on the whole layer. */
  readonly verdict: Verdict;
  /** Limits of the value that is judged. */
  readonly limits: Limits<Q | null>;
  /** Every reading, judged. */
  readonly readings: readonly R[];
  /** The readings that do not pass. */
  readonly outOfTolerance: readonly R[];
  /** The outcome in words, without figures. */
  readonly note: string;
}

/** A value to judge. Internal. */
export interface Judged<D extends Dimension> {
  readonly id: string;
  readonly value: Quantity<D>;
  readonly limits: Limits<Quantity<D> | null>;
  readonly uncertainty: Quantity<D>;
}

/** Judges a value; calls `moveFor` only if it fails. Internal. */
export function judge<D extends Dimension>(
  { id, value, limits, uncertainty }: Judged<D>,
  moveFor: (value: Quantity<D>) => CheckMove,
): CheckedReading<Quantity<D>> {
  const margin = marginOf(value, limits);
  const verdict = verdictOf(margin, uncertainty);
  return { id, value, margin, verdict, move: verdict === 'fail' ? moveFor(value) : null };
}

/** A move by a length, either way. Internal. */
export const move = (action: CheckAction, by: Length | null): CheckMove => ({
  action,
  by: by === null ? null : by.abs(),
});

/** The move of a value that fails to the limit it is nearest to. Internal. */
export const moveToLimit =
  (limits: Limits<Length | null>, above: CheckAction, below: CheckAction) =>
  (value: Length): CheckMove => {
    const isAbove = limits.maximum !== null && value.compare(limits.maximum) > 0;
    return move(isAbove ? above : below, marginOf(value, limits));
  };

/** The source to show beside a step. Internal. */
export const sourceOf = ({ source }: ToleranceOrigin): SourceId => source ?? 'derived';

/** The parts of a check. Internal. */
export interface CheckParts<Q extends AnyQuantity, R extends CheckedReading<Q>> {
  readonly subject: string;
  readonly limits: Limits<Q | null>;
  readonly origin: ToleranceOrigin;
  readonly readings: readonly R[];
  /** Default: the worst of the readings. */
  readonly verdict?: Verdict;
  readonly note?: string;
  readonly cautions?: readonly Caution[];
}

/** Makes the result of a check from its parts, and adds the working. Internal. */
export function layerCheck<
  Q extends AnyQuantity,
  R extends CheckedReading<Q>,
  P extends CheckParts<Q, R>,
>(parts: P, makeSteps: () => readonly Step[]) {
  const { origin, readings, cautions = [], ...rest } = parts;
  const verdict = parts.verdict ?? worstVerdict(readings.map((reading) => reading.verdict));
  const check = {
    ...rest,
    verdict,
    toleranceSet: origin.toleranceSet,
    source: origin.source,
    readings,
    outOfTolerance: readings.filter((reading) => reading.verdict !== 'pass'),
    note: parts.note ?? NOTES[verdict],
    cautions,
  };
  return withWorking(check, makeSteps);
}

const NOTES: Readonly<Record<Verdict, string>> = {
  pass: 'All readings are within tolerance.',
  unclear: 'Too close to a limit to tell. Take more readings, then check again.',
  fail: 'Out of tolerance. Make the corrections listed, then measure again.',
};
