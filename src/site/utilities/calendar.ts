import { entry } from '../../invariant.js';
import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';

/** Days of the week, in the order of the calendar. */
export const WEEKDAYS = Object.freeze([
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const);
/** A day of the week, in English: `Sunday` to `Saturday`. */
export type Weekday = (typeof WEEKDAYS)[number];

const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const DAYS_IN = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const FIRST_YEAR = 1900;
const LAST_YEAR = 2999;

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Leap days before 1 January of a year of the Gregorian calendar. */
const leapDays = (year: number): number => {
  const before = year - 1;
  return Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
};

/**
 * The number of a day, counted from 1 January of the year 1, a Monday. No clock or time zone.
 * Internal.
 */
function dayNumber(year: number, month: number, day: number): number {
  const afterLeapDay = month > 2 && isLeap(year) ? 1 : 0;
  const beforeMonth = entry(DAYS_BEFORE, month - 1);
  return (year - 1) * 365 + leapDays(year) + beforeMonth + afterLeapDay + day - 1;
}

/** Reads a date `YYYY-MM-DD` of 1900 to 2999 as the number of its day. Internal. */
export function readDay(reader: Reader, value: unknown, path: FieldPath): number {
  if (value === undefined) {
    reader.fail('REQUIRED', path, 'missing. Write a date, such as "2030-05-22"');
    return 0;
  }
  const digits = typeof value === 'string' ? /^(\d{4})-(\d{2})-(\d{2})$/.exec(value) : null;
  const [year, month, day] = (digits?.slice(1) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined || !exists(year, month, day)) {
    const got = shown(value);
    const message = `${got} is not a date from 1900 to 2999. Write it as "2030-05-22"`;
    reader.fail('TEXT_UNREADABLE', path, message, { got, reason: 'DATE' });
    return 0;
  }
  return dayNumber(year, month, day);
}

function exists(year: number, month: number, day: number): boolean {
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12) return false;
  const last = month === 2 && isLeap(year) ? 29 : entry(DAYS_IN, month - 1);
  return day >= 1 && day <= last;
}

/** The date of a day, `YYYY-MM-DD`. Internal. */
export function dateOf(day: number): string {
  // no year is longer than 366 days: start low, then step up
  let year = Math.floor(day / 366) + 1;
  while (dayNumber(year + 1, 1, 1) <= day) year += 1;
  let month = 12;
  while (dayNumber(year, month, 1) > day) month -= 1;
  const inMonth = day - dayNumber(year, month, 1) + 1;
  const two = (n: number) => `${n}`.padStart(2, '0');
  return `${`${year}`.padStart(4, '0')}-${two(month)}-${two(inMonth)}`;
}

/** The day of the week of a day. Internal. */
export const weekdayOf = (day: number): Weekday => entry(WEEKDAYS, day % 7);
