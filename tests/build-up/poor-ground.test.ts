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
  // 50 to 100 mm more on wet or weak clay or in frost is common practice, but for a walk in frost.
  test.each([
    ['clay', false, '2'],
    ['wet-or-weak', false, '4'],
    ['well-drained', true, '2'],
    ['clay', true, '4'],
    ['wet-or-weak', true, '6'],
  ] as const)('%s, frost %s: %s in more', (subgrade, frost, inches) => {
    for (const use of uses) {
      const least = minimumBuildUp({ use, subgrade, frost });
      expect(least.base.minus(least.publishedBase).to('in').toString()).toBe(inches);
      for (const [index, { reason, source, status }] of least.adjustments.entries()) {
        const isRead = reason === 'frost' && use === 'pedestrian';
        expect([source, status]).toEqual(
          isRead ? ['frost-base-page', 'read'] : ['common-practice', 'common-practice'],
        );
        expect(least.sources).toContain(source);
        expect(least.notes[index]).toContain(
          isRead ? 'is what one trade page prints' : 'is common practice, not a published figure',
        );
      }
    }
  });

  test('a driveway in frost hears of the page that prints more, and no other driveway', () => {
    const notesOf = (
      use: (typeof uses)[number],
      frost: boolean,
      subgrade: 'clay' | 'well-drained' = 'well-drained',
    ) => minimumBuildUp({ use, subgrade, frost }).notes;
    expect(notesOf('residential-driveway', false, 'clay')).toHaveLength(1);
    expect(notesOf('residential-driveway', true, 'clay')).toHaveLength(3);
    expect(notesOf('residential-driveway', true)[1]).toContain('a base of 10 in');
    // 10 in less the 6 in of the table; 2 in are added here
    expect(notesOf('residential-driveway', true)[1]).toContain(
      '4 in over the minimum and twice what is added here',
    );
    expect(notesOf('residential-driveway', false)).toEqual([]);
    expect(notesOf('pedestrian', true)).toHaveLength(1);
  });

  test.each([
    ['well-drained', false, 'paver-tolerances', []],
    ['well-drained', true, 'frost-base-page', ['frost']],
    ['clay', false, 'common-practice', ['clay subgrade']],
    ['wet-or-weak', true, 'common-practice', ['wet or weak subgrade', 'frost']],
  ] as const)('a walk on %s ground, frost %s: the sum cites %s', (subgrade, frost, source, why) => {
    const { working, notes } = minimumBuildUp({ use: 'pedestrian', subgrade, frost });
    expect(working.map((step) => step.source)).toEqual([source]);
    expect(notes.map((note) => /^Base added for (.*) is /.exec(note)?.[1])).toEqual(why);
  });

  test('the structure is left to an engineer', () => {
    const { cautions } = minimumBuildUp({ use: 'pedestrian', subgrade: 'clay' });
    expect(cautions.map(({ id }) => id)).toEqual(['structure']);
    expect(cautions[0]?.text).toContain('licensed engineer');
  });
});
