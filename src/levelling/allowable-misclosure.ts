import { makeReader, type Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { DISTANCE } from './limits.js';
import { allowedBy, readRule, type MisclosureRule } from './misclosure-rule.js';

/** What a line of levels may misclose by. */
export interface AllowableMisclosure extends Worked {
  readonly allowable: Length;
}

/**
 * Allowable misclosure of a line of levels: `k x sqrt(n)`, n the number of set-ups or the length of
 * the line over `per`. The rule is the caller's; `MISCLOSURE_RULES` quotes some.
 *
 * @param options.rule - `k` [length], and `per`: `set-up`, or a distance [length] such as 1 km
 * @param options.setUps - number of set-ups, for a rule by set-ups
 * @param options.distance - length of the line [length], for a rule by distance
 * @returns the allowable misclosure [length], to 40 digits
 * @throws `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source misclosure-rules
 * @example
 * const byKilometres = allowableMisclosure({ rule: { k: '12 mm', per: '1 km' }, distance: '10 km' });
 * byKilometres.allowable.to('mm').toFixed(3) //=> '37.947'
 * const bySetUps = allowableMisclosure({ rule: { k: '3 mm', per: 'set-up' }, setUps: 4 });
 * bySetUps.allowable.to('mm').toString() //=> '6'
 */
export function allowableMisclosure(options: {
  readonly rule: MisclosureRule;
  readonly setUps?: number;
  readonly distance?: LengthInput;
}): AllowableMisclosure {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const rule = readRule(reader, fields['rule'], ['rule']);
  const setUps = rule.per === 'set-up' ? readSetUps(reader, fields['setUps']) : 0;
  const distance =
    rule.per === 'set-up'
      ? NOTHING
      : reader.quantity('length', fields['distance'], ['distance'], DISTANCE);
  reader.finish();
  const allowable = allowedBy(rule, { setUps, distance });
  const counted =
    rule.per === 'set-up'
      ? [given('n', 'set-ups', setUps)]
      : [given('D', 'distance', distance), given('d', 'distance of the rule', rule.per)];
  return withWorking({ allowable }, () => [
    {
      title: 'Allowable misclosure',
      formula: rule.per === 'set-up' ? 'a = k sqrt(n)' : 'a = k sqrt(D / d)',
      given: [given('k', 'constant of the rule', rule.k), ...counted],
      result: given('a', 'allowable', allowable),
      source: 'misclosure-rules',
    },
  ]);
}

const NOTHING = length(0, 'm');
const MOST_SET_UPS = 10_000;

function readSetUps(reader: Reader, value: unknown): number {
  const rule = { sign: 'positive', most: MOST_SET_UPS } as const;
  const setUps = reader.number(value, ['setUps'], rule).toNumber();
  if (!Number.isInteger(setUps)) {
    reader.fail('OUT_OF_RANGE', ['setUps'], `must be a whole number, got ${setUps}`);
  }
  return setUps;
}
