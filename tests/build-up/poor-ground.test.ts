// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
// Source: Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade
// association guide), tolerance tables. Read. The inch and the millimetre figures are printed side by
// side and rounded apart.
// Source: PAV-TEC-002-22 Construction of Interlocking Concrete Pavements, Purpose. Read.
import { describe, expect, test } from 'vitest';
import { minimumBuildUp } from 'settline/build-up';

const uses = ['pedestrian', 'residential-driveway', 'parking-or-residential-street'] as const;

/** Inches added by reason, for a walk, a drive and a street, and where they are printed. */
const ADDED = {
  clay: [
    [2, 'common-practice'],
    [2, 'common-practice'],
    [2, 'common-practice'],
  ],
  'wet-or-weak': [
    [4, 'wet-base-clause'],
    [4, 'wet-base-clause'],
    [4, 'common-practice'],
  ],
  frost: [
    [2, 'frost-base-page'],
    [4, 'frost-base-page'],
    [4, 'common-practice'],
  ],
} as const;
const WORDS = {
  'common-practice': 'is common practice, not a published figure',
  'wet-base-clause': 'is the upper end of what the trade association prints (Tech Spec 2 ',
  'frost-base-page': 'is what one trade page prints (Frequently Asked Questions',
} as const;

describe('more base on poor ground', () => {
  test.each([
    ['clay', false, ['clay']],
    ['wet-or-weak', false, ['wet-or-weak']],
    ['well-drained', true, ['frost']],
    ['clay', true, ['clay', 'frost']],
    ['wet-or-weak', true, ['wet-or-weak', 'frost']],
  ] as const)('%s, frost %s', (subgrade, frost, reasons) => {
    for (const [use, name] of uses.entries()) {
      const least = minimumBuildUp({ use: name, subgrade, frost });
      const expected = reasons.map((reason) => ADDED[reason][use] ?? expect.unreachable());
      const inches = expected.reduce((sum, [one]) => sum + one, 0);
      expect(least.base.minus(least.publishedBase).toNumber('in')).toBeCloseTo(inches, 12);
      expect(least.adjustments.map(({ reason }) => reason)).toEqual(reasons);
      for (const [index, { added, source, status }] of least.adjustments.entries()) {
        const [amount, from] = expected[index] ?? expect.unreachable();
        expect([added.to('in').toNumber(), source]).toEqual([amount, from]);
        expect(status).toBe(from === 'common-practice' ? 'common-practice' : 'read');
        expect(least.sources).toContain(source);
        expect(least.notes[index]).toContain(WORDS[from]);
      }
    }
  });

  test('in frost a walk and a drive have the base that the page prints, and a street no less', () => {
    const base = (use: (typeof uses)[number], edition: 'in' | 'mm') =>
      minimumBuildUp({ use, subgrade: 'well-drained', frost: true, edition })
        .base.to(edition)
        .toNumber();
    expect(uses.map((use) => base(use, 'in'))).toEqual([6, 10, 12]);
    expect(uses.map((use) => base(use, 'mm'))).toEqual([150, 250, 300]);
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
