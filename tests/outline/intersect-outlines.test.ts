import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intersectOutlines, outlineArea, uniteOutlines } from 'settline/outline';
import { expectFault } from '../faults.js';
import { runs } from '../runs.js';
import { circle, outlineOf, rectangle, star } from './combined-cases.js';

const of = (...[outline, other]: Parameters<typeof rectangle>[]) =>
  intersectOutlines({
    outline: rectangle(...(outline ?? [0, 0, 1, 1])),
    other: rectangle(...(other ?? [0, 0, 1, 1])),
  });

describe('by pencil', () => {
  test('an old walk across a dig', () => {
    const { outlines, area } = of([0, 0, 8, 4], [6, -2, 1, 8]);
    expect(area.to('m2').toString()).toBe('4');
    expect(outlines[0]?.points).toHaveLength(4);
  });

  test('outlines that are apart or only touch have nothing in common', () => {
    for (const other of [
      [9, 0, 1, 1],
      [8, 0, 1, 1],
      [8, 4, 1, 1],
    ] as const) {
      const { outlines, area } = of([0, 0, 8, 4], [...other]);
      expect([area.isZero(), outlines]).toEqual([true, []]);
    }
  });

  test('one inside the other, and one that fills a hole of the other', () => {
    expect(of([0, 0, 8, 4], [1, 1, 2, 2]).area.to('m2').toString()).toBe('4');
    const paving = { ...rectangle(0, 0, 10, 10), holes: [rectangle(2, 2, 2, 2)] };
    const inHole = intersectOutlines({ outline: paving, other: rectangle(2, 2, 2, 2) });
    expect(inHole.outlines).toEqual([]);
    const acrossHole = intersectOutlines({ outline: paving, other: rectangle(1, 1, 2, 2) });
    expect(acrossHole.area.to('m2').toString()).toBe('3');
  });

  test('old paving that falls into two parts', () => {
    const comb = {
      unit: 'm',
      points: [
        [0, 0],
        [6, 0],
        [6, 5],
        [4, 5],
        [4, 1],
        [2, 1],
        [2, 5],
        [0, 5],
      ],
    } as const;
    const { outlines, area } = intersectOutlines({ outline: comb, other: rectangle(-1, 3, 9, 9) });
    expect([area.to('m2').toString(), outlines.length]).toEqual(['8', 2]);
  });

  test('half of a circle, and a quarter of it', () => {
    const half = intersectOutlines({ outline: circle(0, 0, 2), other: rectangle(-3, 0, 6, 3) });
    expect(half.area.to('m2').toFixed(30)).toBe('6.283185307179586476925286766559');
    const quarter = intersectOutlines({ outline: circle(0, 0, 2), other: rectangle(0, 0, 3, 3) });
    expect(quarter.area.to('m2').toFixed(30)).toBe('3.141592653589793238462643383280');
    // two straight edges and one arc
    expect(quarter.outlines[0]?.points).toHaveLength(3);
  });

  test('where slanted edges cross is worked out exactly, off every grid', () => {
    const triangle = {
      unit: 'm',
      points: [
        [0, 0],
        [3, 0],
        [0, 4],
      ],
    } as const;
    const { area } = intersectOutlines({ outline: triangle, other: rectangle(1, 1, 5, 5) });
    // legs 1.25 and 5/3: the corner is at x = 1, y = 8/3
    expect(area.times(24).to('m2').toString()).toBe('25');
  });

  test('a fault names its outline', () => {
    const other = {
      unit: 'm',
      points: [
        [0, 0],
        [1, 0],
      ],
    } as const;
    const issue = expectFault(
      () => intersectOutlines({ outline: rectangle(0, 0, 1, 1), other }),
      'TOO_FEW',
    );
    expect(issue.path).toEqual(['other', 'points']);
  });
});

describe('laws', () => {
  test('either way round it is the same; with itself an outline is itself', () => {
    fc.assert(
      fc.property(star(true), star(true), (a, b) => {
        const [outline, other] = [outlineOf(a), outlineOf(b)];
        const common = intersectOutlines({ outline, other });
        const turned = intersectOutlines({ outline: other, other: outline });
        expect(common.area.minus(turned.area).abs().toNumber('m2')).toBeLessThan(1e-25);
        const own = intersectOutlines({ outline, other: outline });
        expect(own.area.equals(outlineArea({ outline }).area)).toBe(true);
      }),
      runs(25),
    );
  });

  test('what is handed out can be given again', () => {
    fc.assert(
      fc.property(star(false), star(false), (a, b) => {
        const { outlines, area } = intersectOutlines({
          outline: outlineOf(a),
          other: outlineOf(b),
        });
        fc.pre(outlines.length > 0);
        const again = uniteOutlines({ outlines });
        expect(again.area.equals(area)).toBe(true);
        expect(again.outlines).toHaveLength(outlines.length);
      }),
      runs(60),
    );
  });

  test('a lens of two circles can be given again', () => {
    const { outlines, area } = intersectOutlines({
      outline: circle(0, 0, 1),
      other: circle(1, 0, 1),
    });
    const again = uniteOutlines({ outlines });
    expect(again.area.equals(area)).toBe(true);
  });
});
