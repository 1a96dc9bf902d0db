import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { planJob, type JobInput, type JobPlan, type PavementPlan } from 'settline/job';
import { describe, expect, it } from 'vitest';
import { runs } from '../runs.js';

/**
 * Digs that run into each other and old paving that lies under parts of them, against the planar
 * overlays of a general-purpose geometry library: all areas and volumes of random sites with one depth
 * for each pavement.
 */

type Point = readonly [number, number];

interface Piece {
  /** Along the row of pavements. */
  readonly width: number;
  readonly height: number;
  readonly offset: number;
  /** To the next pavement. */
  readonly gap: number;
  readonly base: number;
  readonly above: number;
  readonly isOpen: readonly boolean[];
}

interface OldPiece {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
}

interface Site {
  readonly pieces: readonly Piece[];
  readonly old: readonly OldPiece[];
  readonly turn: readonly [number, number];
}

const millimetres = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((mm) => mm / 1000);

const site: fc.Arbitrary<Site> = fc.record({
  pieces: fc.array(
    fc.record({
      width: millimetres(800, 9000),
      height: millimetres(800, 9000),
      offset: millimetres(-1500, 1500),
      gap: fc.oneof(fc.constant(0), millimetres(1, 900), millimetres(1500, 3000)),
      base: fc.constantFrom(0.1, 0.15, 0.22, 0.3),
      above: fc.constantFrom(-0.35, -0.05, 0, 0, 0.04, 0.1),
      isOpen: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  old: fc.array(
    fc.record({
      x: millimetres(-2000, 12_000),
      y: millimetres(-2000, 6000),
      width: millimetres(500, 9000),
      height: millimetres(500, 9000),
      thickness: fc.constantFrom(0.05, 0.12, 0.3, 0.6),
    }),
    { maxLength: 2 },
  ),
  // turns that keep every coordinate a short decimal
  turn: fc.constantFrom<[number, number]>([1, 0], [0, 1], [0.6, 0.8], [-0.8, 0.6], [0.28, 0.96]),
});

const turned = ([c, s]: Site['turn'], [x, y]: Point): Point => [c * x - s * y, s * x + c * y];

const box = (x: number, y: number, width: number, height: number): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** The pavements in a row, apart or side by side. */
function jobOf({ pieces, old, turn }: Site): JobInput {
  const place = (points: readonly Point[]) => ({
    unit: 'm' as const,
    points: points.map((point) => {
      const [x, y] = turned(turn, point);
      return [x.toFixed(6), y.toFixed(6)] as const;
    }),
  });
  let x = 0;
  const pavements = pieces.map((piece, index) => {
    const outline = place(box(x, piece.offset, piece.width, piece.height));
    x += piece.width + piece.gap;
    return {
      id: `p${index}`,
      use: 'pedestrian' as const,
      subgrade: 'well-drained' as const,
      layers: [
        { kind: 'paver' as const, thickness: '60 mm' },
        { kind: 'bedding' as const, thickness: '25 mm', material: 'sand' },
        {
          kind: 'base' as const,
          thickness: { value: piece.base, unit: 'm' as const },
          material: 'stone',
        },
      ],
      outline,
      edges: piece.isOpen.map((isOpen) => (isOpen ? ('open' as const) : ('restraint' as const))),
      existingAboveFinish: { value: piece.above, unit: 'm' as const },
    };
  });
  return {
    version: 1,
    name: 'a row of pavements',
    stringHeight: '300 mm',
    stakeTolerance: '10 mm',
    edgeRestraintWidth: '60 mm',
    workingRoom: '100 mm',
    materials: {
      stones: [{ id: 'stone', ...FACTORS, maxLift: '100 mm' }],
      sands: [{ id: 'sand', ...FACTORS }],
    },
    oldPaving: old.map((one) => ({
      material: 'concrete' as const,
      thickness: { value: one.thickness, unit: 'm' as const },
      outline: place(box(one.x, one.y, one.width, one.height)),
    })),
    stakes: [
      { id: 'A', x: '-40 m', y: '-40 m' },
      { id: 'B', x: '-40 m', y: '40 m' },
    ],
    pavements,
    stringLines: pavements.map(({ id }) => ({ id: `s ${id}`, pavement: id, stakes: ['A', 'B'] })),
    soil: { bankDensity: '1800 kg/m3', loosePerBank: 1.25, compactedPerBank: 0.9 },
    truck: { boxVolume: '8 m3', payload: '12 t' },
  };
}

const FACTORS = { compactedDryDensity: '2100 kg/m3', compactedPerLoose: 0.8 } as const;

/** What is asked of a figure of the package, whose types are loose. */
interface Figure {
  getArea(): number;
}

const factory = new GeometryFactory();

const polygon = (points: readonly Point[]): Figure => {
  const coordinates = [...points, points[0] ?? [0, 0]].map(([x, y]) => new Coordinate(x, y));
  return factory.createPolygon(factory.createLinearRing(coordinates)) as Figure;
};

const digOf = ({ digOutline }: PavementPlan): Figure =>
  polygon(digOutline.map(({ x, y }) => [x.toNumber('m'), y.toNumber('m')]));

const both = (a: Figure, b: Figure): Figure => OverlayOp.intersection(a, b) as Figure;
const rest = (a: Figure, b: Figure): Figure => OverlayOp.difference(a, b) as Figure;
const united = (all: readonly Figure[]): Figure =>
  all.slice(1).reduce((sum, one) => OverlayOp.union(sum, one) as Figure, all[0] ?? polygon([]));

interface Expected {
  readonly cut: number;
  readonly fill: number;
  readonly area: number;
}

/** Cut and fill of a figure once the pieces of old paving are stripped. */
function earthIn(
  figure: Figure,
  depth: number,
  old: readonly (readonly [Figure, number])[],
): Expected {
  const [first, ...others] = old;
  if (first === undefined) {
    const area = figure.getArea();
    return { area, cut: area * Math.max(depth, 0), fill: area * Math.max(-depth, 0) };
  }
  const [where, thickness] = first;
  const under = earthIn(both(figure, where), depth - thickness, others);
  const beside = earthIn(rest(figure, where), depth, others);
  return {
    area: under.area + beside.area,
    cut: under.cut + beside.cut,
    fill: under.fill + beside.fill,
  };
}

/** What each pavement counts: the deepest dig first, then by id. */
function expected(plan: JobPlan, { old, turn }: Site): Expected[] {
  const pieces = old.map(
    (one) =>
      [
        polygon(box(one.x, one.y, one.width, one.height).map((point) => turned(turn, point))),
        one.thickness,
      ] as const,
  );
  const order = [...plan.pavements].sort(
    (a, b) => b.dig.depth.compare(a.dig.depth) * 2 + (a.id < b.id ? -1 : 1),
  );
  return plan.pavements.map((pavement) => {
    const before = order.slice(0, order.indexOf(pavement)).map(digOf);
    const own = before.reduce(rest, digOf(pavement));
    return earthIn(own, pavement.dig.depth.toNumber('m'), pieces);
  });
}

const near = (got: number, wanted: number): void => {
  expect(Math.abs(got - wanted)).toBeLessThan(1e-7 * (1 + Math.abs(wanted)));
};

describe('digs that run into each other', () => {
  it('count each spot once, with its old paving stripped first', () => {
    fc.assert(
      fc.property(site, (one) => {
        const job = jobOf(one);
        const plan = planJob(job);
        const wanted = expected(plan, one);
        plan.pavements.forEach(({ earth, areas }, index) => {
          const { cut, fill, area } = wanted[index] ?? { cut: NaN, fill: NaN, area: NaN };
          near(areas.ownDig.toNumber('m2'), area);
          near(earth.cut.volume.toNumber('m3'), cut);
          near(earth.fill.volume.toNumber('m3'), fill);
        });
        near(plan.totals.digArea.toNumber('m2'), united(plan.pavements.map(digOf)).getArea());
      }),
      runs(100),
    );
  });

  it('do not depend on the order of pavements and old paving', () => {
    fc.assert(
      fc.property(site, (one) => {
        const job = jobOf(one);
        const back = planJob({
          ...job,
          pavements: [...job.pavements].reverse(),
          oldPaving: [...(job.oldPaving ?? [])].reverse(),
        });
        const plan = planJob(job);
        const sum = ({ totals }: JobPlan) => ({
          dig: totals.digArea.toNumber('m2'),
          base: totals.baseArea.toNumber('m2'),
          spoil: totals.spoil?.bank.volume.toNumber('m3') ?? 0,
          stone: totals.stones[0]?.compacted.volume.toNumber('m3') ?? 0,
        });
        const [first, second] = [sum(plan), sum(back)];
        near(first.dig, second.dig);
        near(first.base, second.base);
        near(first.spoil, second.spoil);
        near(first.stone, second.stone);
      }),
      runs(25),
    );
  });
});
