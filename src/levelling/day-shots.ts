import type { FieldPath } from '../errors.js';
import { custom, list, object, optional, quantity, text } from '../input/field.js';
import { givenEntries, type GivenEntry } from '../input/given-entries.js';
import { ELEVATION, ROD_READING, TIME_OR_NONE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput, TimeInput } from '../units/construct.js';
import { exactOf, type Length, type Time } from '../units/quantity.js';
import { wholeRatio, type Ratio } from '../units/ratio.js';

/** A reading of the day. */
export interface DayShotInput {
  /** Point the rod stood on. */
  readonly point: string;
  /** Reading on the rod [length], 0 to 20 m. */
  readonly reading: LengthInput;
  /** Elevation of the mark [length], if the reading is a check on one. Default: no check. */
  readonly known?: LengthInput;
  /**
   * Time since the opening reading [time], more than 0 and at most 10 000 h; for all shots or for none.
   * Default: evenly from shot to shot.
   */
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

const SHOT = shapeOf<DayShotInput>()({
  point: text(),
  reading: quantity(ROD_READING),
  known: optional(quantity(ELEVATION)),
  after: optional(quantity(TIME_OR_NONE)),
});

type Shot = Values<typeof SHOT>;

const MOST_SHOTS = 10_000;

const SHOTS = list(object(SHOT), { of: 'shots', most: MOST_SHOTS });

/** The shots of a day in order, the last one a check. Internal. */
export const dayShots: Field<readonly ReadShot[]> = custom((reader, value, path) => {
  const before = reader.faults();
  const shots = SHOTS.read(reader, value, path);
  const given = givenEntries(value, SHOT, MOST_SHOTS);
  checkTimes(reader, given, path);
  // a shot that could not be read is undefined
  checkForward(
    reader,
    shots.map((shot: Shot | undefined) => shot?.after),
    path,
  );
  const last = given.at(-1) ?? null;
  if (last !== null && last['known'] === undefined) {
    const why = 'missing. Close on a mark with a known elevation, and give its elevation here';
    const params = { reason: 'no-closing-sight' };
    reader.fail('BOOK_ROW', [...path, given.length - 1, 'known'], why, params);
  }
  return reader.faults() > before ? [] : shots.map(placed);
});

/** Without times, the number of the shot counts. */
const placed = ({ point, reading, known, after }: Shot, k: number): ReadShot => ({
  point,
  reading,
  known,
  at: after === undefined ? wholeRatio(k + 1) : exactOf(after),
});

/** Times are given for all shots or for none. */
function checkTimes(reader: Reader, given: readonly GivenEntry[], path: FieldPath): void {
  const isTimed = given.some((shot) => shot?.['after'] !== undefined);
  given.forEach((shot, k) => {
    if (!isTimed || shot === null || shot['after'] !== undefined) return;
    const message = 'missing. Give the time of every shot, or of none';
    reader.fail('REQUIRED', [...path, k, 'after'], message);
  });
}

function checkForward(reader: Reader, times: readonly (Time | undefined)[], path: FieldPath): void {
  let before: Time | undefined;
  times.forEach((after, k) => {
    if (after === undefined) return;
    const isLater = before === undefined ? !after.isZero() : after.compare(before) > 0;
    if (!isLater) {
      const message = 'is not later than the reading before. List the shots in order';
      reader.fail('NOT_INCREASING', [...path, k, 'after'], message);
    }
    before = after;
  });
}
