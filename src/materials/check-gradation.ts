import { makeReader, type Reader } from '../input/reader.js';
import type { SourceId } from '../sources/catalogue.js';
import { GRADATIONS, type GradationName } from '../sources/gradations.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { exactOf, type Length } from '../units/quantity.js';
import {
  compareRatios,
  decimalRatio,
  divideRatios,
  ratioToDecimal,
  wholeRatio,
  ZERO_RATIO,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { type Verdict, worstVerdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { verdictWithin } from './within-limits.js';

/** What passes a sieve, from the laboratory's sheet. */
export interface SievePassingInput {
  readonly sieve: LengthInput;
  /** Percent by mass: 0 to 100. */
  readonly percent: number | string;
}

/** What may pass a sieve. */
export interface SieveLimitsInput {
  readonly sieve: LengthInput;
  /** Percent by mass: 0 to 100. */
  readonly least: number | string;
  readonly most: number | string;
}

/** One sieve of the limits. */
export interface SieveFinding {
  readonly sieve: Length;
  /** Null where the sheet has no such sieve. */
  readonly percent: Decimal | null;
  readonly least: Decimal;
  readonly most: Decimal;
  readonly verdict: Verdict | 'not-measured';
  /** More passes than may: too fine; less: too coarse. */
  readonly finding: 'too-fine' | 'too-coarse' | null;
}

/** Whether a sand lies within its gradation limits. */
export interface GradationCheck extends Worked {
  /** `unclear` also where a sieve of the limits was not measured. */
  readonly verdict: Verdict;
  readonly sieves: readonly SieveFinding[];
  /** Sieves of the sheet that the limits do not mention. */
  readonly unused: readonly Length[];
  readonly meaning: string;
  /** Null for limits of the job's own. */
  readonly source: SourceId | null;
}

/**
 * Checks the sieve analysis of a sand against gradation limits, sieve by sieve; a percentage on a limit
 * passes. Nothing is read between sieves: a sieve that was not measured leaves the verdict open. Two
 * openings within one percent of each other are the same sieve (9.5 and 9.52 mm).
 *
 * @param options.passing - from the laboratory: `sieve` [length] and `percent` passing by mass, 0 to 100
 * @param options.limits - the name of a published table of `GRADATIONS`, or the job's own: `sieve`
 *   [length], `least` and `most` percent, 0 to 100. Two limits of `bedding-sand` are most likely
 *   misprints: `bedding-sand-capped` is the same table without them
 * @param options.uncertainty - of a percentage, either way, in percent; default 0. It does not count for
 *   0 and 100: that all or nothing passed is seen, not weighed
 * @returns verdict, each sieve, and what it means
 * @throws `PASSING_RISES`, `DUPLICATE_SIEVE`, `OUT_OF_RANGE`, `NEGATIVE`, `UNKNOWN_CHOICE`,
 *   `EMPTY_LIST` and the reading codes
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
 * check.sieves[2]?.finding //=> 'too-fine'
 */
export function checkGradation(options: {
  readonly passing: readonly SievePassingInput[];
  readonly limits: GradationName | readonly SieveLimitsInput[];
  readonly uncertainty?: number | string;
}): GradationCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const passing = readPassing(reader, fields['passing']);
  const limits = readLimits(reader, fields['limits']);
  const doubt = reader.number(fields['uncertainty'] ?? 0, ['uncertainty'], PERCENT);
  reader.finish();

  const sieves = limits.rows.map((row) => findingOn(row, passing, doubt));
  const unused = passing
    .filter(({ sieve }) => !limits.rows.some((row) => isSameSieve(row.sieve, sieve)))
    .map(({ sieve }) => sieve);
  const verdict = worstVerdict(
    sieves.map((sieve) => (sieve.verdict === 'not-measured' ? 'unclear' : sieve.verdict)),
  );
  const check = {
    verdict,
    sieves,
    unused,
    meaning: meaningOf(verdict, sieves),
    source: limits.source,
  };
  return withWorking(check, () =>
    sieves.map(({ sieve, percent, least, most, verdict: one }) => ({
      title: 'Percent passing within its limits',
      formula: 'p0 <= p <= p1',
      given: [
        given('s', 'sieve', sieve),
        given('p0', 'least percent', least),
        given('p', 'percent passing', percent ?? 'not measured'),
        given('p1', 'most percent', most),
      ],
      result: given('v', 'verdict', one),
      source: limits.source ?? ('derived' as const),
    })),
  );
}

const PERCENT = Object.freeze({ sign: 'not-negative', most: 100 } as const);
const SIEVE = Object.freeze({ sign: 'positive', most: length(200, 'mm') } as const);
const NAMES = [
  'bedding-sand',
  'bedding-sand-capped',
  'concrete-sand-c33',
  'joint-sand',
  'joint-sand-c144-natural',
  'joint-sand-c144-manufactured',
  'washed-coarse-sand',
] as const satisfies GradationName[];

interface Passing {
  readonly sieve: Length;
  readonly percent: Decimal;
}

interface LimitRow {
  readonly sieve: Length;
  readonly least: Decimal;
  readonly most: Decimal;
}

/** Coarsest first. */
function readPassing(reader: Reader, value: unknown): Passing[] {
  const rows = reader.list(value, ['passing']).map((item, index) => {
    const path = ['passing', index];
    const fields = reader.object(item, path);
    return {
      sieve: reader.quantity('length', fields['sieve'], [...path, 'sieve'], SIEVE),
      percent: reader.number(fields['percent'], [...path, 'percent'], PERCENT),
      path: [...path, 'percent'],
    };
  });
  refuseTwins(
    reader,
    rows.map(({ sieve }) => sieve),
    'passing',
  );
  const sorted = [...rows].sort((a, b) => b.sieve.compare(a.sieve));
  sorted.slice(1).forEach((finer, index) => {
    const coarser = sorted[index] ?? finer;
    if (finer.percent.lte(coarser.percent)) return;
    reader.fail(
      'PASSING_RISES',
      finer.path,
      `${finer.percent.toString()} % passes a finer sieve than the ${coarser.percent.toString()} % before: percent passing or percent retained?`,
    );
  });
  return sorted;
}

function readLimits(reader: Reader, value: unknown) {
  if (!Array.isArray(value)) {
    const name = reader.choice(value, ['limits'], NAMES);
    const table = GRADATIONS[name];
    const rows = table.map(({ sieve, least, most }): LimitRow => {
      const figure = (text: string) => ratioToDecimal(readNumber(text));
      return {
        sieve: length(`${sieve.value} ${sieve.unit}`),
        least: figure(least.value),
        most: figure(most.value),
      };
    });
    return { rows, source: table[0]?.sieve.source ?? null };
  }
  const rows = reader.list(value, ['limits']).map((item, index): LimitRow => {
    const path = ['limits', index];
    const fields = reader.object(item, path);
    const percent = (name: 'least' | 'most') =>
      reader.number(fields[name], [...path, name], PERCENT);
    const row = {
      sieve: reader.quantity('length', fields['sieve'], [...path, 'sieve'], SIEVE),
      least: percent('least'),
      most: percent('most'),
    };
    if (row.most.lt(row.least)) {
      reader.fail('OUT_OF_RANGE', [...path, 'most'], 'the most is less than the least');
    }
    return row;
  });
  refuseTwins(
    reader,
    rows.map(({ sieve }) => sieve),
    'limits',
  );
  return { rows: rows.sort((a, b) => b.sieve.compare(a.sieve)), source: null };
}

function refuseTwins(reader: Reader, sieves: readonly Length[], name: string): void {
  sieves.forEach((sieve, index) => {
    const twin = sieves.findIndex((other) => isSameSieve(sieve, other));
    if (twin === index || sieve.isZero() || sieve.isNegative()) return;
    reader.fail('DUPLICATE_SIEVE', [name, index, 'sieve'], `stands twice, first at ${twin}`);
  });
}

/** Openings within one percent of the first. */
function isSameSieve(a: Length, b: Length): boolean {
  const apart = exactOf(a.minus(b).abs());
  return compareRatios(apart, divideRatios(exactOf(a.abs()), wholeRatio(100))) <= 0;
}

function findingOn(row: LimitRow, passing: readonly Passing[], doubt: Decimal): SieveFinding {
  const found = passing.find(({ sieve }) => isSameSieve(row.sieve, sieve));
  if (found === undefined) {
    return { ...row, percent: null, verdict: 'not-measured', finding: null };
  }
  const limits = { least: decimalRatio(row.least), most: decimalRatio(row.most) };
  const isSeen = found.percent.isZero() || found.percent.eq(100);
  const verdict = verdictWithin(
    decimalRatio(found.percent),
    limits,
    isSeen ? ZERO_RATIO : decimalRatio(doubt),
  );
  const isFine = found.percent.times(2).gt(row.least.plus(row.most));
  const finding = verdict === 'pass' ? null : isFine ? 'too-fine' : 'too-coarse';
  return { ...row, percent: found.percent, verdict, finding };
}

function meaningOf(verdict: Verdict, sieves: readonly SieveFinding[]): string {
  const has = (finding: SieveFinding['finding']) =>
    sieves.some((sieve) => sieve.verdict === 'fail' && sieve.finding === finding);
  if (verdict === 'pass') return 'The sand lies within its limits on every sieve.';
  if (verdict === 'unclear') {
    const isOpen = sieves.some((sieve) => sieve.verdict === 'not-measured');
    return isOpen
      ? 'Not every sieve of the limits was measured: ask the laboratory for the missing ones.'
      : 'Too close to a limit to tell: have it tested again.';
  }
  if (has('too-fine') && has('too-coarse')) {
    return 'The sand is too fine on one sieve and too coarse on another: it is gap-graded for this use. Take another sand.';
  }
  return has('too-fine')
    ? 'The sand is too fine: it holds water, and moves or washes out. Take a coarser, washed sand.'
    : 'The sand is too coarse: it will not bed or fill as it should. Take a finer sand.';
}
