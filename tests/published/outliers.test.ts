import { describe, expect } from 'vitest';
import { outlierCritical, studentQuantile } from 'settline/geometry';
import { checkStakeProfile, stakeOutliers } from 'settline/stakes';
import { expectExact, expectPrinted } from '../printed.js';
import { published } from './published.js';

const marks = (x: readonly number[], y: readonly number[]) =>
  x.map((station, k) => ({
    id: `P${k}`,
    station: { value: station, unit: 'm' } as const,
    elevation: { value: y[k] ?? Number.NaN, unit: 'm' } as const,
  }));

describe('a grade from a held level', () => {
  published(
    { source: 'nist-strd', section: 'dataset NoInt1, certified values', kind: 'printed' },
    'certified slope of a line through the origin',
    () => {
      const x = [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70];
      const stakes = marks([0, ...x], [0, ...x.map((one) => one + 70)]);
      const { slope } = checkStakeProfile({ stakes, tolerance: '0 m', reference: 'first' });
      expectPrinted(slope.toNumber('ratio'), '2.07438016528926');
    },
  );
});

describe('1973 quartet, set III: ten points on a line and one off it', () => {
  // The data are published, the fit 3 + 0.5 x, and that one point is off.
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73];

  published(
    { source: 'quartet', section: 'set III, fit of all points', kind: 'printed' },
    'the grade of all',
    () => {
      const { slope, worst } = checkStakeProfile({
        stakes: marks(x, y),
        tolerance: '10 mm',
        reference: 'best-fit',
      });
      expectPrinted(slope.toNumber('ratio'), '0.5');
      expectPrinted(slope.toNumber('ratio'), '0.4997272727');
      expectExact(worst.id, 'P2');
    },
  );

  published(
    { source: 'quartet', section: 'set III', kind: 'derived' },
    'the mark that is off, against the grade of the others',
    () => {
      const { outliers, worst, stakes } = stakeOutliers({
        stakes: marks(x, y),
        tolerance: '0.1 m',
      });
      expectExact(outliers, ['P2']);
      expectExact(worst, 'P2');
      const [, , off] = stakes;
      expectPrinted(off?.deleted.toNumber('m') ?? Number.NaN, '4.2442857143');
      expectPrinted(off?.studentized ?? Number.NaN, '1203.5395');
      expect(off?.move.direction).toBe('down');
    },
  );

  published(
    { source: 'quartet', section: 'set III', kind: 'printed' },
    'the same stakes in plan',
    () => {
      const order = x.map((_, k) => k).sort((a, b) => (x[a] ?? 0) - (x[b] ?? 0));
      const stakes = order.map((k) => ({
        id: `P${k}`,
        x: { value: x[k] ?? 0, unit: 'm' } as const,
        y: { value: y[k] ?? 0, unit: 'm' } as const,
      }));
      const { outliers, worst } = stakeOutliers({ stakes, tolerance: '0.1 m' });
      expectExact(outliers, ['P2']);
      expectExact(worst, 'P2');
    },
  );
});

published(
  {
    source: 'regression-course',
    section: 'four points, quoted in a secondary page',
    kind: 'printed',
  },
  'studentized deleted residuals of four points',
  () => {
    // the four values were read; the data are from memory and give all four
    const { stakes } = stakeOutliers({ stakes: marks([1, 2, 3, 10], [2.1, 3.8, 5.2, 2.1]) });
    const printed = ['-1.7431', '0.1217', '1.6361', '-19.7990'];
    printed.forEach((text, k) => {
      expectPrinted(stakes[k]?.studentized ?? Number.NaN, text);
    });
    expectExact(stakes[3]?.deleted.to('m').toString(), '-14');
  },
);

published(
  { source: 'nist-handbook', section: '1.3.5.17.1, n = 8', kind: 'printed' },
  'critical values of the maximum normed residual',
  () => {
    // G = (n - 1) / sqrt(n) sqrt(t^2 / (n - 2 + t^2)), t for n - 2 degrees of freedom
    const critical = (tail: number) => {
      const t = studentQuantile({ tail, degreesOfFreedom: 6 });
      return (7 / Math.sqrt(8)) * Math.sqrt((t * t) / (6 + t * t));
    };
    expectPrinted(critical(0.05 / 8), '2.031652');
    expectPrinted(critical(0.05 / 16), '2.1266451');
  },
);

published(
  { source: 'outlier-guidance', section: 'abstract, rule', kind: 'derived' },
  'critical values for many residuals at once',
  () => {
    // The probability is divided by the number of residuals; values for normal residuals are worked
    // out.
    const normal = (tail: number) => studentQuantile({ tail, degreesOfFreedom: 10_000_000 });
    expectPrinted(normal(0.05 / 10), '2.5758');
    expectPrinted(normal(0.05 / 16), '2.7344');
    expectPrinted(normal(0.05 / 20), '2.8070');
    expectPrinted(normal(0.05 / 40), '3.0233');
    expectPrinted(normal(0.001 / 2), '3.2905');
    // what the library compares with is the same rule with t in place of the normal distribution
    const eleven = studentQuantile({ tail: 0.05 / 22, degreesOfFreedom: 8 });
    expect(outlierCritical({ count: 11 })).toBe(eleven);
  },
);
