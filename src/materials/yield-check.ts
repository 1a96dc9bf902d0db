// The hole is a compacted volume; `volumes` defines the states.
import { isStateVolume, type StateVolume } from '../volumes/state-volume.js';
import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { YIELD_LIMITS } from '../sources/yield-limits.js';
import { sum } from '../units/aggregate.js';
import { mass, type DensityInput, type MassInput, type VolumeInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { exactOf, isQuantity, type Density, type Mass } from '../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { onePlus, overRatio, readRatio } from './exact.js';
import { DENSITY, FRACTION, HOLE, SHARE, TICKET } from './limits.js';
import { type Limits, verdictWithin } from './within-limits.js';

/** A delivery ticket: its mass, or its mass with the moisture of that day. */
export type TicketInput =
  MassInput | { readonly mass: MassInput; readonly moisture: number | string };

/** Whether the delivered stone agrees with the hole that it went into. */
export interface YieldCheck extends Worked {
  /** On the tickets, water included. */
  readonly deliveredMass: Mass;
  /** Dry stone for this hole: without the water and without what was booked elsewhere. */
  readonly dryMass: Mass;
  /** What the hole would weigh, dry, if all of it were in there. */
  readonly impliedDryDensity: Density;
  /** Implied over expected dry density. */
  readonly ratio: Decimal;
  readonly verdict: Verdict;
  /** Which way it is off; null where it passes. */
  readonly off: 'too-much' | 'too-little' | null;
  /** What it means and what to do next. */
  readonly meaning: string;
}

/**
 * Checks delivery tickets against the measured hole: `implied = sum(m / (1 + w)) / V`,
 * `ratio = implied / expected`. Too much stone went somewhere else (over-dig, soft spot, spill); too
 * little leaves a thin or loose layer.
 *
 * @param options.tickets - masses on the weighbridge [mass], or `{ mass, moisture }`
 * @param options.moisture - of tickets that do not say their own: water over dry mass, 0 to 1, default 0
 * @param options.compactedVolume - the hole as measured, in place [volume], or a compacted state volume
 * @param options.expectedDryDensity - compacted, dry [density]
 * @param options.bookedElsewhere - dry stone of these tickets that went into soft spots [mass],
 *   default none
 * @param options.limits - `least` and `most` ratio that pass; default 0.9 and 1.1, common practice
 * @param options.uncertainty - of the ratio, a fraction of it, 0 to 1, default 0
 * @returns delivered and dry mass, implied density, ratio, verdict and what it means
 * @throws `STATE_MISSING` for a volume that is not compacted, `OUT_OF_RANGE`, `NEGATIVE`,
 *   `NOT_POSITIVE`, `EMPTY_LIST` and the reading codes
 * @source derived
 * @source common-practice
 * @example
 * const check = yieldCheck({
 *   tickets: ['18.2 t', '18.2 t'],
 *   moisture: 0.05,
 *   compactedVolume: '14.48 m3',
 *   expectedDryDensity: '2.15 t/m3',
 * });
 * check.impliedDryDensity.to('t/m3').toFixed(3) //=> '2.394'
 * check.verdict //=> 'fail'
 * check.off //=> 'too-much'
 */
export function yieldCheck(options: {
  readonly tickets: readonly TicketInput[];
  readonly moisture?: number | string;
  readonly compactedVolume: VolumeInput | StateVolume<'compacted'>;
  readonly expectedDryDensity: DensityInput;
  readonly bookedElsewhere?: MassInput;
  readonly limits?: { readonly least: number | string; readonly most: number | string };
  readonly uncertainty?: number | string;
}): YieldCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const moisture = readRatio(reader, fields['moisture'] ?? 0, ['moisture'], FRACTION);
  const tickets = readTickets(reader, fields['tickets'], moisture);
  const hole = readHole(reader, fields['compactedVolume']);
  const expected = reader.quantity(
    'density',
    fields['expectedDryDensity'],
    ['expectedDryDensity'],
    DENSITY,
  );
  const elsewhere = reader.quantity(
    'mass',
    fields['bookedElsewhere'] ?? NONE,
    ['bookedElsewhere'],
    {
      sign: 'not-negative',
    },
  );
  const limits = readLimits(reader, fields['limits']);
  const doubt = readRatio(reader, fields['uncertainty'] ?? 0, ['uncertainty'], FRACTION);
  reader.finish();

  const dryDelivered = sum(tickets.map(({ dry }) => dry));
  const dryMass = dryDelivered.minus(elsewhere);
  if (dryMass.isNegative()) {
    reader.fail('OUT_OF_RANGE', ['bookedElsewhere'], 'is more than all tickets carried, dry');
    reader.finish();
  }
  const implied = dryMass.dividedBy(hole);
  const ratio = divideRatios(exactOf(implied), exactOf(expected));
  const verdict = verdictWithin(ratio, limits, multiplyRatios(ratio, doubt));
  const side = compareRatios(ratio, ONE_RATIO);
  const off = verdict === 'pass' || side === 0 ? null : side > 0 ? 'too-much' : 'too-little';
  const check = {
    deliveredMass: sum(tickets.map((ticket) => ticket.mass)),
    dryMass,
    impliedDryDensity: implied,
    ratio: ratioToDecimal(ratio),
    verdict,
    off,
    meaning: meaningOf(verdict, ratio),
  } as const;
  return withWorking(check, () => [
    {
      title: 'Dry density that the tickets imply',
      formula: "d' = (sum(m / (1 + w)) - m0) / V",
      given: [
        given('m', 'tickets', check.deliveredMass),
        given('w', 'moisture of dry mass', ratioToDecimal(moisture)),
        given('m0', 'dry stone booked elsewhere', elsewhere),
        given('V', 'measured hole, compacted', hole),
      ],
      result: given("d'", 'implied dry density', implied),
      source: 'derived',
    },
    {
      title: 'Tickets against the hole',
      formula: "k = d' / d",
      given: [
        given("d'", 'implied dry density', implied),
        given('d', 'expected dry density', expected),
      ],
      result: given('k', 'ratio', check.ratio),
      source: 'common-practice',
    },
  ]);
}

