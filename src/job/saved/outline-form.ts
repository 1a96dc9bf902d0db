import { isPlain } from '../../input/plain.js';
import { within, type Reading } from './reading.js';
import type { Code, FieldCode } from './shape-code.js';

const plain = (name: string): Code => ({ kind: 'plain', name });
const listOf = (fields: readonly FieldCode[]): Code => ({
  kind: 'list',
  of: { kind: 'object', fields },
});
const field = (name: string, code: Code): FieldCode => ({ name, isOptional: false, code });

const POINTS = listOf([field('x', plain('length')), field('y', plain('length'))]);
const ARCS = listOf([
  field('edge', plain('number')),
  field('bulgeMiddleOrdinate', plain('length')),
]);
const RING = [field('points', POINTS), field('arcs', ARCS)];
const OUTLINE = [...RING, field('holes', listOf(RING))];

const LEAST_POINTS = 3;

/** The form that a plan writes an outline in: a list of points, or points, arcs and holes. Internal. */
export const outlineCode = (value: unknown): Code =>
  isPlain(value) ? { kind: 'object', fields: OUTLINE } : POINTS;

/** Checks that an outline has enough points, and that its arcs are on edges that it has. Internal. */
export function checkOutlineForm(reading: Reading, value: unknown): void {
  if (!isPlain(value)) {
    checkCount(reading, value);
    return;
  }
  checkRing(reading, value);
  const { holes } = value;
  if (!Array.isArray(holes)) return;
  holes.forEach((hole: unknown, index) => {
    within(reading, 'holes', () => {
      within(reading, index, () => checkRing(reading, hole));
    });
  });
}

function checkRing(reading: Reading, ring: unknown): void {
  if (!isPlain(ring)) return;
  const { points, arcs } = ring;
  within(reading, 'points', () => checkCount(reading, points));
  if (!Array.isArray(points) || !Array.isArray(arcs)) return;
  arcs.forEach((arc: unknown, index) => {
    const edge = isPlain(arc) ? arc['edge'] : undefined;
    if (typeof edge !== 'number' || (edge >= 1 && edge <= points.length)) return;
    reading.fail(`there is no edge ${edge}`, ['arcs', index, 'edge']);
  });
}

function checkCount(reading: Reading, points: unknown): void {
  if (!Array.isArray(points) || points.length >= LEAST_POINTS) return;
  reading.fail(`an outline has ${LEAST_POINTS} points or more`);
}
