import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { given, withWorking, type Worked } from '../../working.js';
import { dateOf, readDay, weekdayOf, WEEKDAYS, type Weekday } from './calendar.js';
import { readCount } from '../read-whole.js';

/** How the law counts, where the dig is. Nothing in it has a default. */
export interface LocateRule {
  /** Working days of notice. */
  readonly workingDays: number;
  /** Whether the day of the request is the first of them, if it is a working day. */
  readonly requestDayCounts: boolean;
  /** Digging may start on the last day of notice, or on the working day after it. */
  readonly start: 'last-day-of-notice' | 'working-day-after';
  /** Days of the week that do not count as working days. */
  readonly weekend: readonly Weekday[];
  /** Dates `YYYY-MM-DD` that do not count as working days. */
  readonly holidays: readonly string[];
  /** How long the marks hold: the last day is this many days after the day counted from. */
  readonly validity: {
    readonly days: number;
    readonly count: 'calendar' | 'working';
    readonly from: 'request' | 'start';
  };
}

/** When marked ground may be dug. */
export interface LocateWindow extends Worked {
  /** Days of notice that were counted. */
  readonly notice: readonly string[];
  /** First day on which digging may start. */
  readonly earliest: string;
  readonly earliestWeekday: Weekday;
  /** Last day on which the marks hold. */
  readonly expires: string;
  /** On the day asked for: too early, within the window or after it; null without such a day. */
  readonly status: 'wait' | 'open' | 'expired' | null;
  /** Calendar days from the day asked for to the last day, that one included; null without it. */
  readonly daysLeft: number | null;
  readonly action: string | null;
  readonly cautions: readonly Caution[];
}

/**
 * The days on which a located dig may be opened, counted as the caller's law counts: working days of
 * notice after the request, weekends and holidays left out, and the life of the marks. Pure calendar
 * arithmetic: dates are text, there is no clock and no time zone.
 *
 * @param options.request - date of the locate request, `YYYY-MM-DD`, 1900 to 2999
 * @param options.rule - `workingDays` (1 to 60), `requestDayCounts`, `start`, `weekend`, `holidays`,
 *   `validity`; all of them from the law where the dig is
 * @param options.today - a date to judge, `YYYY-MM-DD`
 * @returns the days counted, first and last day, where the given day stands, what to do
 * @throws `DATE_INVALID`, `REQUIRED`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading
 *   codes
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
export function locateWindow(options: {
  readonly request: string;
  readonly rule: LocateRule;
  readonly today?: string;
}): LocateWindow {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const request = readDay(reader, fields['request'], ['request']);
  const rule = readRule(reader, fields['rule'], ['rule']);
  const today =
    fields['today'] === undefined ? undefined : readDay(reader, fields['today'], ['today']);
  reader.finish();

  const notice = countOn(request, rule.workingDays, rule, rule.requestDayCounts);
  const last = notice.at(-1) ?? request;
  const earliest =
    rule.start === 'last-day-of-notice' ? last : (countOn(last, 1, rule, false)[0] ?? last);
  const expires = lastValidDay(rule.validity.from === 'request' ? request : earliest, rule);
  const status =
    today === undefined ? null : today < earliest ? 'wait' : today > expires ? 'expired' : 'open';
  const found = {
    notice: notice.map(dateOf),
    earliest: dateOf(earliest),
    earliestWeekday: weekdayOf(earliest),
    expires: dateOf(expires),
    status,
    daysLeft: today === undefined ? null : Math.max(0, expires - today + 1),
    action: status === null ? null : actionText(status, dateOf(earliest), dateOf(expires)),
    cautions: cautionsFor('utilities'),
  } as const;
  return withWorking(found, () => [
    {
      title: 'First day to dig',
      formula: 'working days of notice counted on from the request, then the day the rule names',
      given: [
        given('r', 'request', dateOf(request)),
        given('n', 'working days of notice', rule.workingDays),
        given('d', 'days counted', found.notice.join(', ')),
      ],
      result: given('s', 'earliest', found.earliest),
      source: 'derived',
    },
  ]);
}

interface ReadRule {
  readonly workingDays: number;
  readonly requestDayCounts: boolean;
  readonly start: LocateRule['start'];
  readonly isOff: (day: number) => boolean;
  readonly validity: LocateRule['validity'];
}

function readRule(reader: Reader, value: unknown, path: FieldPath): ReadRule {
  const fields = reader.object(value, path);
  const workingDays = readCount(reader, fields['workingDays'], [...path, 'workingDays'], 60);
  const weekend = readEach(reader, fields['weekend'], [...path, 'weekend'], (item, at) =>
    reader.choice(item, at, WEEKDAYS),
  );
  if (new Set(weekend).size === WEEKDAYS.length) {
    reader.fail('OUT_OF_RANGE', [...path, 'weekend'], 'no working day is left in the week');
  }
  const holidays = readEach(reader, fields['holidays'], [...path, 'holidays'], (item, at) =>
    readDay(reader, item, at),
  );
  const at = [...path, 'validity'];
  const validity = reader.object(fields['validity'], at);
  return {
    workingDays,
    requestDayCounts: reader.flag(fields['requestDayCounts'], [...path, 'requestDayCounts']),
    start: reader.choice(fields['start'], [...path, 'start'], [
      'last-day-of-notice',
      'working-day-after',
    ] as const),
    isOff: (day) => weekend.includes(weekdayOf(day)) || holidays.includes(day),
    validity: {
      days: readCount(reader, validity['days'], [...at, 'days'], 400),
      count: reader.choice(validity['count'], [...at, 'count'], ['calendar', 'working'] as const),
      from: reader.choice(validity['from'], [...at, 'from'], ['request', 'start'] as const),
    },
  };
}

/** Reads a list that may be empty, but must be there. */
function readEach<T>(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  read: (item: unknown, path: FieldPath) => T,
): T[] {
  if (Array.isArray(value) && value.length === 0) return [];
  return reader.list(value, path).map((item, index) => read(item, [...path, index]));
}

/** The next so many working days, the day itself among them if it counts. */
function countOn(from: number, days: number, rule: ReadRule, itselfCounts: boolean): number[] {
  const counted: number[] = [];
  for (let day = itselfCounts ? from : from + 1; counted.length < days; day += 1) {
    if (!rule.isOff(day)) counted.push(day);
  }
  return counted;
}

function lastValidDay(from: number, rule: ReadRule): number {
  const { days, count } = rule.validity;
  return count === 'calendar' ? from + days : (countOn(from, days, rule, false).at(-1) ?? from);
}

function actionText(status: 'wait' | 'open' | 'expired', earliest: string, expires: string) {
  switch (status) {
    case 'wait':
      return `Do not dig before ${earliest}, and not before every owner has answered.`;
    case 'expired':
      return `The marks ran out on ${expires}. Do not dig: renew the request.`;
    default:
      return `The notice has run. Dig only where every owner has answered and the marks still show; renew before ${expires}.`;
  }
}
