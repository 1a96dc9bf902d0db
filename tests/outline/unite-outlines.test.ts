import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intersectOutlines, outlineArea, uniteOutlines, widenOutline } from 'settline/outline';
import { expectFault } from '../faults.js';
import { runs } from '../runs.js';
import {
  circle,
  coarse,
  edgesOf,
  outlineOf,
  rectangle,
  star,
  type TestFigure,
} from './combined-cases.js';
import { scanArea } from './scan-area.js';

const squareMetres = (area: { to(unit: 'm2'): { toString(): string } }) => area.to('m2').toString();

describe('by pencil', () => {
  test('a walk along the side of a drive: the shared edge is gone, nothing overlaps', () => {
    const { outlines, area, perimeter, overlap } = uniteOutlines({
      outlines: [rectangle(0, 0, 9, 9), rectangle(9, 2, 1.5, 1.5)],
    });
    expect([squareMetres(area), squareMetres(overlap)]).toEqual(['83.25', '0']);
    expect(perimeter.to('m').toString()).toBe('39');
    expect(outlines).toHaveLength(1);
    expect(outlines[0]?.points).toHaveLength(8);
  });

  test('edges in thirds of a foot and slanted ones touch exactly', () => {
    const feet = (value: string) => ({ value, unit: 'ft' as const });
    const corner = (x: number, y: number) => ({ x: feet(`${x}/3`), y: feet(`${y}/3`) });
    const first = [corner(0, 0), corner(7, 1), corner(5, 8)];
    // a corner a third of the way up the slanted edge, and another two thirds up
    const second = [
      { x: feet('19/9'), y: feet('10/9') },
      { x: feet('17/9'), y: feet('17/9') },
      corner(10, 9),
    ];
    const { overlap, outlines } = uniteOutlines({ outlines: [first, second] });
    expect(overlap.isZero()).toBe(true);
    expect(outlines).toHaveLength(1);
  });

  test('the same outline twice, one inside the other, two apart, two that meet at a corner', () => {
    const of = (...outlines: Parameters<typeof uniteOutlines>[0]['outlines']) => {
      const united = uniteOutlines({ outlines });
      return [squareMetres(united.area), squareMetres(united.overlap), united.outlines.length];
    };
    expect(of(rectangle(0, 0, 4, 1), rectangle(0, 0, 4, 1))).toEqual(['4', '4', 1]);
    expect(of(rectangle(0, 0, 4, 4), rectangle(1, 1, 1, 1))).toEqual(['16', '1', 1]);
    expect(of(rectangle(0, 0, 4, 1), rectangle(9, 0, 4, 1))).toEqual(['8', '0', 2]);
    expect(of(rectangle(0, 0, 1, 1), rectangle(1, 1, 1, 1))).toEqual(['2', '0', 2]);
    expect(of(rectangle(0, 0, 1, 1))).toEqual(['1', '0', 1]);
  });

  test('an arc that a corner touches stays one arc, whichever edge it is', () => {
    const corners = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ] as const;
    const touching = [
      [2, -1],
      [1, -3],
      [3, -3],
    ] as const;
    for (const edge of [0, 1, 2, 3]) {
      // the arc runs from 0, 0 through 2, -1 to 4, 0
      const points = [...corners.slice((4 - edge) % 4), ...corners.slice(0, (4 - edge) % 4)];
      const bow = { unit: 'm' as const, points, arcs: [{ edge, bulgeMiddleOrdinate: 1 }] };
      const below = { unit: 'm' as const, points: touching };
      const { outlines, overlap } = uniteOutlines({ outlines: [bow, below] });
      expect(outlines.map((one) => [one.points.length, one.arcs.length])).toEqual([
        [4, 1],
        [3, 0],
      ]);
      const [arc] = outlines[0]?.arcs ?? [];
      expect(arc?.bulgeMiddleOrdinate.to('m').toString()).toBe('1');
      expect(overlap.isZero()).toBe(true);
    }
  });

  test('four strips close in a yard', () => {
    const { outlines, area, overlap } = uniteOutlines({
      outlines: [
        rectangle(0, 0, 4, 1),
        rectangle(0, 3, 4, 1),
        rectangle(0, 0, 1, 4),
        rectangle(3, 0, 1, 4),
      ],
    });
    expect([squareMetres(area), squareMetres(overlap)]).toEqual(['12', '4']);
    expect(outlines.map(({ holes }) => holes.length)).toEqual([1]);
    expect(outlines[0]?.holes[0]?.points).toHaveLength(4);
    expect(squareMetres(outlineArea({ outline: outlines[0] ?? [] }).area)).toBe('12');
  });

  test('a hole is filled, half or whole', () => {
    const paving = { ...rectangle(0, 0, 10, 10), holes: [rectangle(2, 2, 2, 2)] };
    const half = uniteOutlines({ outlines: [paving, rectangle(2, 2, 1, 2)] });
    expect(squareMetres(half.area)).toBe('98');
    const whole = uniteOutlines({ outlines: [paving, rectangle(2, 2, 2, 2)] });
    expect([squareMetres(whole.area), whole.outlines[0]?.holes.length]).toEqual(['100', 0]);
  });

  test('two circles share a lens, to 30 digits', () => {
    const { area, overlap, outlines } = uniteOutlines({
      outlines: [circle(0, 0, 1), circle(1, 0, 1)],
    });
    // 2 pi / 3 - sqrt(3) / 2 and twice pi less that
    expect(overlap.to('m2').toFixed(30)).toBe('1.228369698608756845544705751433');
    expect(area.to('m2').toFixed(30)).toBe('5.054815608570829631380581015126');
    expect(outlines[0]?.arcs).toHaveLength(4);
  });

  test('more than half of a circle is left, and can be measured again', () => {
    const { outlines, area } = uniteOutlines({
      outlines: [circle(0, 0, 2), rectangle(-1, -3, 2, 1.5)],
    });
    // below y = -1.5 the circle takes a cap; of the rectangle, what is below the circle is new
    const under = 2 * Math.asin(0.5) * 2 + Math.sqrt(3);
    expect(area.toNumber('m2')).toBeCloseTo(4 * Math.PI + 6 - under, 12);
    const again = outlineArea({ outline: outlines[0] ?? [] });
    expect(again.area.minus(area).abs().toNumber('m2')).toBeLessThan(1e-30);
  });

  test('a hole that is a crescent', () => {
    const paving = { ...rectangle(-3, -3, 6, 6), holes: [circle(0, 0, 1, -1)] };
    const { outlines, area } = uniteOutlines({ outlines: [paving, circle(0.5, 0, 1)] });
    const lens = 2 * Math.acos(0.25) - 0.25 * Math.sqrt(3.75);
    expect(area.toNumber('m2')).toBeCloseTo(36 - Math.PI + lens, 12);
    expect(squareMetres(outlineArea({ outline: outlines[0] ?? [] }).area)).toBe(squareMetres(area));
  });

  test('the digs of two adjoining pavements overlap by the strips at their common edge', () => {
    const digs = [rectangle(0, 0, 6, 4), rectangle(6, 0, 5, 4)].map(
      (outline) => widenOutline({ outline, by: '0.3 m' }).outline,
    );
    const { area, overlap } = uniteOutlines({ outlines: digs });
    expect([squareMetres(area), squareMetres(overlap)]).toEqual(['53.36', '2.76']);
  });

  test('what cannot be read is refused with its path', () => {
    expectFault(() => uniteOutlines({ outlines: [] }), 'EMPTY_LIST');
    const bowTie = [
      [0, 0],
      [2, 2],
      [2, 0],
      [0, 2],
    ] as const;
    const outlines = [rectangle(0, 0, 1, 1), { unit: 'm', points: bowTie } as const];
    const issue = expectFault(() => uniteOutlines({ outlines }), 'SELF_INTERSECTION');
    expect(issue.path).toEqual(['outlines', 1, 'points']);
  });

  test('the working adds up the areas', () => {
    const { working } = uniteOutlines({ outlines: [rectangle(0, 0, 2, 2), rectangle(1, 0, 2, 2)] });
    expect(working[0]?.given.map(({ value }) => String(value))).toEqual(['4 m2,4 m2', '6 m2']);
    expect(String(working[0]?.result.value)).toBe('2 m2');
  });
});

