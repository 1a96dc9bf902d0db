import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ERROR_CODES, isSettlineError } from 'settline';
import {
  baseOrder,
  beddingSand,
  bondDrift,
  borderCourse,
  edgeRestraint,
  geotextile,
  jointSand,
  LAYING_PATTERNS,
  orderPacks,
  outlineEdges,
  rowFit,
  soldierCurve,
  unitCount,
  yieldCheck,
  type LayingPattern,
} from 'settline/materials';
import { outlineArea } from 'settline/outline';
import { isQuantity, length, sum, type Length, type Mass } from 'settline/units';
import { positiveLength } from './arbitrary.js';
import { runs } from '../runs.js';

const FEW = runs(100);
const hundredths = (least: number, most: number) =>
  fc.integer({ min: Math.ceil(least * 100), max: most * 100 }).map((k) => `${k}/100`);
const fraction = hundredths(0, 1);
const mm = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((k) => length(k / 10, 'mm'));
const unit = fc.record({ length: mm(60, 600), width: mm(40, 300) });
const zero = length(0, 'm');

describe('orders', () => {
  const hold = fc.integer({ min: 1, max: 500 });

  test('are never less than the need and less than one pack over', () => {
    fc.assert(
      fc.property(hundredths(0, 5000), hold, hold, fc.boolean(), (need, bag, pallet, byPallet) => {
        const packs = [
          { name: 'bag', holds: { value: bag, unit: 'kg' } as const },
          { name: 'pallet', holds: pallet },
        ];
        const soldBy = byPallet ? 'pallet' : 'bag';
        const order = orderPacks({ mass: { value: need, unit: 'kg' }, packs, soldBy });
        const pack = order.packs[byPallet ? 1 : 0];
        expect(order.ordered.compare(order.need)).toBeGreaterThanOrEqual(0);
        expect(order.surplus.compare(pack?.holds ?? order.need)).toBeLessThan(0);
        expect(order.ordered.minus(order.need).equals(order.surplus)).toBe(true);
        // the load is the order, and each pack holds it
        const holds = new Map(order.packs.map((one) => [one.name, one.holds]));
        const loaded = order.load.map(({ name, count }) => holds.get(name)?.times(count));
        const nothing = order.need.minus(order.need);
        const total = loaded.reduce<Mass>((all, one) => all.plus(one ?? nothing), nothing);
        expect(total.equals(order.ordered)).toBe(true);
        for (const { count, full, holds: one } of order.packs) {
          expect(one.times(count).compare(order.ordered)).toBeGreaterThanOrEqual(0);
          expect(one.times(full).compare(order.ordered)).toBeLessThanOrEqual(0);
          expect(count - full).toBeLessThanOrEqual(1);
        }
      }),
      FEW,
    );
  });

  test('round monotonely: who needs more never gets less', () => {
    const need = fc.integer({ min: 0, max: 100_000 });
    fc.assert(
      fc.property(need, need, hold, hold, hold, (a, b, layer, pallet, minimum) => {
        const packs = [
          { name: 'layer', holds: layer },
          { name: 'pallet', holds: pallet },
        ];
        const ordered = (units: number) =>
          orderPacks({ units, packs, soldBy: 'pallet', minimum }).ordered;
        const [less, more] = a < b ? [a, b] : [b, a];
        expect(ordered(less)).toBeLessThanOrEqual(ordered(more));
        // an order is ordered as it is
        expect(ordered(ordered(more))).toBe(ordered(more));
      }),
      FEW,
    );
  });
});

