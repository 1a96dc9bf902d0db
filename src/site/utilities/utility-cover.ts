import { makeReader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { formatLength } from '../../units/format-length.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { verdictOf } from '../../verdict.js';
import { given, withWorking, type Worked } from '../../working.js';
import { DEPTH, DEPTH_OR_NONE } from '../limits.js';

/** What a found line means for the dig. No word here says that digging on is harmless. */
export type CoverVerdict = 'line-in-dig' | 'less-than-minimum' | 'unclear' | 'minimum-kept';

/** Ground left over a found line. */
export interface UtilityCover extends Worked {
  /** Top of the line less depth of dig: negative where the line stands in the dig. */
  readonly cover: Length;
  readonly verdict: CoverVerdict;
  /** What to do next, in feet and inches or in millimetres. */
  readonly action: { readonly us: string; readonly metric: string };
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Cover left over a line that was uncovered in a test hole: `cover = depth of its top - depth of dig`,
 * against the least cover that its owner asks for. Depths are measured from one and the same surface.
 *
 * @param options.found - depth of the top of the line, measured in a test hole [length]; never a
 *   usual or a marked depth
 * @param options.dig - depth of the dig there [length]
 * @param options.least - least cover that the owner asks for [length]; no default
 * @param options.uncertainty - how far the found depth may be off either way [length], default none
 * @returns cover [length], verdict, the next action, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const gas = utilityCover({ found: '0.52 m', dig: '0.435 m', least: '0.15 m' });
 * gas.cover.to('mm').toString() //=> '85'
 * gas.verdict //=> 'less-than-minimum'
 */
export function utilityCover(options: {
  readonly found: LengthInput;
  readonly dig: LengthInput;
  readonly least: LengthInput;
  readonly uncertainty?: LengthInput;
}): UtilityCover {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const found = reader.quantity('length', fields['found'], ['found'], DEPTH_OR_NONE);
  const dig = reader.quantity('length', fields['dig'], ['dig'], DEPTH);
  const least = reader.quantity('length', fields['least'], ['least'], DEPTH_OR_NONE);
  const doubt = reader.quantity(
    'length',
    fields['uncertainty'] ?? '0 m',
    ['uncertainty'],
    DEPTH_OR_NONE,
  );
  reader.finish();
  const cover = found.minus(dig);
  const verdict = judge(cover, least, doubt);
  const result = {
    cover,
    verdict,
    action: {
      us: actionText(verdict, (q) => formatLength(q, { as: 'in' }), cover, least),
      metric: actionText(verdict, (q) => formatLength(q, { as: 'mm' }), cover, least),
    },
    notes: NOTES,
    cautions: cautionsFor('utilities', 'excavation'),
  };
  return withWorking(result, () => [
    {
      title: 'Cover over the line',
      formula: 'c = f - e',
      given: [given('f', 'top of the line', found), given('e', 'depth of dig', dig)],
      result: given('c', 'cover', cover),
      source: 'derived',
    },
  ]);
}

const VERDICTS = Object.freeze({
  pass: 'minimum-kept',
  unclear: 'unclear',
  fail: 'less-than-minimum',
} as const);

function judge(cover: Length, least: Length, doubt: Length): CoverVerdict {
  if (cover.isNegative() || cover.isZero()) return 'line-in-dig';
  return VERDICTS[verdictOf(cover.minus(least), doubt)];
}

function actionText(
  verdict: CoverVerdict,
  text: (length: Length) => string,
  cover: Length,
  least: Length,
): string {
  switch (verdict) {
    case 'line-in-dig':
      return `Stop. The line stands ${text(cover.abs())} into the dig. Dig no deeper here: call its owner, and change the levels or have the line moved.`;
    case 'less-than-minimum':
      return `Only ${text(cover)} would be left over the line, its owner asks for ${text(least)}. Stop above it and call the owner before going deeper.`;
    case 'unclear':
      return `About ${text(cover)} would be left over the line, but the depth found is not sure enough against ${text(least)}. Measure again in a test hole.`;
    default:
      return `${text(cover)} left over the line where it was found. Go on with hand tools in the zone, and open another test hole at each change of direction.`;
  }
}

const NOTES: readonly string[] = Object.freeze([
  'The depth holds at the test hole only: lines rise and fall between holes. One hole at each crossing.',
  'Plates and trucks press on what lies under them: ask the owner before compacting over the line.',
]);
