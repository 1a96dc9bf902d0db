import { entry } from '../../invariant.js';
import { fault, type SettlineError } from '../../errors.js';
import { optional } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { given, procedureStep, withWorking, type Worked } from '../../working.js';
import { dateOf, weekdayOf, type Weekday } from './calendar.js';
import {
  dayField,
  locateRule,
  workingDays,
  type LocateRule,
  type ReadRule,
} from './locate-rule.js';

/** A locate request, and the rule that counts its days. */
export interface LocateWindowOptions {
  /** Date of the locate request, `YYYY-MM-DD`, 1900 to 2999. */
  readonly request: string;
  /** The rule of the law where the dig is. */
  readonly rule: LocateRule;
  /** A date to check, `YYYY-MM-DD`. Default: none. */
  readonly today?: string;
}

const OPTIONS = shapeOf<LocateWindowOptions>()({
  request: dayField,
  rule: locateRule,
  today: optional(dayField),
});

/** The days on which marked ground may be dug. */
export interface LocateWindow extends Cautioned, Worked {
  /** Days of notice, each a date. */
  readonly notice: readonly string[];
  /** First day on which digging may start. */
  readonly earliest: string;
  /** Its day of the week. */
  readonly earliestWeekday: Weekday;
  /** Last day on which the marks are valid. */
  readonly expires: string;
  /** Whether the day to check is before, in or after the window; null if no day is given. */
  readonly status: 'wait' | 'open' | 'expired' | null;
  /** Calendar days from the day to check to the last day, both counted; null if no day is given. */
  readonly daysLeft: number | null;
  /** What to do on the day to check; null if no day is given. */
  readonly note: string | null;
}

/**
 * The days on which a located dig may be opened, counted as your law counts: working days of notice
 * after the request, weekends and holidays left out, and the life of the marks. Calendar arithmetic
 * only: dates are text, without clock or time zone.
 *
 * @param options - see {@link LocateWindowOptions}
 * @returns the days counted, first and last day, where the day to judge is, what to do
 * @throws `TEXT_UNREADABLE`, `REQUIRED`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_TYPE`,
 *   `TOO_MANY`, `LIMITS_CONTRADICT` (the marks expire before digging may start) and the reading codes
 * @source derived
 * @example
 * const rule = {
 *   workingDays: 2,
 *   requestDayCounts: false,
 *   start: 'working-day-after',
 *   weekend: ['Saturday', 'Sunday'],
 *   holidays: ['2030-05-24'],
 *   validity: { days: 14, count: 'calendar', from: 'request' },
 * } as const;
 * const ticket = locateWindow({ request: '2030-05-22', rule });
 * ticket.notice //=> ['2030-05-23', '2030-05-27']
 * ticket.earliest //=> '2030-05-28'
 * ticket.expires //=> '2030-06-05'
 */
export function locateWindow(options: LocateWindowOptions): LocateWindow {
  const { request, rule, today } = readOptions(options, OPTIONS);
  const notice = workingDays(request, rule.workingDays, rule, rule.requestDayCounts);
  const last = notice.at(-1) ?? request;
  const earliest =
    rule.start === 'last-day-of-notice' ? last : entry(workingDays(last, 1, rule, false), 0);
  const expires = lastValidDay(rule.validity.from === 'request' ? request : earliest, rule);
  if (expires < earliest) throw expiresTooSoon(dateOf(expires), dateOf(earliest));
  const status =
    today === undefined ? null : today < earliest ? 'wait' : today > expires ? 'expired' : 'open';
  const found = {
    notice: notice.map(dateOf),
    earliest: dateOf(earliest),
    earliestWeekday: weekdayOf(earliest),
    expires: dateOf(expires),
    status,
    daysLeft: today === undefined ? null : Math.max(0, expires - today + 1),
    note: status === null ? null : noteText(status, dateOf(earliest), dateOf(expires)),
    cautions: cautionsFor('utilities'),
  } as const;
  return withWorking(found, () => [
    procedureStep({
      title: 'First day to dig',
      procedure: 'locateWindow',
      method:
        'Counts the working days of notice after the request, weekends and holidays left out, and returns the day on which the rule then lets the dig start.',
      given: [
        given('r', 'request', dateOf(request)),
        given('n', 'working days of notice', rule.workingDays),
        given('d', 'days counted', found.notice.join(', ')),
      ],
      result: given('s', 'earliest', found.earliest),
      source: 'derived',
    }),
  ]);
}

function lastValidDay(from: number, rule: ReadRule): number {
  const { days, count } = rule.validity;
  return count === 'calendar' ? from + days : (workingDays(from, days, rule, false).at(-1) ?? from);
}

const expiresTooSoon = (expires: string, earliest: string): SettlineError =>
  fault(
    'LIMITS_CONTRADICT',
    `the marks expire on ${expires}, before digging may start on ${earliest}. Check validity`,
    { expires, earliest },
    ['rule', 'validity'],
  );

function noteText(status: 'wait' | 'open' | 'expired', earliest: string, expires: string): string {
  switch (status) {
    case 'wait':
      return `Do not dig before ${earliest}, and not before every owner has answered.`;
    case 'expired':
      return `The marks expired on ${expires}. Do not dig. Renew the request.`;
    default:
      return `The notice period is over. Dig only if every owner has answered and the marks still show. Renew before ${expires}.`;
  }
}