describe('units', () => {
  const field = fc.record({
    area: hundredths(0, 500),
    unit,
    pattern: fc.constantFrom(...LAYING_PATTERNS),
    edge: fc.array(
      fc.record({
        length: positiveLength(100),
        angle: fc.integer({ min: -360, max: 360 }).map((deg) => `${deg} deg`),
        turn: fc.constantFrom('0 deg', '35 deg', '-90 deg'),
      }),
      { maxLength: 4 },
    ),
    reuse: fraction,
    breakage: fraction,
  });
  const count = (
    { area, ...rest }: typeof field extends fc.Arbitrary<infer T> ? T : never,
    joint: Length,
  ) => unitCount({ area: { value: area, unit: 'm2' }, ...rest, joint });

  test('widening the joint never raises a count', () => {
    fc.assert(
      fc.property(field, mm(0, 20), mm(0, 20), (given, a, b) => {
        const [narrow, wide] = a.compare(b) < 0 ? [a, b] : [b, a];
        const [more, less] = [count(given, narrow), count(given, wide)];
        for (const name of ['perArea', 'whole', 'cut', 'extra', 'order'] as const) {
          expect(less[name]).toBeLessThanOrEqual(more[name]);
        }
      }),
      FEW,
    );
  });

  test('an order covers the whole units, and grows with breakage and without reuse', () => {
    fc.assert(
      fc.property(field, mm(0, 20), (given, joint) => {
        const all = count(given, joint);
        expect(all.order).toBeGreaterThanOrEqual(all.whole);
        const careful = count({ ...given, breakage: '0', reuse: '1' }, joint);
        expect(careful.order).toBe(careful.whole);
        expect(careful.order).toBeLessThanOrEqual(all.order);
        // no more than every cut unit wasted, all of it rounded up once
        const most = (all.whole + all.cut / 2) * 2;
        expect(all.order).toBeLessThanOrEqual(Math.ceil(most));
      }),
      FEW,
    );
  });

  test('edges count one by one, and the way round or the unit does not matter', () => {
    fc.assert(
      fc.property(field, mm(0, 20), (given, joint) => {
        const all = count(given, joint);
        const apart = given.edge.map((edge) => count({ ...given, edge: [edge] }, joint));
        const extra = apart.reduce((total, one) => total + one.extra, 0);
        expect(all.extra).toBeCloseTo(extra, 6);
        const turned = given.edge.map((edge) => ({
          ...edge,
          angle: `${Number.parseInt(edge.angle, 10) / 2 + 180} deg`,
        }));
        const halved = given.edge.map((edge) => ({
          ...edge,
          angle: `${Number.parseInt(edge.angle, 10) / 2} deg`,
        }));
        expect(count({ ...given, edge: turned }, joint).extra).toBeCloseTo(
          count({ ...given, edge: halved }, joint).extra,
          6,
        );
      }),
      FEW,
    );
  });

  test('the cuts are what a line across a laid pattern meets', () => {
    // a second way: walk along the line and count the changes of unit, over many starts
    const [steps, starts] = [8_000, 16];
    const size = 200;
    for (const pattern of LAYING_PATTERNS) {
      for (const angle of [0, 17, 30, 45, 70, 90]) {
        // herringbone at 45: the pattern is turned against its reference line
        const by = pattern === 'herringbone-45' ? angle + 45 : angle;
        const [dx, dy] = [Math.cos((by * Math.PI) / 180), Math.sin((by * Math.PI) / 180)];
        let met = 0;
        for (let start = 0; start < starts; start += 1) {
          // starts spread evenly over four by four modules
          const [x0, y0] = [((start * 0.618034) % 1) * 4, ((start * 0.754878) % 1) * 4];
          let last = '';
          for (let step = 0; step <= steps; step += 1) {
            const on = (size * step) / steps;
            const id = unitAt(pattern, x0 + on * dx, y0 + on * dy);
            if (id !== last && last !== '') met += 1;
            last = id;
          }
        }
        const { extra } = unitCount({
          area: '100 m2',
          unit: { length: '2 m', width: '1 m' },
          joint: '0 m',
          pattern,
          edge: { length: `${size} m`, angle: `${angle} deg` },
        });
        const walked = met / starts / 2;
        expect(Math.abs(walked / extra - 1), `${pattern} at ${angle}`).toBeLessThan(0.03);
      }
    }
  });
});

