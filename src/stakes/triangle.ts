import type { FieldPath } from '../errors.js';
import { asWritten } from '../input/read-amount.js';
import type { Reader } from '../input/reader.js';
import type { Length } from '../units/quantity.js';

/** A length as read, and as the caller wrote it. Internal. */
export interface WrittenLength {
  readonly read: Length;
  readonly raw: unknown;
}

/** Two sides and the diagonal between their ends. Internal. */
export type Triangle = readonly [WrittenLength, WrittenLength, WrittenLength];

/** Refuses a diagonal that cannot join the ends of the sides of one of its triangles. Internal. */
export function requireTriangles(
  reader: Reader,
  triangles: readonly Triangle[],
  path: FieldPath,
): void {
  const found = triangles.find((triangle) => !isPossible(triangle));
  if (found === undefined) return;
  const [a, b, diagonal] = found.map(({ read, raw }) => asWritten(raw, read));
  const message = `no triangle has sides of ${a} and ${b} and a diagonal of ${diagonal}. Measure again`;
  reader.fail('TRIANGLE_IMPOSSIBLE', path, message);
}

const isPossible = ([a, b, diagonal]: Triangle): boolean =>
  diagonal.read.compare(a.read.minus(b.read).abs()) > 0 &&
  diagonal.read.compare(a.read.plus(b.read)) < 0;
