import { optional, quantity, whole } from '../input/field.js';
import { COUNT, DISTANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { allowedBy, misclosureRule, type MisclosureRule } from './misclosure-rule.js';

/** A rule, and a line of levels. */
export interface AllowableMisclosureOptions {
  /** The rule. You choose it; `MISCLOSURE_RULES` quotes some. */
  readonly rule: MisclosureRule;
  /** Number of set-ups, whole, 1 to 1 000 000. Needed for a rule by set-ups. */
  readonly setUps?: number;
  /** Length of the line [length], more than 0 and at most 100 km. Needed for a rule by distance. */
  readonly distance?: LengthInput;
}

const OPTIONS = shapeOf<AllowableMisclosureOptions>()({
  rule: misclosureRule,
  setUps: optional(whole(COUNT)),
  distance: optional(quantity(DISTANCE)),
});

/** Allowable misclosure of a line of levels. */
export interface AllowableMisclosure extends Worked {
  /** Allowable misclosure, up or down. */
  readonly allowable: Length;
}

/**
 * Allowable misclosure of a line of levels: `k x sqrt(n)`, where n is the number of set-ups, or the
 * length of the line over `per`.
 *
 * @param options - see {@link AllowableMisclosureOptions}
 * @returns the allowable misclosure [length], to 40 digits
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NOT_WHOLE`, `OUT_OF_RANGE` and the reading codes
 * @source misclosure-rules
 * @example
 * const byKilometres = allowableMisclosure({ rule: { k: '12 mm', per: '1 km' }, distance: '10 km' });
 * byKilometres.allowable.to('mm').toFixed(3) //=> '37.947'
 * const bySetUps = allowableMisclosure({ rule: { k: '3 mm', per: 'set-up' }, setUps: 4 });
 * bySetUps.allowable.to('mm').toString() //=> '6'
 */
export function allowableMisclosure(options: AllowableMisclosureOptions): AllowableMisclosure {
  const read = readOptions(options, OPTIONS, (reader, { rule: { per } = {} }, path, raw) => {
    if (per === undefined) return;
    const needed = per === 'set-up' ? 'setUps' : 'distance';
    if (raw[needed] !== undefined) return;
    const counts = per === 'set-up' ? 'set-ups, such as 4' : 'distance, such as "250 m"';
    reader.fail('REQUIRED', [...path, needed], `missing. The rule counts by ${counts}`);
  });
  const { rule, setUps = 0, distance = NO_LENGTH } = read;
  const allowable = allowedBy(rule, { setUps, distance });
  const counted =
    rule.per === 'set-up'
      ? [given('n', 'set-ups', setUps)]
      : [given('D', 'distance', distance), given('d', 'distance of the rule', rule.per)];
  return withWorking({ allowable }, () => [
    formulaStep({
      title: 'Allowable misclosure',
      formula: rule.per === 'set-up' ? 'a = k * sqrt(n)' : 'a = k * sqrt(D / d)',
      given: [given('k', 'constant of the rule', rule.k), ...counted],
      result: given('a', 'allowable', allowable),
      source: 'misclosure-rules',
    }),
  ]);
}