const NONE = mass(0, 'kg');

function readTickets(reader: Reader, value: unknown, moisture: Ratio) {
  return reader.list(value, ['tickets']).map((item, index) => {
    const path = ['tickets', index];
    const own = ownMoisture(reader, item, path);
    const weighed = reader.quantity('mass', own?.mass ?? item, path, TICKET);
    return { mass: weighed, dry: overRatio(weighed, onePlus(own?.moisture ?? moisture)) };
  });
}

/** A ticket with its own moisture; undefined for a plain mass. */
function ownMoisture(reader: Reader, item: unknown, path: FieldPath) {
  if (typeof item !== 'object' || item === null || isQuantity(item) || !('mass' in item)) return;
  const fields = reader.object(item, path);
  return {
    mass: fields['mass'],
    moisture: readRatio(reader, fields['moisture'], [...path, 'moisture'], FRACTION),
  };
}

function readHole(reader: Reader, value: unknown) {
  const path = ['compactedVolume'];
  if (!isStateVolume(value)) return reader.quantity('volume', value, path, HOLE);
  if (value.state !== 'compacted') {
    reader.fail('STATE_MISSING', path, `a ${value.state} volume is no hole filled with stone`, {
      got: value.state,
    });
  }
  return reader.quantity('volume', value.volume, path, HOLE);
}

function readLimits(reader: Reader, value: unknown): Limits {
  if (value === undefined) {
    return {
      least: readNumber(YIELD_LIMITS.least.value),
      most: readNumber(YIELD_LIMITS.most.value),
    };
  }
  const fields = reader.object(value, ['limits']);
  const least = readRatio(reader, fields['least'], ['limits', 'least'], SHARE);
  const atLeastOne = { sign: 'positive', least: 1 } as const;
  return { least, most: readRatio(reader, fields['most'], ['limits', 'most'], atLeastOne) };
}

/** How far from one, in words: `11.4 % more stone than`. */
function meaningOf(verdict: Verdict, ratio: Ratio): string {
  if (verdict === 'pass') return 'The tickets agree with the measured hole.';
  const percent = ratioToDecimal(subtractRatios(ratio, ONE_RATIO)).times(100);
  const much = `${percent.abs().toFixed(1)} % ${percent.isNegative() ? 'less' : 'more'} stone than the measured hole holds`;
  if (verdict === 'unclear') {
    return `${much}, which may still be the uncertainty of the measuring. Measure the hole and the moisture more closely.`;
  }
  return percent.isNegative()
    ? `${much}: the layer is thinner than measured, not compacted, or a ticket is missing. Shoot the layer again before covering it.`
    : `${much}: over-dig, a soft spot that was not booked apart, a spill, or wetter stone than booked. Find it before ordering more.`;
}
