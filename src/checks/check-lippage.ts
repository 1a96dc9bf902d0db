import { makeReader } from '../input/reader.js';
import { cautionsFor } from '../sources/cautions.js';
import type { ToleranceSet } from '../sources/tolerance-sets.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given } from '../working.js';
import {
  judge,
  layerCheck,
  marginOf,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { LIP } from './limits.js';
import { readReadings } from './read-readings.js';
import { readBetween, readUncertainty, type BetweenInput, type SetWith } from './tolerance.js';

/** Where a lip is: between pavers, over a drain, over a drain on an accessible route. */
export type LippagePlace = 'pavers' | 'drain' | 'accessible-drain';

/** A difference of level between a paver and its neighbour. */
export interface LippageReadingInput {
  readonly id: string;
  /** Between pavers: not negative. At a drain: paver above the grate, negative below. */
  readonly lippage: LengthInput;
}

/** Lips between pavers or at drains; the `value` of a reading is the lip. */
export interface LippageCheck extends LayerCheck<Length> {
  readonly check: 'lippage';
  readonly place: LippagePlace;
  readonly readings: readonly CheckedReading[];
  readonly outOfTolerance: readonly CheckedReading[];
}

/**
 * Checks lippage, the difference of level from one paver to the next, or of the paver above a drain.
 * Exact: a lip on the limit passes. A lip between pavers has no sign; at a drain it is positive where
 * the paver stands above the grate, and a paver below it fails a least lip.
 *
 * @param options.place - `pavers`, `drain` or `accessible-drain`
 * @param options.readings - each `id` once, with its `lippage` [length]
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits lippage at that place, or your own
 *   `least`, `most` or both [length]
 * @param options.uncertainty - how far a lip can be off, either way [length], default none
 * @returns verdict, each reading with margin [length], verdict and how far to raise or lower it to the
 *   nearest limit; cautions
 * @throws `LIMIT_NOT_SET`, `LIMITS_CONTRADICT`, `DUPLICATE_ID`, `UNKNOWN_CHOICE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `EMPTY_LIST` and the reading codes
 * @source paver-tolerances
 * @source permeable-tolerances
 * @example
 * const check = checkLippage({
 *   place: 'pavers',
 *   readings: [
 *     { id: 'gate', lippage: '1/8 in' },
 *     { id: 'door', lippage: '3/16 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['door: lower 1/16 in']
 */
export function checkLippage(options: {
  readonly place: LippagePlace;
  readonly readings: readonly LippageReadingInput[];
  readonly tolerance: SetWith<'lippage'> | BetweenInput;
  readonly uncertainty?: LengthInput;
}): LippageCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const place = reader.choice(fields['place'], ['place'], PLACES);
  const sign = place === 'pavers' ? 'not-negative' : 'any';
  const rows = readReadings(reader, fields['readings'], (row, path) => ({
    lippage: reader.quantity('length', row['lippage'], [...path, 'lippage'], { ...LIP, sign }),
  }));
  const words = WORDS[place];
  const field = { reader, value: fields['tolerance'], words };
  const limits = readBetween(field, (set) => set[PART[place]], { dimension: 'length', rule: LIP });
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const { least, most } = limits;
  const readings = rows.map(({ id, lippage }) =>
    judge({ id, value: lippage, limits: { least, most }, uncertainty }, (value) =>
      move(most !== null && value.compare(most) > 0 ? 'lower' : 'raise', marginOf(value, limits)),
    ),
  );
  const parts = {
    check: 'lippage',
    subject: words,
    place,
    limits: { least, most },
    origin: limits,
    readings,
    cautions: cautionsFor('access'),
  } as const;
  return layerCheck(parts, () =>
    readings.map(({ id, value, margin }) => ({
      title: `Lippage at ${id}`,
      formula: 'm = min(a - a0, a1 - a)',
      given: [
        given('a', 'lip', value),
        ...(least === null ? [] : [given('a0', 'least', least)]),
        ...(most === null ? [] : [given('a1', 'most', most)]),
      ],
      result: given('m', 'margin', margin),
      source: sourceOf(limits),
    })),
  );
}

const PLACES = ['pavers', 'drain', 'accessible-drain'] as const;

const PART = {
  pavers: 'lippage',
  drain: 'lippageAtDrain',
  'accessible-drain': 'lippageAtAccessibleDrain',
} as const satisfies Record<LippagePlace, keyof ToleranceSet>;

const WORDS: Readonly<Record<LippagePlace, string>> = {
  pavers: 'lippage between pavers',
  drain: 'lippage at a drain',
  'accessible-drain': 'lippage at a drain on an accessible route',
};
