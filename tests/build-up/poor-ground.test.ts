// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
// Source: Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade
// association guide), tolerance tables. Read. The inch and the millimetre figures are printed side by
// side and rounded apart.
// Source: PAV-TEC-002-22 Construction of Interlocking Concrete Pavements, Purpose. Read.
import { describe, expect, test } from 'vitest';
import { minimumBuildUp } from 'settline/build-up';

const uses = ['pedestrian', 'residential-driveway', 'parking-or-residential-street'] as const;

describe('more base on poor ground', () => {
  // From memory: 50 to 100 mm more on wet or weak clay or in frost; no source. Marked so.
  test.each([
    ['clay', false, '2', 'common-practice'],
    ['wet-or-weak', false, '4', 'common-practice'],
    ['well-drained', true, '2', 'common-practice'],
    ['clay', true, '4', 'common-practice'],
    ['wet-or-weak', true, '6', 'common-practice'],
  ] as const)('%s, frost %s: %s in more', (subgrade, frost, inches, status) => {
    for (const use of uses) {
      const least = minimumBuildUp({ use, subgrade, frost });
      expect(least.base.minus(least.publishedBase).to('in').toString()).toBe(inches);
      expect(least.adjustments.map((one) => one.status)).toEqual(
        least.adjustments.map(() => status),
      );
      expect(least.notes).toHaveLength(least.adjustments.length);
      expect(least.notes.join()).toContain('is common practice, not a published figure');
      expect(least.sources).toContain('common-practice');
    }
  });

  test('the structure is left to an engineer', () => {
    const { cautions } = minimumBuildUp({ use: 'pedestrian', subgrade: 'clay' });
    expect(cautions.map(({ id }) => id)).toEqual(['structure']);
    expect(cautions[0]?.text).toContain('licensed engineer');
  });
});
