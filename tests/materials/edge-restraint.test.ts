import { describe, expect, test } from 'vitest';
import { edgeRestraint } from 'settline/materials';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const edging = { runs: ['12 m'], piece: '2.4 m', spikeSpacing: '300 mm' } as const;
const counts = (options: object) => {
  const { pieces, spikes } = edgeRestraint({ ...edging, ...options });
  return [pieces, spikes];
};

describe('edge restraint', () => {
  test('by continuous run: no gap wider than the spacing, both ends held', () => {
    expect(counts({})).toEqual([5, 41]);
    expect(counts({ runs: ['12.0001 m'] })).toEqual([6, 42]);
    expect(counts({ runs: ['0.1 m'] })).toEqual([1, 2]);
    expect(counts({ runs: ['0 m'] })).toEqual([0, 0]);
    // two runs of 6 m are not one of 12 m
    expect(counts({ runs: ['6 m', '6 m'] })).toEqual([6, 42]);
    // inches, exactly: 8 ft of spikes a foot apart
    expect(counts({ runs: ['8 ft'], piece: '8 ft', spikeSpacing: '12 in' })).toEqual([1, 9]);
  });

  test('spikes are spread evenly, and the cut-off is left over', () => {
    const { runs } = edgeRestraint({ ...edging, runs: ['7.4 m', { value: 5, unit: 'm' }] });
    expect(runs.map((run) => [run.pieces, run.spikes])).toEqual([
      [4, 26],
      [3, 18],
    ]);
    expect(runs[0]?.spacing?.to('mm').toString()).toBe('296');
    expect(runs.map((run) => run.surplus.to('m').toString())).toEqual(['2.2', '2.2']);
  });

  test('laps shorten what a piece covers', () => {
    // 2.4 + 4 x 2.3 = 11.6: a sixth piece is needed
    expect(counts({ lap: '100 mm' })).toEqual([6, 41]);
    expect(counts({ runs: ['11.6 m'], lap: '100 mm' })).toEqual([5, 40]);
    const { runs } = edgeRestraint({ ...edging, lap: '100 mm' });
    expect(runs[0]?.surplus.to('m').toString()).toBe('1.9');
  });

  test('a ring has as many joints as pieces, and no end', () => {
    const ring = { length: '12 m', isClosed: true };
    expect(counts({ runs: [ring] })).toEqual([5, 40]);
    expect(counts({ runs: [ring], lap: '100 mm' })).toEqual([6, 40]);
    expect(counts({ runs: [ring], spikesPerJoint: 2 })).toEqual([5, 50]);
    expect(counts({ spikesPerJoint: 2 })).toEqual([5, 49]);
    expect(edgeRestraint({ ...edging, runs: [ring] }).working.map(formulaOf)).toEqual([
      'p = ceil(L / (P - o))',
      'n = ceil(L / s) + p * k',
    ]);
  });

  test('curves take their own spacing, walls no restraint at all', () => {
    const curve = { length: '3 m', isCurved: true };
    expect(counts({ runs: [curve] })).toEqual([2, 11]);
    expect(counts({ runs: [curve], curvedSpikeSpacing: '200 mm' })).toEqual([2, 16]);
    expect(counts({ runs: [{ ...curve, spikeSpacing: '150 mm' }] })).toEqual([2, 21]);
    expect(counts({ runs: [{ length: '3 m', spikeSpacing: '500 mm' }] })).toEqual([2, 7]);
    expect(counts({ runs: [{ length: '9 m', isAgainstWall: true }, '12 m'] })).toEqual([5, 41]);
    const note = (options: object) => edgeRestraint({ ...edging, ...options }).notes.length;
    expect(note({ runs: [curve] })).toBe(2);
    expect(note({ runs: [curve], curvedSpikeSpacing: '200 mm' })).toBe(1);
  });

  test('carries notes, source and the caution on lines in the ground', () => {
    const { notes, sources, cautions } = edgeRestraint(edging);
    expect(notes).toEqual(['Set the restraint on compacted base, never on bedding.']);
    expect(sources).toEqual(['edge-restraints']);
    expect(cautions.map(({ id }) => id)).toEqual(['utilities']);
  });

  testRefusals(edgeRestraint, edging, [
    ['runs', [], 'EMPTY_LIST'],
    ['runs', ['-1 m'], 'NEGATIVE', 'runs[0]'],
    ['runs', [12], 'UNIT_MISSING', 'runs[0]'],
    ['runs', [{}], 'REQUIRED', 'runs[0].length'],
    ['runs', [{ length: '1 m', isCurved: 'yes' }], 'WRONG_TYPE', 'runs[0].isCurved'],
    ['runs', [{ length: '1 m', spikeSpacing: '0 m' }], 'NOT_POSITIVE', 'runs[0].spikeSpacing'],
    ['piece', '0 m', 'NOT_POSITIVE'],
    ['spikeSpacing', '0 m', 'NOT_POSITIVE'],
    ['spikeSpacing', undefined, 'REQUIRED'],
    ['curvedSpikeSpacing', '-1 m', 'NOT_POSITIVE'],
    ['lap', '2.4 m', 'OUT_OF_RANGE'],
    ['lap', '-1 mm', 'NEGATIVE'],
    ['spikesPerJoint', 1.5, 'NOT_WHOLE'],
    ['spikesPerJoint', -1, 'NEGATIVE'],
  ]);

  test('more spikes than can be counted', () => {
    const hair = { value: '1e-20', unit: 'm' } as const;
    expectFault(() => edgeRestraint({ ...edging, spikeSpacing: hair }), 'CAPACITY_EXCEEDED');
  });
});
