import type { Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import type { PlanPoint } from '../units/vector.js';
import { SITE_LENGTH, UNCERTAINTY } from './limits.js';
import { readPlace } from './read-stakes.js';

/** A fixed point and the length taped from it. */
export interface TapeInput {
  readonly x: LengthInput;
  readonly y: LengthInput;
  /** Level length from the fixed point to the point sought. */
  readonly distance: LengthInput;
  /** Standard uncertainty of the taped length, if known: for both tapes or for none. */
  readonly uncertainty?: LengthInput;
}

/** A taped length that has been read. Internal. */
export interface Tape {
  readonly at: PlanPoint;
  readonly distance: Length;
  readonly uncertainty: Length | undefined;
}

const STAND_IN: Tape = {
  at: { x: length(0, 'm'), y: length(0, 'm') },
  distance: length(1, 'm'),
  uncertainty: undefined,
};

/** Reads two fixed points and the lengths taped from them. Internal. */
export function readTapes(reader: Reader, value: unknown): readonly [Tape, Tape] {
  const list = reader.list(value, ['from']);
  if (list.length > 0 && list.length !== 2) {
    reader.fail('WRONG_TYPE', ['from'], 'expected two fixed points');
  }
  if (list.length !== 2) return [STAND_IN, STAND_IN];
  const isDoubtful = list.some((item) => (item as TapeInput | null)?.uncertainty !== undefined);
  const read = (k: 0 | 1): Tape => {
    const path = ['from', k];
    const fields = reader.object(list[k], path);
    const quantity = (name: string, rule: typeof SITE_LENGTH) =>
      reader.quantity('length', fields[name], [...path, name], rule);
    return {
      at: readPlace(reader, fields, path),
      distance: quantity('distance', SITE_LENGTH),
      uncertainty: isDoubtful ? quantity('uncertainty', UNCERTAINTY) : undefined,
    };
  };
  return [read(0), read(1)];
}
