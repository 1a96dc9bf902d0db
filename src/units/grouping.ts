import type { Unit } from './catalogue.js';
import { readingFault } from './reading-fault.js';
import type { Amount } from './scan-amount.js';

/** Units that are measured to three decimals. */
const THOUSANDTHS: ReadonlySet<Unit> = new Set([
  ...(['m', 'km', 'mi', 'm2', 'ha', 'acre', 'm3', 't', 'ton-us', 'ton-uk', 't/m3'] as const),
  ...(['ton-us/yd3', 'kN', 'kip', 'MPa', 'bar', 'percent', 'ratio', 'h', 'm/s', 'm3/s'] as const),
]);

/** Thousands grouped by a comma. */
const THOUSANDS = /^[1-9]\d{0,2},\d{3}$/;

/** Refuses `1,500 mm` if the comma is the decimal point: it could be 1.5 or 1500. Internal. */
export function refuseGrouping(text: string, { start, end }: Amount, unit: Unit): void {
  const digits = text.slice(start, end);
  if (!THOUSANDS.test(digits) || THOUSANDTHS.has(unit)) return;
  const short = digits.replace(/,?0+$/, '');
  const other = short === digits ? `${digits}0` : short;
  const hint = `Write ${digits.replace(',', '')} ${unit}, or ${other} ${unit}`;
  throw readingFault('GROUPING', text, start, hint);
}
