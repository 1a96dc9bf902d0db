import { capital } from '../../../capital.js';
import { length } from '../../../units/construct.js';
import { isQuantity, type AnyQuantity, type Length } from '../../../units/quantity.js';
import { roundTo } from '../../../units/rounding.js';
import { differenceOf } from '../../compare/plan-entry.js';
import { requireChange, type PlanChange, type PlanValue } from '../../compare/plan-change.js';
import type { PlanWarning } from '../../plan/plan.js';
import { describeWarning } from './describe.js';
import { quantityText } from './quantity-text.js';
import { readSystem, type DescribePartOptions } from '../layout/sheet-options.js';
import { unitsOfSheet, type SheetUnits } from '../layout/units-of-sheet.js';

/**
 * A change between two plans as a sentence.
 *
 * @param change - of `comparePlans`; a copy of one is none
 * @param options - see {@link DescribePartOptions}
 * @throws `WRONG_TYPE` if it is not a change, `UNKNOWN_CHOICE`, `UNKNOWN_FIELD`
 * @example
 * const truck = { ...job.truck, payload: '20 ton-us' };
 * const changes = comparePlans(planJob(job), planJob({ ...job, truck }));
 * changes.slice(0, 1).map((change) => describeChange(change, { system: 'us' }))
 * //=> ['Crushed stone: loads 7, was 9 (2 less).']
 */
export function describeChange(change: PlanChange, options: DescribePartOptions): string {
  requireChange(change);
  const system = readSystem(options);
  if (change.about === 'warning') {
    return warningText(change, (value) => describeWarning(value as PlanWarning, { system }));
  }
  const text = speaker(change, unitsOfSheet(system));
  const subject = capital(change.subject);
  switch (change.kind) {
    case 'added':
      return `${subject} is new${partOf(change, change.after, text)}.`;
    case 'removed':
      return `${subject} is gone${partOf(change, change.before, text)}.`;
    case 'changed':
      return `${subject}: ${change.what} ${changedText(change, text)}.`;
  }
}

type Speaker = (value: PlanValue) => string;

function warningText({ before, after }: PlanChange, say: Speaker): string {
  if (before === null) return `New warning: ${say(after)}`;
  if (after === null) return `No longer: ${say(before)}`;
  const [was, now] = [say(before), say(after)];
  return was === now
    ? `${now} Its figures differ by less than is printed.`
    : `${now} Before: ${was}`;
}

/** What of it is new or gone, and how much; a pavement or string is named already. */
function partOf({ what }: PlanChange, value: PlanValue, text: Speaker): string {
  return what === 'name' || what === 'pavement' ? '' : `: ${what} ${text(value)}`;
}

function changedText({ before, after, difference, printed }: PlanChange, text: Speaker): string {
  const [was, now] = [text(before), text(after)];
  if (was === now) return `${now}, changed by less than is printed`;
  if (difference === null) return `${now}, was ${was}`;
  const isLess = isQuantity(difference) ? difference.si.isNegative() : difference < 0;
  const [low, high] = isLess ? [after, before] : [before, after];
  const size =
    printedDifference(text(low), text(high)) ??
    text(printed === 'depth' ? differenceOf(ticks(low), ticks(high)) : differenceOf(low, high));
  return `${now}, was ${was} (${size} ${isLess ? 'less' : 'more'})`;
}

/** The difference of two decimals as they are printed, so that what is printed adds up. */
function printedDifference(low: string, high: string): string | null {
  const [a, b] = [DECIMAL.exec(low), DECIMAL.exec(high)];
  if (a === null || b === null || a[3] !== b[3]) return null;
  const places = Math.max(a[2]?.length ?? 0, b[2]?.length ?? 0);
  return `${(Number(b[1]) - Number(a[1])).toFixed(places)}${a[3] ?? ''}`;
}

/** A decimal, its places, and its unit, which starts with a letter or a percent sign. */
const DECIMAL = /^(-?\d+(?:\.(\d+))?)((?: [a-z].*|%)?)$/;

/** Depths in inches are printed in these steps. */
const TICK = '1/16 in';

/** A depth rounded as it is printed in inches. */
function ticks(value: PlanValue): PlanValue {
  if (!isQuantity(value)) return value;
  const { dimension }: AnyQuantity = value;
  return dimension === 'length' ? roundTo(value as Length, length(TICK)) : value;
}

/** Says a value in the units of the sheet. */
const speaker =
  ({ printed }: PlanChange, units: SheetUnits): Speaker =>
  (value) => {
    if (value === null) return 'none';
    if (typeof value === 'string' || typeof value === 'number') return `${value}`;
    if (!isQuantity(value)) return value.subject;
    return quantityText(value, units, (one) => lengthText(one, printed, units));
  };

const lengthText = (value: Length, printed: PlanChange['printed'], units: SheetUnits): string =>
  printed === 'depth'
    ? units.depthWithUnit(value)
    : printed === 'length'
      ? units.long(value)
      : units.elevation(value);
