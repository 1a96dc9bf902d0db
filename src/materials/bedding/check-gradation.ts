import { readOptions } from '../../input/shape.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { Decimal } from '../../units/decimal.js';
import type { Length } from '../../units/quantity.js';
import { decimalRatio, ZERO_RATIO } from '../../units/ratio.js';
import { type Verdict, worstVerdict } from '../../verdict.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';
import { verdictWithin } from '../within-limits.js';
import {
  checkSheet,
  coarsestFirst,
  GRADATION_OPTIONS,
  isSameSieve,
  type CheckGradationOptions,
  type LimitRow,
  type Passing,
} from './read-gradation.js';

/** One sieve of the limits. */
export interface SieveFinding {
  /** Opening of the sieve. */
  readonly sieve: Length;
  /** Percent by mass that passes; null where the sheet has no such sieve. */
  readonly percent: number | null;
  /** Minimum percent passing. */
  readonly minimum: number;
  /** Maximum percent passing. */
  readonly maximum: number;
  /** Null where it was not measured. */
  readonly verdict: Verdict | null;
  /**
   * `too-fine` if more passes than the maximum, `too-coarse` if less than the minimum; null if it
   * is within its limits or was not measured.
   */
  readonly code: 'too-fine' | 'too-coarse' | null;
}

/** Check of a sand against gradation limits. */
export interface GradationCheck extends Worked {
  /** `unclear` also if a sieve of the limits was not measured. */
  readonly verdict: Verdict;
  /** The sieves of the limits, coarsest first. */
  readonly sieves: readonly SieveFinding[];
  /** Sieves of the sheet that have no limit. */
  readonly unused: readonly Length[];
  /** What it means, and what to do. */
  readonly note: string;
  /** Where the limits are printed; null for your own. */
  readonly source: SourceId | null;
}

/**
 * Checks the sieve analysis of a sand against gradation limits, sieve by sieve; a percentage on a
 * limit passes. Nothing is interpolated between sieves: a sieve that was not measured leaves the
 * verdict unclear. Openings within one percent of each other count as the same sieve (9.5 and 9.52
 * mm).
 *
 * @param options - see {@link CheckGradationOptions}
 * @returns verdict, each sieve, and what it means
 * @throws `PASSING_RISES`, `DUPLICATE_ID`, `LIMITS_CONTRADICT`, `OUT_OF_RANGE`, `NEGATIVE`,
 *   `UNKNOWN_CHOICE`, `EMPTY_LIST` and the reading codes
 * @source bedding-sand-clause
 * @source joint-sand-clause
 * @source bedding-sand-guide
 * @source astm-c33
 * @source astm-c144
 * @source washed-sand-guide
 * @example
 * const check = checkGradation({
 *   passing: [
 *     { sieve: '2.36 mm', percent: 100 },
 *     { sieve: '1.18 mm', percent: 94 },
 *     { sieve: '0.6 mm', percent: 91 },
 *     { sieve: '0.3 mm', percent: 40 },
 *     { sieve: '0.15 mm', percent: 20 },
 *     { sieve: '0.075 mm', percent: 12 },
 *   ],
 *   limits: 'joint-sand',
 * });
 * check.verdict //=> 'fail'
 * check.sieves[2]?.code //=> 'too-fine'
 */
export function checkGradation(options: CheckGradationOptions): GradationCheck {
  const { passing, limits, uncertainty } = readOptions(options, GRADATION_OPTIONS, checkSheet);
  const sieves = coarsestFirst(limits.rows).map((row) => findingOn(row, passing, uncertainty));
  const unused = coarsestFirst(passing)
    .filter(({ sieve }) => !limits.rows.some((row) => isSameSieve(row.sieve, sieve)))
    .map(({ sieve }) => sieve);
  const verdict = worstVerdict(sieves.map((sieve) => sieve.verdict ?? 'unclear'));
  const check = { verdict, sieves, unused, note: noteOn(verdict, sieves), source: limits.source };
  return withWorking(check, () =>
    sieves.flatMap((finding) => stepsOn(finding, uncertainty, limits.source ?? 'derived')),
  );
}

function stepsOn(finding: SieveFinding, uncertainty: Decimal, source: SourceId): Step[] {
  const { sieve, percent, minimum, maximum, verdict } = finding;
  if (percent === null || verdict === null) return [];
  return [
    formulaStep({
      title: `Percent passing ${String(sieve)} within its limits`,
      formula:
        'v = p + u < p0 or p - u > p1 ? "fail" : (p - u < p0 or p + u > p1 ? "unclear" : "pass")',
      given: [
        given('p0', 'minimum percent', minimum),
        given('p', 'percent passing', percent),
        given('p1', 'maximum percent', maximum),
        given('u', 'uncertainty, none at 0 and 100', isSeen(percent) ? 0 : uncertainty),
      ],
      result: given('v', 'verdict', verdict),
      source,
    }),
  ];
}

/** Nothing and everything are seen, not measured. */
const isSeen = (percent: number): boolean => percent === 0 || percent === 100;

function findingOn(row: LimitRow, passing: readonly Passing[], doubt: Decimal): SieveFinding {
  const found = passing.find(({ sieve }) => isSameSieve(row.sieve, sieve));
  const limits = {
    sieve: row.sieve,
    minimum: row.minimum.toNumber(),
    maximum: row.maximum.toNumber(),
  };
  if (found === undefined) return { ...limits, percent: null, verdict: null, code: null };
  const verdict = verdictWithin(
    decimalRatio(found.percent),
    { minimum: decimalRatio(row.minimum), maximum: decimalRatio(row.maximum) },
    isSeen(found.percent.toNumber()) ? ZERO_RATIO : decimalRatio(doubt),
  );
  const isFine = found.percent.times(2).gt(row.minimum.plus(row.maximum));
  const code = verdict === 'pass' ? null : isFine ? 'too-fine' : 'too-coarse';
  return { ...limits, percent: found.percent.toNumber(), verdict, code };
}

function noteOn(verdict: Verdict, sieves: readonly SieveFinding[]): string {
  const has = (code: SieveFinding['code']) =>
    sieves.some((sieve) => sieve.verdict === 'fail' && sieve.code === code);
  if (verdict === 'pass') return 'The sand is within its limits on every sieve.';
  if (verdict === 'unclear') {
    return sieves.some((sieve) => sieve.verdict === null)
      ? 'Not every sieve of the limits was measured. Ask the laboratory for the missing ones.'
      : 'Too close to a limit to tell. Have it tested again.';
  }
  if (has('too-fine') && has('too-coarse')) {
    return 'The sand is too fine on one sieve and too coarse on another: it is gap-graded for this use. Take another sand.';
  }
  return has('too-fine')
    ? 'The sand is too fine: it holds water, and moves or washes out. Take a coarser, washed sand.'
    : 'The sand is too coarse: it will not bed or fill as it should. Take a finer sand.';
}