/** Which unit of 2 by 1 covers a place. */
function unitAt(pattern: LayingPattern, x: number, y: number): string {
  const [i, j] = [Math.floor(x), Math.floor(y)];
  if (pattern === 'running-bond' || pattern === 'stack-bond') {
    const shift = pattern === 'running-bond' && j % 2 !== 0 ? 1 : 0;
    return `${Math.floor((x - shift) / 2)},${j}`;
  }
  if (pattern === 'basket-weave') {
    const [a, b] = [Math.floor(x / 2), Math.floor(y / 2)];
    return (a + b) % 2 === 0 ? `${a},${b},h${j}` : `${a},${b},v${i}`;
  }
  const place = (((i - j) % 4) + 4) % 4;
  if (place < 2) return `h${i - place},${j}`;
  return place === 2 ? `v${i},${j}` : `v${i},${j + 1}`;
}

describe('borders', () => {
  /** A figure about a point, star-shaped, with room for a course. */
  const star = fc
    .array(fc.integer({ min: 40, max: 60 }), { minLength: 3, maxLength: 9 })
    .map((radii) =>
      radii.map((radius, index) => {
        const turn = (2 * Math.PI * index) / radii.length;
        return [
          Math.round(radius * Math.cos(turn) * 1000) / 10_000,
          Math.round(radius * Math.sin(turn) * 1000) / 10_000,
        ] as const;
      }),
    );
  const course = fc.constantFrom('soldier', 'sailor', 'header');
  const block = { length: '200 mm', width: '100 mm' } as const;

  test('border and field are the paving; the way round does not matter', () => {
    fc.assert(
      fc.property(star, course, fc.constantFrom('butt', 'mitre'), (points, one, corner) => {
        const made = (list: typeof points) =>
          borderCourse({
            outline: { unit: 'm', points: list },
            unit: block,
            joint: '3 mm',
            course: one,
            corner,
          });
        const border = made(points);
        const paving = outlineArea({ outline: { unit: 'm', points } }).area;
        expect(border.area.plus(border.field.area).equals(paving)).toBe(true);
        expect(border.area.isNegative()).toBe(false);
        // enough for each run, and no unit more
        expect(border.units).toBe(border.runs.reduce((count, run) => count + run.units, 0));
        for (const { length: run, units } of border.runs) {
          expect(border.pitch.times(units).compare(run)).toBeGreaterThanOrEqual(0);
          expect(border.pitch.times(units - 1).compare(run)).toBe(-1);
        }
        expect(border.runs.flatMap(({ edges }) => edges).sort((a, b) => a - b)).toEqual(
          border.sides.map(({ edge }) => edge),
        );
        const back = made([...points].reverse());
        expect(back.units).toBe(border.units);
        expect(back.field.area.minus(border.field.area).abs().toNumber('m2')).toBeLessThan(1e-20);
        // the course is as large as its centre line times its depth, corners and all
        const strip = border.centreLine.times(border.depth);
        expect(strip.minus(border.area).abs().toNumber('m2')).toBeLessThan(1e-20);
        const { edges } = outlineEdges({ outline: { points: border.field.outline } });
        expect(edges.map((edge) => edge.length.toNumber('m'))).toEqual(
          border.field.edges.map((edge) => edge.length.toNumber('m')),
        );
      }),
      runs(20),
    );
  });
});

