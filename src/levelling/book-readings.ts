import type { FieldPath } from '../errors.js';
import type { GivenEntry } from '../input/given-entries.js';
import type { Reader } from '../input/reader.js';

/** Faults in the readings of a row, and their messages. */
const WHY = {
  'first-row': 'the first row has a backsight on the starting mark, and no other reading',
  'no-reading': 'the row has no reading. Give back, intermediate or fore',
  'sight-not-alone':
    'an intermediate sight is alone on its row. A turning point has a foresight and a backsight',
  'back-alone': 'this is a backsight on a new point. Read a foresight on it first',
  'no-backsight':
    'the foresight before it ended the set-up. Give the backsight that starts the next',
  'last-row': 'nothing was read after this backsight. Leave it out',
} as const;

/** Makes sure that each reading has a height to count from. Internal. */
export function checkReadings(reader: Reader, rows: readonly GivenEntry[], path: FieldPath): void {
  let hasHeight = false;
  rows.forEach((row, k) => {
    // a row that could not be read may have any readings
    if (row === null) hasHeight = true;
    if (row === null) return;
    const before = rows[k - 1];
    const isTurn = before?.['fore'] !== undefined && before['point'] === row['point'];
    const reason = k === 0 ? firstFault(row) : faultOf(row, { isTurn, hasHeight });
    if (reason !== null) reader.fail('BOOK_ROW', [...path, k], WHY[reason], { reason });
    else if (k === rows.length - 1) checkLast(reader, row, [...path, k, 'back']);
    // a foresight ends a set-up unless a backsight on the same point starts the next
    if (row['back'] !== undefined) hasHeight = true;
    else if (row['fore'] !== undefined) hasHeight = false;
  });
}

function checkLast(reader: Reader, row: NonNullable<GivenEntry>, path: FieldPath): void {
  const reason = 'last-row';
  if (row['back'] !== undefined) reader.fail('BOOK_ROW', path, WHY[reason], { reason });
}

type Reason = keyof typeof WHY;

function firstFault({ back, intermediate, fore }: NonNullable<GivenEntry>): Reason | null {
  const isStart = back !== undefined && intermediate === undefined && fore === undefined;
  return isStart ? null : 'first-row';
}

interface Place {
  /** True if the row before has the foresight on the same point. */
  readonly isTurn: boolean;
  readonly hasHeight: boolean;
}

function faultOf(
  { back, intermediate, fore }: NonNullable<GivenEntry>,
  { isTurn, hasHeight }: Place,
): Reason | null {
  if (intermediate !== undefined && (back !== undefined || fore !== undefined)) {
    return 'sight-not-alone';
  }
  if (fore !== undefined || intermediate !== undefined) return hasHeight ? null : 'no-backsight';
  if (back === undefined) return 'no-reading';
  return isTurn && !hasHeight ? null : 'back-alone';
}
