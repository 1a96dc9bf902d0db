import { describe, expect } from 'vitest';
import { fitLine } from 'settline/geometry';
import { checkStakeLine } from 'settline/stakes';
import { expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

/** Slope and intercept of a fitted line. */
function slopeForm({ centroid, direction }: ReturnType<typeof fitLine>): [number, number] {
  const slope = direction[1] / direction[0];
  return [slope, centroid[1] - slope * centroid[0]];
}

describe('1973 quartet, set III: ten points on a line and one off it', () => {
  // The data are published, and that one point is off an otherwise exact line.
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73];
  const points = x.map((value, i) => [value, y[i] ?? Number.NaN] as const);

  published(
    {
      source: 'quartet',
      section: 'set III, orthogonal fit by 50-digit arithmetic',
      kind: 'derived',
    },
    'orthogonal fit of all points',
    () => {
      const [slope, intercept] = slopeForm(fitLine(points));
      expectPrinted(slope, '0.5539856746');
      expectPrinted(intercept, '2.514128929');
    },
  );

  published(
    {
      source: 'quartet',
      section: 'set III, orthogonal fit by 50-digit arithmetic',
      kind: 'derived',
    },
    'orthogonal fit without the third point',
    () => {
      const [slope, intercept] = slopeForm(fitLine(points.filter((_, i) => i !== 2)));
      expectPrinted(slope, '0.3453898641');
      // the reference gives 4.0056471682; 50-digit arithmetic gives 4.00564716863...
      expectMisprint(intercept, '4.0056471682', '4.0056471686');
    },
  );

  published(
    { source: 'quartet', section: 'set III', kind: 'printed' },
    'as stakes, the third is the one to move',
    () => {
      const stakes = points.map(([px, py], i) => ({
        id: `P${i + 1}`,
        x: { value: px, unit: 'm' } as const,
        y: { value: py, unit: 'm' } as const,
      }));
      const inOrder = [...stakes].sort((a, b) => a.x.value - b.x.value);
      const line = checkStakeLine({ stakes: inOrder, tolerance: '10 mm', reference: 'best-fit' });
      expect(line.ok).toBe(false);
      expect(line.ambiguous).toBe(false);
      expectExact(
        line.moves.map(({ id }) => id),
        ['P3'],
      );
      expectExact(line.worst.id, 'P3');
      expect(line.moves[0]?.direction).toBe('right');
      // the distance from the point to the orthogonal line of the others
      const [slope, intercept] = slopeForm(fitLine(points.filter((_, i) => i !== 2)));
      const distance = (12.74 - intercept - slope * 13) / Math.hypot(1, slope);
      expect(line.moves[0]?.distance.toNumber('m')).toBeCloseTo(distance, 12);
    },
  );
});
