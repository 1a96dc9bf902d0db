import { choice, custom, flag, list, object, whole } from '../../input/field.js';
import { MARK_DAYS, NOTICE_DAYS } from '../../input/ranges.js';
import { shapeOf, type Check, type Field, type Values } from '../../input/shape.js';
import { readDay, WEEKDAYS, weekdayOf, type Weekday } from './calendar.js';

/** How long locate marks are valid. */
export interface MarkValidity {
  /** The last day is this many days after the day counted from, 1 to 400. */
  readonly days: number;
  /** Whether all days count, or working days only. */
  readonly count: 'calendar' | 'working';
  /** Counted from the day of the request, or from the first day of digging. */
  readonly from: 'request' | 'start';
}

/** The rule of the law where the dig is. No field has a default. */
export interface LocateRule {
  /** Working days of notice, 1 to 60. */
  readonly workingDays: number;
  /** True if the day of the request counts as the first of them (if it is a working day). */
  readonly requestDayCounts: boolean;
  /** Whether digging may start on the last day of notice, or on the working day after it. */
  readonly start: 'last-day-of-notice' | 'working-day-after';
  /** Days of the week that are not working days. May be empty. */
  readonly weekend: readonly Weekday[];
  /** Dates `YYYY-MM-DD` that are not working days. May be empty. */
  readonly holidays: readonly string[];
  /** How long the marks are valid. */
  readonly validity: MarkValidity;
}

const VALIDITY = shapeOf<MarkValidity>()({
  days: whole(MARK_DAYS),
  count: choice(['calendar', 'working']),
  from: choice(['request', 'start']),
});

/** A date, as the number of its day. Internal. */
export const dayField: Field<number> = custom(readDay);

const RULE = shapeOf<LocateRule>()({
  workingDays: whole(NOTICE_DAYS),
  requestDayCounts: flag,
  start: choice(['last-day-of-notice', 'working-day-after']),
  weekend: list(choice(WEEKDAYS), { of: 'days of the week', least: 0, most: 7 }),
  holidays: list(dayField, { of: 'holidays', least: 0, most: 1000 }),
  validity: object(VALIDITY),
});

const checkWeekend: Check<typeof RULE> = (reader, { weekend = [] }, path) => {
  if (new Set(weekend).size < WEEKDAYS.length) return;
  reader.fail(
    'OUT_OF_RANGE',
    [...path, 'weekend'],
    'all seven days are weekend, so no working day is left. Remove at least one',
  );
};

/** A locate rule. Internal. */
export const locateRule: Field<ReadRule> = object(RULE, checkWeekend);

/** A rule that has been read. Internal. */
export type ReadRule = Values<typeof RULE>;

/** The next working days after a day, that day included if it counts. Internal. */
export function workingDays(
  from: number,
  days: number,
  { weekend, holidays }: ReadRule,
  itselfCounts: boolean,
): number[] {
  const off = new Set(holidays);
  const counted: number[] = [];
  for (let day = itselfCounts ? from : from + 1; counted.length < days; day += 1) {
    if (!weekend.includes(weekdayOf(day)) && !off.has(day)) counted.push(day);
  }
  return counted;
}
