import { expect } from 'vitest';
import { checkSquare, pointByTapes, threeFourFive } from 'settline/stakes';
import { expectExact, expectWithin } from '../printed.js';
import { published } from './published.js';

published(
  { source: 'squaring-lines', section: 'lesson 1, 3-4-5', kind: 'printed' },
  '3-4-5 and its multiples',
  () => {
    // 15-20-25 ft stands on a framing page
    const multiples = [
      [3, 4, 5],
      [6, 8, 10],
      [9, 12, 15],
      [12, 16, 20],
      [15, 20, 25],
    ] as const;
    for (const [three, four, five] of multiples) {
      const corner = threeFourFive({ longest: `${five} ft`, step: '1 ft' });
      expectExact(
        [corner.three, corner.four, corner.five].map((one) => one.to('ft').toNumber()),
        [three, four, five],
      );
      const square = checkSquare({
        length: `${four} ft`,
        width: `${three} ft`,
        diagonals: [`${five} ft`, `${five} ft`],
        tolerance: '0 ft',
      });
      expect(square.verdict).toBe('pass');
      expect(square.move).toBeNull();
    }
  },
);

published(
  {
    source: 'open-surveying-library',
    section: 'intersection, self-study solution, problem (1)',
    kind: 'printed',
  },
  'two distances lead to a point that two directions fixed',
  () => {
    // points LR and FP from P1, and the length between them. North is y, east is x.
    const { point } = pointByTapes({
      from: [
        { x: '2000 ft', y: '1000 ft', distance: '690.811 ft' },
        { x: '1450.051 ft', y: '836.445 ft', distance: '1053.642 ft' },
      ],
      side: 'left',
    });
    const because = 'distances to 0.001 ft fix the point to about twice that';
    expectWithin(point.x.toNumber('ft'), '2435.613', { within: 0.002, because });
    expectWithin(point.y.toNumber('ft'), '463.846', { within: 0.002, because });
  },
);