describe('rows', () => {
  test('what is laid is as wide as the row, whichever way', () => {
    fc.assert(
      fc.property(
        positiveLength(20),
        mm(50, 600),
        mm(0, 20),
        fc.constantFrom(0, 1, 2),
        hundredths(0.01, 1),
        (width, size, joint, endJoints, minimumPiece) => {
          fc.pre(width.compare(joint.times(endJoints)) > 0);
          const jointLimits = { minimum: '1 mm', maximum: '12 mm' };
          const fit = rowFit({ width, size, joint, endJoints, minimumPiece, jointLimits });
          for (const way of fit.options) {
            const pieces = way.whole + way.cuts;
            const laid = size
              .times(way.whole)
              .plus((way.piece ?? zero).times(way.cuts))
              .plus(way.joint.times(pieces - 1 + endJoints));
            expect(laid.minus(width).abs().toNumber('m')).toBeLessThan(1e-30);
            if (way.piece !== null) {
              expect(way.piece.compare(size)).toBeLessThanOrEqual(0);
              const isLarge = way.piece
                .dividedBy(size)
                .gte(Number(minimumPiece.split('/')[0]) / 100);
              expect(way.isLargeEnough).toBe(isLarge);
            }
          }
          if (!fit.isLargeEnough)
            expect(fit.options.every(({ isLargeEnough }) => !isLargeEnough)).toBe(true);
        },
      ),
      FEW,
    );
  });

  test('at the minimum radius the outer joint is its limit, and no tighter', () => {
    fc.assert(
      fc.property(unit, mm(1, 5), mm(6, 12), (block, joint, maximumJoint) => {
        const course = { unit: block, joint, maximumJoint };
        const { minimumRadius } = soldierCurve(course);
        const { atRadius } = soldierCurve({ ...course, radius: minimumRadius });
        expect(atRadius?.outerJoint.equals(maximumJoint)).toBe(true);
        expect(
          soldierCurve({ ...course, radius: minimumRadius.times('0.999') }).atRadius?.isWithinLimit,
        ).toBe(false);
        // tapered units stand as close inside as outside
        const inner = block.width.minus(atRadius?.taper ?? zero).plus(joint);
        const outer = block.width.plus(joint);
        const turn = minimumRadius.dividedBy(minimumRadius.plus(block.length));
        expect(inner.dividedBy(outer).minus(turn).abs().lt('1e-30')).toBe(true);
      }),
      FEW,
    );
  });

  test('one course more would drift too far', () => {
    fc.assert(
      fc.property(hundredths(0.05, 2), hundredths(0.05, 2), mm(5, 20), (bias, scatter, tol) => {
        const { courses, drift } = bondDrift({
          bias: { value: bias, unit: 'mm' },
          scatter: { value: scatter, unit: 'mm' },
          tolerance: tol,
          module: '103 mm',
        });
        const at = (n: number) =>
          n * length(bias, 'mm').toNumber('mm') +
          length(scatter, 'mm').toNumber('mm') * Math.sqrt(n);
        expect(drift.toNumber('mm')).toBeCloseTo(at(courses), 9);
        expect(at(courses)).toBeLessThanOrEqual(tol.toNumber('mm') + 1e-9);
        expect(at(courses + 1)).toBeGreaterThan(tol.toNumber('mm') - 1e-9);
      }),
      FEW,
    );
  });
});

