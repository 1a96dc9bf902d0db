import fc from 'fast-check';
import { planJob, type JobPlan } from 'settline/job';
import { expect, test } from 'vitest';
import { heronYardFile } from '../heron-yard.js';
import type { Loose, LooseJob } from '../loose-job.js';
import { runs } from '../runs.js';

/**
 * One site told in other ways gives one plan: other orders of its lists, outlines the other way round or
 * from another corner, turned, moved, in another unit.
 */

type Point = readonly [number, number, ...number[]];

interface Telling {
  /** Turns that keep coordinates short. */
  readonly turn: readonly [number, number];
  readonly shift: readonly [number, number];
  readonly starts: readonly number[];
  readonly isReversed: boolean;
  readonly isMixed: boolean;
  readonly isInFeet: boolean;
}

const telling: fc.Arbitrary<Telling> = fc.record({
  turn: fc.constantFrom<readonly [number, number]>(
    [1, 0],
    [0, 1],
    [-1, 0],
    [0.6, 0.8],
    [-0.28, 0.96],
  ),
  shift: fc.constantFrom<readonly [number, number]>([0, 0], [31, -17], [500_000, 4_500_000]),
  starts: fc.array(fc.nat(5), { minLength: 2, maxLength: 2 }),
  isReversed: fc.boolean(),
  isMixed: fc.boolean(),
  isInFeet: fc.boolean(),
});

const FOOT = 0.3048;

function toldAs(file: LooseJob, how: Telling): LooseJob {
  const { turn, shift, isInFeet } = how;
  const [c, s] = turn;
  const place = ([x, y, ...rest]: Point): string[] => {
    const [px, py] = [c * x - s * y + shift[0], s * x + c * y + shift[1]];
    return [px, py, ...rest].map((one) => (isInFeet ? (one / FOOT).toFixed(9) : one.toFixed(9)));
  };
  const unit = isInFeet ? 'ft' : 'm';
  const points = (list: readonly Point[]) => list.map(place);
  const at = (one: Loose): Loose => {
    const [x, y] = place([metres(one['x']), metres(one['y'])]);
    return { ...one, x: `${x ?? ''} ${unit}`, y: `${y ?? ''} ${unit}` };
  };
  const pavements = file.pavements.map((pavement, index) => {
    const outline = pavement['outline'] as { points: Point[]; holes?: Point[][] };
    const edges = pavement['edges'] as unknown[];
    const around = rotated(outline.points, edges.slice(0, outline.points.length), {
      start: how.starts[index] ?? 0,
      isReversed: how.isReversed,
    });
    const grade = pavement['grade'] as { levels: Loose[] };
    return {
      ...pavement,
      outline: {
        unit,
        points: points(around.points),
        ...(outline.holes === undefined ? {} : { holes: outline.holes.map(points) }),
      },
      edges: [...around.edges, ...edges.slice(outline.points.length)],
      border: undefined,
      grade: { ...grade, levels: grade.levels.map(at) },
    };
  });
  const existing = file['existingLevels'] as { points: Point[] };
  const mixed = <T>(list: readonly T[]): T[] => (how.isMixed ? [...list].reverse() : [...list]);
  return {
    ...file,
    materials: {
      ...file.materials,
      // the laying direction turns with the site: count units by area
      pavers: file.materials.pavers.map((paver) => ({ ...paver, pattern: undefined })),
    },
    existingLevels: { unit, points: points(mixed(existing.points)) },
    stakes: mixed(file.stakes.map(at)),
    pavements: mixed(pavements),
    stringLines: mixed(file.stringLines),
    oldPaving: mixed(file['oldPaving'] as Loose[]).map((old) => ({
      ...old,
      outline: { unit, points: points((old['outline'] as { points: Point[] }).points) },
    })),
    utilities: (file['utilities'] as Loose[]).map((line) => ({
      ...line,
      path: (line['path'] as Loose[]).map(at),
    })),
    trees: (file['trees'] as Loose[]).map(at),
  };
}

const metres = (text: unknown): number => Number(String(text).replace(' m', ''));

/** An outline from another corner, or the other way round, with its edges. */
function rotated(
  points: readonly Point[],
  edges: readonly unknown[],
  { start, isReversed }: { readonly start: number; readonly isReversed: boolean },
) {
  const count = points.length;
  const from = start % count;
  const turnedPoints = [...points.slice(from), ...points.slice(0, from)];
  const turnedEdges = [...edges.slice(from), ...edges.slice(0, from)];
  if (!isReversed) return { points: turnedPoints, edges: turnedEdges };
  // edge k of the reversed outline runs back along edge n - 2 - k
  const backEdges = [...turnedEdges].reverse();
  return {
    points: [...turnedPoints].reverse(),
    edges: [...backEdges.slice(1), ...backEdges.slice(0, 1)],
  };
}

function figuresOf({ pavements, stringLines, totals, warnings }: JobPlan) {
  const byId = <T extends { readonly id: string }>(list: readonly T[]) =>
    [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  const figures = [
    totals.digArea.toNumber('m2'),
    totals.baseArea.toNumber('m2'),
    totals.spoil?.bank.volume.toNumber('m3') ?? 0,
    ...totals.stones.flatMap(({ compacted, mass }) => [
      compacted.volume.toNumber('m3'),
      mass.toNumber('t'),
    ]),
    ...totals.oldPaving.map(({ mass }) => mass.toNumber('t')).sort((a, b) => a - b),
    ...byId(pavements).flatMap(({ dig, earth, areas, top }) => [
      dig.depth.toNumber('m'),
      dig.soil.toNumber('m'),
      earth.cut.volume.toNumber('m3'),
      earth.fill.volume.toNumber('m3'),
      earth.sides.toNumber('m3'),
      areas.paving.toNumber('m2'),
      areas.ownDig.toNumber('m2'),
      top?.area.toNumber('m2') ?? 0,
    ]),
    ...byId(stringLines).flatMap(({ stakes }) =>
      stakes.flatMap(({ offset, station, finishElevation }) => [
        offset.toNumber('m'),
        station.toNumber('m'),
        finishElevation?.toNumber('m') ?? 0,
      ]),
    ),
  ];
  const codes = warnings.map(({ code }) => code).sort();
  return { figures, codes };
}

test('one site told in other ways gives one plan', () => {
  const file = heronYardFile();
  const plain = toldAs(file, {
    turn: [1, 0],
    shift: [0, 0],
    starts: [0, 0],
    isReversed: false,
    isMixed: false,
    isInFeet: false,
  });
  const wanted = figuresOf(planJob(plain as never));
  fc.assert(
    fc.property(telling, (how) => {
      const got = figuresOf(planJob(toldAs(file, how) as never));
      expect(got.codes).toEqual(wanted.codes);
      got.figures.forEach((figure, index) => {
        const want = wanted.figures[index] ?? NaN;
        expect(Math.abs(figure - want)).toBeLessThan(2e-6 * (1 + Math.abs(want)));
      });
    }),
    runs(20),
  );
});
