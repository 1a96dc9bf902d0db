import { formatQuantity } from '../units/format-quantity.js';
import type { Slope } from '../units/quantity.js';
import type { SlopeLimitCheck } from './slope-limit.js';

/** A slope against one limit, in words. Internal. */
export function slopeNote({ limit, value, verdict }: SlopeLimitCheck, fall: Slope): string {
  const [size, bound] = inPercent(fall.abs(), value);
  const isMinimum = limit === 'minimum';
  const rises = isMinimum && fall.isNegative();
  const subject = rises ? `Rises ${size}` : `${isMinimum ? 'Fall' : 'Slope'} is ${size}`;
  const rule = `the ${bound} ${isMinimum ? 'minimum fall' : 'maximum slope'}`;
  if (verdict === 'pass') return `${subject}, ${limit} ${bound}: ok.`;
  if (verdict === 'fail') return `${subject}, ${isMinimum ? 'below' : 'over'} ${rule}.`;
  return `${subject}, too close to ${rule} to tell. Take more readings, then check again.`;
}

/** Two slopes in percent, with enough decimals to tell them apart. */
function inPercent(a: Slope, b: Slope, places = 2): readonly [string, string] {
  const [first, second] = [asPercent(a, places), asPercent(b, places)];
  const areApart = first !== second || a.equals(b) || places === MOST_PLACES;
  return areApart ? [first, second] : inPercent(a, b, places + 1);
}

const MOST_PLACES = 12;

const asPercent = (slope: Slope, places: number): string =>
  formatQuantity(slope, { as: 'percent', places }).replace(' ', '');
