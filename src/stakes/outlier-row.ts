import type { Decimal } from '../units/decimal.js';
import type { Reader } from '../input/reader.js';
import type { Length } from '../units/quantity.js';
import { outlierCritical } from '../geometry/statistics/outlier-critical.js';

/** One stake against the line of all the others. */
export interface StakeAgainstOthers {
  readonly id: string;
  /** Offset from the line of the others: + left of travel in plan, + too high in profile. */
  readonly deleted: Length;
  /**
   * The same over its standard error, from the scatter of the others (externally studentized). Null
   * where the others stand exactly in line and there is no scatter to measure by.
   */
  readonly studentized: number | null;
  /** How much the stake holds the line: 1 / n for one in the middle, 1 for one that holds it alone. */
  readonly leverage: number;
  readonly isOutlier: boolean;
}

/** What the test of a row of stakes came to. */
export interface OutlierTest {
  /** Beyond this, either way, a studentized offset is an outlier's. */
  readonly critical: number;
  readonly degreesOfFreedom: number;
  readonly significance: number;
  /** The stake with the largest studentized offset. */
  readonly worst: string;
  /** The ids of the outliers. */
  readonly outliers: readonly string[];
  readonly note: string;
}

const SIGNIFICANCE = { sign: 'positive', most: 0.5 } as const;

/** The significance where none is given (common practice, no source). */
const USUAL = '0.05';

/** Reads the significance of a test. Internal. */
export const readSignificance = (reader: Reader, value: unknown): Decimal =>
  reader.number(value ?? USUAL, ['significance'], SIGNIFICANCE);

/** A stake before it is judged. Internal. */
export type Measured = Omit<StakeAgainstOthers, 'isOutlier'>;

/** Judges each stake of a row. Internal. */
export function judgeOutliers(
  measured: readonly Measured[],
  { tolerance, significance }: { readonly tolerance: Length; readonly significance: Decimal },
): OutlierTest & { readonly stakes: readonly StakeAgainstOthers[] } {
  const count = measured.length;
  const critical = outlierCritical({ count, significance: significance.toNumber() });
  const stakes = measured.map((stake) => {
    const isFar = stake.studentized === null || Math.abs(stake.studentized) > critical;
    return { ...stake, isOutlier: isFar && stake.deleted.abs().compare(tolerance) > 0 };
  });
  const outliers = stakes.filter(({ isOutlier }) => isOutlier).map(({ id }) => id);
  const worst = stakes.reduce((a, b) => (weight(b) > weight(a) ? b : a));
  const note = NOTES[outliers.length > 1 ? 'several' : outliers.length === 1 ? 'one' : 'none'];
  const significant = significance.toNumber();
  return {
    stakes,
    critical,
    degreesOfFreedom: count - 3,
    significance: significant,
    worst: worst.id,
    outliers,
    note,
  };
}

/** Without scatter to measure by, any offset weighs more than all that can be measured. */
const weight = ({ studentized, deleted }: Measured): number => {
  if (studentized !== null) return Math.abs(studentized);
  return deleted.isZero() ? 0 : Number.MAX_VALUE;
};

const NOTES = {
  none: 'No stake stands out from the scatter of the others.',
  one: 'One stake stands out: move it onto the line of the others, and check again.',
  several:
    'More than one stake stands out. Move the worst onto the line of the others, and check again: one bad stake can make a good one look bad.',
} as const;