/** One of the outlines after the other has been moved, turned by right angles and listed anew. */
const changed = ({ rings }: TestFigure, [dx, dy]: readonly [number, number], quarters: number) => ({
  rings: rings.map(({ points, arcs }) => ({
    points: points.map(([x, y]): [number, number] => {
      let place: [number, number] = [x, y];
      for (let k = 0; k < quarters; k += 1) place = [-place[1], place[0]];
      return [place[0] + dx, place[1] + dy];
    }),
    arcs,
  })),
});

describe('laws', () => {
  test.each([
    ['straight', star(false), 120],
    ['on a coarse grid', coarse, 250],
  ] as const)('%s: A + B = union + common, exactly, and both as scanned', (_, figure, count) => {
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        const [first, second] = [outlineOf(a), outlineOf(b)];
        const united = uniteOutlines({ outlines: [first, second] });
        const common = intersectOutlines({ outline: first, other: second });
        const sum = [first, second].map((outline) => outlineArea({ outline }).area);
        const both = united.area.plus(common.area);
        expect(sum.reduce((x, y) => x.plus(y)).equals(both)).toBe(true);
        expect(united.overlap.equals(common.area)).toBe(true);
        const scanned = [1, 2].map((least) => scanArea([edgesOf(a), edgesOf(b)], least));
        expect(united.area.toNumber('m2')).toBeCloseTo(scanned[0] ?? 0, 9);
        expect(common.area.toNumber('m2')).toBeCloseTo(scanned[1] ?? 0, 9);
      }),
      runs(count),
    );
  });

  test('with arcs: as scanned, to 1e-9 of the area, and added up to 1e-25', () => {
    fc.assert(
      fc.property(star(true), star(true), (a, b) => {
        const [first, second] = [outlineOf(a), outlineOf(b)];
        const united = uniteOutlines({ outlines: [first, second] });
        const common = intersectOutlines({ outline: first, other: second });
        const rest = united.overlap.minus(common.area).abs().toNumber('m2');
        expect(rest).toBeLessThan(1e-25);
        const figures = [edgesOf(a), edgesOf(b)];
        const size = scanArea(figures, 1);
        expect(Math.abs(united.area.toNumber('m2') - size)).toBeLessThan(1e-9 * size);
        const shared = scanArea(figures, 2);
        expect(Math.abs(common.area.toNumber('m2') - shared)).toBeLessThan(1e-9 * size);
      }),
      runs(60),
    );
  });

  test('three at once, in any order, moved and turned by right angles: the same area', () => {
    const move = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
    const figures = fc.tuple(star(false), star(false), coarse);
    fc.assert(
      fc.property(figures, move, fc.integer({ min: 0, max: 3 }), (three, by, quarters) => {
        const areaOf = (list: readonly TestFigure[]) =>
          uniteOutlines({ outlines: list.map(outlineOf) });
        const { area, perimeter, outlines } = areaOf(three);
        const other = areaOf([...three].reverse().map((one) => changed(one, by, quarters)));
        expect(other.area.minus(area).abs().toNumber('m2')).toBeLessThan(1e-9);
        expect(other.perimeter.minus(perimeter).abs().toNumber('m')).toBeLessThan(1e-9);
        expect(other.outlines).toHaveLength(outlines.length);
        expect(area.toNumber('m2')).toBeCloseTo(scanArea(three.map(edgesOf), 1), 9);
      }),
      runs(60),
    );
  });
});