describe('volumes and masses', () => {
  const stone = fc.record({
    compactedDryDensity: fc
      .integer({ min: 1600, max: 2500 })
      .map((value) => ({ value, unit: 'kg/m3' }) as const),
    compactedPerLoose: hundredths(0.5, 1),
    moisture: fraction,
    waste: fraction,
  });
  const part = fc.record({
    area: hundredths(0.01, 500).map((value) => ({ value, unit: 'm2' }) as const),
    thickness: positiveLength(1),
  });

  test('the parts of a base add up, and its tickets agree with its hole', () => {
    fc.assert(
      fc.property(stone, fc.array(part, { minLength: 1, maxLength: 4 }), (given, parts) => {
        const base = baseOrder({ ...given, parts });
        const each = base.parts;
        expect(sum(each.map(({ deliveredMass }) => deliveredMass)).equals(base.deliveredMass)).toBe(
          true,
        );
        expect(sum(each.map(({ loose }) => loose.volume)).equals(base.loose.volume)).toBe(true);
        const { ratio, verdict } = yieldCheck({
          tickets: [baseOrder({ ...given, waste: 0, parts }).deliveredMass],
          moisture: given.moisture,
          compactedVolume: base.compacted,
          expectedDryDensity: given.compactedDryDensity,
        });
        expect(ratio.toString()).toBe('1');
        expect(verdict).toBe('pass');
        // the same from the other pair of densities
        const loose = base.dryMass.dividedBy(base.loose.volume);
        const other = baseOrder({
          parts,
          compactedDryDensity: given.compactedDryDensity,
          looseDryDensity: loose,
          moisture: given.moisture,
          waste: given.waste,
        });
        expect(other.loose.volume.equals(base.loose.volume)).toBe(true);
      }),
      FEW,
    );
  });

  test('bulking swells sand and does not make it heavier', () => {
    fc.assert(
      fc.property(stone, part, fraction, fraction, (given, bed, a, b) => {
        const sand = (bulking: string) => beddingSand({ ...given, ...bed, bulking });
        const [x, y] = [sand(a), sand(b)];
        expect(x.deliveredMass.equals(y.deliveredMass)).toBe(true);
        expect(x.compacted.volume.equals(y.compacted.volume)).toBe(true);
        const order = Math.sign(Number(a.split('/')[0]) - Number(b.split('/')[0]));
        expect(x.delivered.volume.compare(y.delivered.volume)).toBe(order);
        expect(x.delivered.volume.compare(x.compacted.volume)).toBeGreaterThanOrEqual(0);
      }),
      FEW,
    );
  });

  test('wider joints take more sand, and bags always hold it', () => {
    fc.assert(
      fc.property(unit, mm(1, 20), mm(1, 20), hundredths(1, 40), (block, a, b, bag) => {
        const sand = (joint: Length) =>
          jointSand({
            area: '40 m2',
            unit: block,
            joint,
            depth: '60 mm',
            density: '1600 kg/m3',
            bag: { value: bag, unit: 'kg' },
          });
        const [x, y] = [sand(a), sand(b)];
        expect(x.mass.compare(y.mass)).toBe(a.compare(b));
        expect(x.surplus?.isNegative()).toBe(false);
        expect(x.surplus?.toNumber('kg')).toBeLessThan(Number(bag.split('/')[0]) / 100);
      }),
      FEW,
    );
  });
});

describe('edges and fabric', () => {
  test('no gap between spikes is wider than asked, and one spike fewer would make one', () => {
    fc.assert(
      fc.property(positiveLength(60), positiveLength(2), fc.boolean(), (run, spacing, closed) => {
        const { runs, spikes, pieces } = edgeRestraint({
          runs: [{ length: run, isClosed: closed }],
          piece: '2.4 m',
          spikeSpacing: spacing,
        });
        const gaps = spikes - (closed ? 0 : 1);
        expect(run.compare(spacing.times(gaps))).toBeLessThanOrEqual(0);
        expect(run.compare(spacing.times(gaps - 1))).toBe(1);
        expect(runs[0]?.spacing?.times(gaps).minus(run).abs().toNumber('m')).toBeLessThan(1e-30);
        expect(length('2.4 m').times(pieces).compare(run)).toBeGreaterThanOrEqual(0);
        expect(
          length('2.4 m')
            .times(pieces - 1)
            .compare(run),
        ).toBe(-1);
      }),
      FEW,
    );
  });

  test('strips cover the width, and one fewer would not', () => {
    fc.assert(
      fc.property(
        positiveLength(90),
        positiveLength(90),
        hundredths(1, 6),
        hundredths(0, 0.9),
        hundredths(5, 120),
        (long, wide, rollWidth, overlap, rollLength) => {
          const given = { value: overlap, unit: 'm' } as const;
          const fabric = geotextile({
            length: long,
            width: wide,
            rollWidth: { value: rollWidth, unit: 'm' },
            overlap: given,
            rollLength: { value: rollLength, unit: 'm' },
          });
          const [roll, lap] = [length(rollWidth, 'm'), length(overlap, 'm')];
          const covers = (n: number) => roll.times(n).minus(lap.times(n - 1));
          expect(covers(fabric.strips).compare(wide)).toBeGreaterThanOrEqual(0);
          if (fabric.strips > 1) expect(covers(fabric.strips - 1).compare(wide)).toBe(-1);
          expect(fabric.surplus?.isNegative()).toBe(false);
          // rolls side by side of the other way: the same as turning the dig
          const turned = geotextile({
            length: wide,
            width: long,
            rollWidth: { value: rollWidth, unit: 'm' },
            overlap: given,
            rollLength: { value: rollLength, unit: 'm' },
          });
          expect(turned.across.rolls).toBe(fabric.rolls);
          expect(turned.strips).toBe(fabric.across.strips);
        },
      ),
      FEW,
    );
  });
});

