import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { subtractRatios, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { readShots, type DayShotInput, type ReadShot } from './day-shots.js';
import { ALLOWED, ELEVATION, READING } from './limits.js';
import { correctionsOf } from './spread-misclosure.js';

/** A reading with what the checks say of it. */
export interface DayShot {
  readonly point: string;
  /** From the height of instrument of the morning. */
  readonly elevation: Length;
  /** `suspect`: taken after the last check that kept the rule; `check`: on a known mark. */
  readonly status: 'good' | 'suspect' | 'check';
  /** What the adjustment adds; only where the rule is kept. */
  readonly correction?: Length;
  readonly adjusted?: Length;
}

/** A check on a known mark. */
export interface BenchmarkCheck {
  readonly point: string;
  /** Computed less known. */
  readonly misclosure: Length;
  /** What it changed by since the check before: how far the line of sight sank, - where it rose. */
  readonly change: Length;
  readonly keeps: boolean;
}

/** A day of readings from one set-up, closed on a known mark. */
export interface ClosedDay extends Worked {
  readonly instrumentHeight: Length;
  /** Of the last check: computed less known. */
  readonly misclosure: Length;
  readonly allowable: Length;
  /** True where every check keeps the rule. */
  readonly accepted: boolean;
  readonly checks: readonly BenchmarkCheck[];
  readonly shots: readonly DayShot[];
  /** Points whose levels are not to be used. */
  readonly suspects: readonly string[];
  /** What to do. */
  readonly action: string;
}

/**
 * Closes a day of readings from one set-up on a known mark: `HI = benchmark + opening reading`,
 * `misclosure = HI - closing reading - known`. Between checks that keep the rule the misclosure is
 * taken off evenly in time (or from shot to shot); what was shot after the last good check is suspect,
 * and is not adjusted. A check at midday halves what is lost.
 *
 * @param options.benchmark - elevation of the mark of the morning [length]
 * @param options.open - the opening reading on it [length, 0 to 20 m]
 * @param options.shots - in order, each with `point`, `reading` [length], `known` [length] where it is
 *   a check, and `after` [time] since the opening for all or none; the last one is a check
 * @param options.allowable - greatest misclosure of a check [length]; no default, `allowableMisclosure`
 *   works out a rule
 * @returns height of instrument, misclosure [length, computed less known], whether all is accepted, the
 *   checks, the shots with elevation, correction and adjusted level [length], the suspects, what to do
 * @throws `NO_CLOSING_SHOT`, `REQUIRED` (some times missing), `NOT_INCREASING`, `NEGATIVE`,
 *   `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const day = closeBenchmark({
 *   benchmark: '30 m',
 *   open: '1.42 m',
 *   shots: [
 *     { point: 'N1', reading: '1.31 m' },
 *     { point: 'BM', reading: '1.409 m', known: '30 m' },
 *   ],
 *   allowable: '6 mm',
 * });
 * day.misclosure.to('mm').toString() //=> '11'
 * day.accepted //=> false
 * day.suspects //=> ['N1']
 */
export function closeBenchmark(options: {
  readonly benchmark: LengthInput;
  readonly open: LengthInput;
  readonly shots: readonly DayShotInput[];
  readonly allowable: LengthInput;
}): ClosedDay {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const benchmark = reader.quantity('length', fields['benchmark'], ['benchmark'], ELEVATION);
  const open = reader.quantity('length', fields['open'], ['open'], READING);
  const allowable = reader.quantity('length', fields['allowable'], ['allowable'], ALLOWED);
  const read = readShots(reader, fields['shots']);
  reader.finish();
  const instrumentHeight = benchmark.plus(open);
  const shots = read.map((shot) => ({ ...shot, elevation: instrumentHeight.minus(shot.reading) }));
  const checks = checksOf(shots, allowable);
  const accepted = checks.every(({ keeps }) => keeps);
  const closed = runsOf(shots).flatMap(adjuster(allowable));
  const suspects = closed.flatMap(({ point, status }) => (status === 'suspect' ? [point] : []));
  const misclosure = checks.at(-1)?.misclosure ?? NOTHING;
  const result = {
    instrumentHeight,
    misclosure,
    allowable,
    accepted,
    checks,
    shots: closed,
    suspects,
  };
  return withWorking({ ...result, action: actionFor(checks, suspects) }, (): Step[] => [
    {
      title: 'Height of instrument',
      formula: 'HI = BM + BS',
      given: [given('BM', 'benchmark', benchmark), given('BS', 'opening reading', open)],
      result: given('HI', 'height of instrument', instrumentHeight),
      source: 'grade-with-a-level',
    },
    {
      title: 'Misclosure at the end',
      formula: 'm = HI - r - z0',
      given: [
        given('HI', 'height of instrument', instrumentHeight),
        given('r', 'closing reading', read.at(-1)?.reading ?? NOTHING),
        given('z0', 'known level', read.at(-1)?.known ?? NOTHING),
      ],
      result: given('m', 'misclosure', misclosure),
      source: 'derived',
    },
  ]);
}

const NOTHING = length(0, 'm');

interface Shot extends ReadShot {
  readonly elevation: Length;
}

/** Computed less known, where a shot is a check. */
const missOf = ({ elevation, known }: Shot): Length | undefined =>
  known === undefined ? undefined : elevation.minus(known);

function checksOf(shots: readonly Shot[], allowable: Length): BenchmarkCheck[] {
  let before = NOTHING;
  return shots.flatMap((shot) => {
    const misclosure = missOf(shot);
    if (misclosure === undefined) return [];
    const change = misclosure.minus(before);
    before = misclosure;
    const keeps = misclosure.abs().compare(allowable) <= 0;
    return [{ point: shot.point, misclosure, change, keeps }];
  });
}

/** The shots in runs that each end with a check; nothing is left over for the last run. */
function runsOf(shots: readonly Shot[]): Shot[][] {
  const runs: Shot[][] = [[]];
  for (const shot of shots) {
    runs.at(-1)?.push(shot);
    if (shot.known !== undefined) runs.push([]);
  }
  return runs;
}

/** Adjusts run after run, until a check breaks the rule. */
function adjuster(allowable: Length) {
  let start = { miss: NOTHING, at: ZERO_RATIO as Ratio };
  let isGood = true;
  return (run: readonly Shot[]): DayShot[] => {
    const last = run.at(-1);
    const miss = (last === undefined ? undefined : missOf(last)) ?? NOTHING;
    isGood = isGood && miss.abs().compare(allowable) <= 0;
    if (!isGood) {
      return run.map(({ point, elevation, known }) => ({
        point,
        elevation,
        status: known === undefined ? ('suspect' as const) : ('check' as const),
      }));
    }
    const along = run.map(({ at }) => subtractRatios(at, start.at));
    const more = correctionsOf(miss.minus(start.miss), along);
    const before = start.miss;
    const shots = run.map(({ point, elevation, known }, k): DayShot => {
      const status = known === undefined ? 'good' : 'check';
      const correction = (more[k] ?? NOTHING).minus(before);
      return { point, elevation, status, correction, adjusted: elevation.plus(correction) };
    });
    start = { miss, at: last?.at ?? start.at };
    return shots;
  };
}

function actionFor(checks: readonly BenchmarkCheck[], suspects: readonly string[]): string {
  const broken = checks.find(({ keeps }) => !keeps);
  if (broken === undefined) return 'All checks keep the rule. Use the adjusted levels.';
  const again =
    suspects.length === 0
      ? 'No point was shot since the last good check.'
      : `Do not use ${suspects.join(', ')}: set up again and shoot them again.`;
  return `The check on ${broken.point} breaks the rule: the instrument moved, or a reading slipped. ${again}`;
}
