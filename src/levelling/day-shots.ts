import type { Reader } from '../input/reader.js';
import type { LengthInput, TimeInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { compareRatios, wholeRatio, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { ELEVATION, READING } from './limits.js';

/** A reading of the day, in the order in which they were taken. */
export interface DayShotInput {
  readonly point: string;
  readonly reading: LengthInput;
  /** Elevation of the mark, where the reading is a check on one. */
  readonly known?: LengthInput;
  /** Time since the opening reading; for all shots or for none. */
  readonly after?: TimeInput;
}

/** A reading of the day that has been read. Internal. */
export interface ReadShot {
  readonly point: string;
  readonly reading: Length;
  readonly known: Length | undefined;
  /** Time, or the number of the shot. */
  readonly at: Ratio;
}

const LATER = Object.freeze({ sign: 'not-negative' } as const);

/** Reads the shots of a day, in time, the last one a check. Internal. */
export function readShots(reader: Reader, value: unknown): ReadShot[] {
  const list = reader.list(value, ['shots']);
  const isTimed = list.some(hasTime);
  const shots = list.map((item, k): ReadShot => {
    const path = ['shots', k];
    const fields = reader.object(item, path);
    const optional = fields['known'];
    return {
      point: reader.text(fields['point'], [...path, 'point']),
      reading: reader.quantity('length', fields['reading'], [...path, 'reading'], READING),
      known:
        optional === undefined
          ? undefined
          : reader.quantity('length', optional, [...path, 'known'], ELEVATION),
      at: isTimed
        ? exactOf(reader.quantity('time', fields['after'], [...path, 'after'], LATER))
        : wholeRatio(k + 1),
    };
  });
  shots.forEach(({ at }, k) => {
    if (compareRatios(at, shots[k - 1]?.at ?? ZERO_RATIO) > 0) return;
    reader.fail('NOT_INCREASING', ['shots', k, 'after'], 'must be later than the reading before');
  });
  if (shots.length > 0 && shots.at(-1)?.known === undefined) {
    const why = 'the last reading is no check: close on a mark with a known level';
    reader.fail('NO_CLOSING_SHOT', ['shots', shots.length - 1, 'known'], why);
  }
  return shots;
}

const hasTime = (item: unknown): boolean =>
  (item as { readonly after?: unknown } | null | undefined)?.after !== undefined;