describe('whatever is put in', () => {
  const anything = fc.oneof(
    fc.constantFrom(
      undefined,
      null,
      '',
      'x',
      '12',
      '1e400 m',
      NaN,
      Infinity,
      -1,
      0,
      1,
      1e9,
      {},
      [],
    ),
    fc.constantFrom(
      '1 m',
      '-1 m',
      '0 m',
      '3 m2',
      '5 kg',
      '1/3',
      '1 ton',
      '1/0 m',
      '1e-30 m',
      '99 t',
    ),
  );
  const block = { length: '200 mm', width: '100 mm' };
  const square = {
    unit: 'm',
    points: [
      [0, 0],
      [3, 0],
      [3, 3],
      [0, 3],
    ],
  };
  const dry = { compactedDryDensity: '2 t/m3', compactedPerLoose: 0.8, moisture: 0.1, waste: 0.1 };
  const bed = { area: '9 m2', thickness: '25 mm', ...dry, bulking: 0.2, settlement: '5 mm' };
  const soldier = { unit: block, joint: '3 mm', maximumJoint: '5 mm', radius: '3 m' };
  const edging = { runs: ['3 m'], piece: '2.4 m', spikeSpacing: '0.3 m', lap: '10 mm' };
  const fabric = { length: '9 m', width: '3 m', rollWidth: '2 m', overlap: '0.3 m', upturn: '0 m' };
  const joints = { area: '9 m2', unit: block, joint: '3 mm', depth: '6 cm', density: '1.6 t/m3' };
  const calls: readonly (readonly [(options: never) => unknown, object])[] = [
    [baseOrder, { parts: [{ area: '9 m2', thickness: '0.2 m' }], ...dry }],
    [beddingSand, bed],
    [bondDrift, { bias: '0.4 mm', scatter: '0.1 mm', tolerance: '13 mm', module: '103 mm' }],
    [
      borderCourse,
      { outline: square, unit: block, joint: '3 mm', course: 'soldier', axis: '0 deg' },
    ],
    [edgeRestraint, edging],
    [geotextile, { ...fabric, rollLength: '50 m', endLap: '0.3 m' }],
    [jointSand, { ...joints, recess: '3 mm', waste: 0.1, bag: '20 kg' }],
    [orderPacks, { units: 12, packs: [{ name: 'layer', holds: 5 }], minimum: 1 }],
    [rowFit, { width: '3 m', size: '200 mm', joint: '3 mm', minimumPiece: 0.3 }],
    [soldierCurve, soldier],
    [unitCount, { area: '9 m2', unit: block, joint: '3 mm', edge: { length: '3 m' }, reuse: 0.1 }],
    [yieldCheck, { tickets: ['20 t'], compactedVolume: '9 m3', expectedDryDensity: '2 t/m3' }],
  ];

  /** All numbers of a result are numbers. */
  function expectNumbers(value: unknown): void {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    else if (isQuantity(value)) expect(value.si.isFinite()).toBe(true);
    else if (typeof value === 'object' && value !== null)
      Object.values(value).forEach(expectNumbers);
  }

  test('is answered in numbers, or refused with codes', () => {
    const call = fc.constantFrom(...calls);
    let answers = 0;
    fc.assert(
      fc.property(call, fc.nat(), anything, ([run, valid], which, value) => {
        const names = Object.keys(valid);
        const name = names[which % names.length] ?? '';
        try {
          expectNumbers(run({ ...valid, [name]: value } as never));
          answers += 1;
        } catch (error) {
          if (!isSettlineError(error)) throw error;
          for (const { code, message, path } of error.issues) {
            expect(ERROR_CODES).toHaveProperty(code);
            expect(message).not.toBe('');
            expect(path.length).toBeGreaterThan(0);
          }
        }
      }),
      runs(3000),
    );
    expect(answers).toBeGreaterThan(150);
  });
});
