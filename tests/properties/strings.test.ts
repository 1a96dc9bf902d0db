import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildUp } from 'settline/build-up';
import { gradeLine } from 'settline/grading';
import {
  arcFromChord,
  checkCorner,
  checkSquare,
  checkStakeProfile,
  chordOffsets,
  circleThrough,
  deflectionTable,
  fillet,
  planDistance,
  pointByTapes,
  stakeSpacing,
  tangentOffsets,
} from 'settline/stakes';
import { depthBetweenStrings, depthTable, stringSag, stringsAlongEdge } from 'settline/string-line';
import { isQuantity, length, type Length } from 'settline/units';
import { runs } from '../runs.js';

const FEWER = runs(100);
const FEW = runs(30);

const mm = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => length(value, 'mm'));
/** To 30 digits of a metre, without the sign of a rounded nothing. */
const text = (one: Length) =>
  one
    .to('m')
    .toFixed(30)
    .replace(/^-(?=[0.]+$)/, '');

/** Every quantity and number in a result is finite. */
function expectFinite(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (isQuantity(value)) expect(value.si.isFinite()).toBe(true);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectFinite);
}

describe('arcs', () => {
  test('chord and ordinate, three points, and offsets tell one circle', () => {
    fc.assert(
      fc.property(mm(500, 20_000), mm(1, 250), (chord, ordinate) => {
        const arc = arcFromChord({ chord, middleOrdinate: ordinate });
        const through = circleThrough({
          points: [
            { x: '0 m', y: '0 m' },
            { x: chord.dividedBy(2), y: ordinate },
            { x: chord, y: '0 m' },
          ],
        });
        expect(through.radius.equals(arc.radius ?? chord)).toBe(true);
        expect(through.turn.toNumber('rad')).toBeCloseTo(arc.centralAngle.toNumber('rad'), 9);
        expect(through.isFlat).toBe(arc.isFlat);
        const { rows, radius } = chordOffsets({
          chord,
          middleOrdinate: ordinate,
          spacing: chord.dividedBy(7),
        });
        expect(radius.equals(through.radius)).toBe(true);
        for (const { fromMiddle, offset } of rows) {
          const up = radius.minus(ordinate).plus(offset);
          const square = up
            .times(up)
            .plus(fromMiddle.times(fromMiddle))
            .minus(radius.times(radius));
          expect(Math.abs(square.toNumber('m2'))).toBeLessThan(1e-28);
        }
        expectFinite([arc, through, rows]);
      }),
      FEW,
    );
  });

  test('elements of a curve hang together, and its deflections add up', () => {
    fc.assert(
      fc.property(mm(500, 50_000), fc.integer({ min: 1, max: 179 }), (radius, degrees) => {
        const turn = { value: degrees, unit: 'deg' } as const;
        const { tangent, external, chord, middleOrdinate, arcLength } = fillet({ turn, radius });
        const square = (one: Length) => one.toNumber('m') ** 2;
        expect(square(radius.plus(external))).toBeCloseTo(square(radius) + square(tangent), 6);
        expect(arcFromChord({ chord, middleOrdinate }).radius?.toNumber('m')).toBeCloseTo(
          radius.toNumber('m'),
          9,
        );
        const table = deflectionTable({ radius, turn, spacing: arcLength.dividedBy('4.5') });
        expect(table.rows).toHaveLength(6);
        expect(table.rows.at(-1)?.deflection.toNumber('deg')).toBeCloseTo(degrees / 2, 12);
        expect(table.rows.at(-1)?.chord.toNumber('m')).toBeCloseTo(chord.toNumber('m'), 9);
        const steps = table.rows.map(({ fromPrevious }) => fromPrevious.arc.toNumber('m'));
        expect(steps.reduce((sum, one) => sum + one, 0)).toBeCloseTo(arcLength.toNumber('m'), 9);
        expect(fillet({ turn, tangent }).radius.toNumber('m')).toBeCloseTo(radius.toNumber('m'), 9);
      }),
      FEW,
    );
  });

  test('stakes at the greatest spacing leave the string just that far off', () => {
    fc.assert(
      fc.property(mm(500, 50_000), mm(1, 400), (radius, deviation) => {
        const { chord } = stakeSpacing({ radius, deviation });
        const { rows } = tangentOffsets({ radius, length: chord.dividedBy(2), spacing: chord });
        expect(text(rows.at(-1)?.offset ?? chord).slice(0, 25)).toBe(text(deviation).slice(0, 25));
      }),
      FEWER,
    );
  });
});

describe('corners and tapes', () => {
  test('a sheared rectangle: the move is the shear, and brings it back', () => {
    fc.assert(
      fc.property(mm(2000, 30_000), mm(2000, 30_000), mm(-500, 500), (along, across, shear) => {
        const diagonal = (run: Length): Length =>
          length(Math.hypot(run.toNumber('m'), across.toNumber('m')), 'm');
        const check = checkSquare({
          length: along,
          width: length(Math.hypot(shear.toNumber('m'), across.toNumber('m')), 'm'),
          diagonals: [diagonal(along.plus(shear)), diagonal(along.minus(shear))],
        });
        expect(check.outOfSquare.toNumber('m')).toBeCloseTo(Math.abs(shear.toNumber('m')), 8);
        if (!shear.isZero()) {
          expect(check.move?.direction).toBe(shear.isNegative() ? 'right' : 'left');
        }
        expect(check.diagonalMisfit.toNumber('m')).toBeCloseTo(0, 8);
        expectFinite(check);
      }),
      FEWER,
    );
  });

  test('a corner of any angle', () => {
    fc.assert(
      fc.property(
        mm(500, 30_000),
        mm(500, 30_000),
        fc.integer({ min: 5, max: 175 }),
        (base, side, degrees) => {
          const turn = (degrees * Math.PI) / 180;
          const [a, b] = [base.toNumber('m'), side.toNumber('m')];
          const diagonal = length(Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(turn)), 'm');
          const check = checkCorner({ base, side, diagonal });
          expect(check.angle.toNumber('deg')).toBeCloseTo(degrees, 6);
          expect(check.angleError.toNumber('deg')).toBeCloseTo(90 - degrees, 6);
          expect(check.outOfSquare.toNumber('m')).toBeCloseTo(Math.abs(b * Math.cos(turn)), 6);
        },
      ),
      FEWER,
    );
  });

  test('a point by two tapes lies as far from both as was taped, on its side', () => {
    fc.assert(
      fc.property(
        fc.tuple(
          mm(-20_000, 20_000),
          mm(-20_000, 20_000),
          mm(-20_000, 20_000),
          mm(-20_000, 20_000),
        ),
        fc.tuple(fc.integer({ min: 2, max: 98 }), fc.integer({ min: 101, max: 160 })),
        fc.constantFrom('left' as const, 'right' as const),
        fc.tuple(fc.integer({ min: -9e8, max: 9e8 }), fc.integer({ min: -9e8, max: 9e8 })),
        ([x1, y1, x2, y2], [share, sum], side, [east, north]) => {
          const apart = Math.hypot(x2.minus(x1).toNumber('m'), y2.minus(y1).toNumber('m'));
          if (apart < 0.1) return;
          // two lengths that meet: a between (s - 1) / 2 and (s + 1) / 2 of the line, the other what is left
          const total = (sum / 100) * apart;
          const a = ((sum / 100 - 1) / 2 + share / 100) * apart;
          const [first, second] = [length(a, 'm'), length(total - a, 'm')];
          const of = (dx: Length, dy: Length) =>
            pointByTapes({
              from: [
                { x: x1.plus(dx), y: y1.plus(dy), distance: first, uncertainty: '3 mm' },
                { x: x2.plus(dx), y: y2.plus(dy), distance: second, uncertainty: '3 mm' },
              ],
              side,
            });
          const nothing = length(0, 'm');
          const found = of(nothing, nothing);
          const from = (x: Length, y: Length) => {
            const [dx, dy] = [found.point.x.minus(x), found.point.y.minus(y)];
            return dx.times(dx).plus(dy.times(dy));
          };
          expect(from(x1, y1).minus(first.times(first)).abs().toNumber('m2')).toBeLessThan(1e-30);
          expect(from(x2, y2).minus(second.times(second)).abs().toNumber('m2')).toBeLessThan(1e-30);
          expect(found.offset.isNegative()).toBe(side === 'right');
          const [dx, dy] = [length(east, 'mm'), length(north, 'mm')];
          const moved = of(dx, dy);
          expect(text(moved.point.x.minus(dx))).toBe(text(found.point.x));
          expect(text(moved.point.y.minus(dy))).toBe(text(found.point.y));
          // the same lengths from the other end, on the other side
          const other = pointByTapes({
            from: [
              { x: x2, y: y2, distance: second },
              { x: x1, y: y1, distance: first },
            ],
            side: side === 'left' ? 'right' : 'left',
          });
          expect(text(other.point.x)).toBe(text(found.point.x));
          expect(text(other.point.y)).toBe(text(found.point.y));
          // equal tapes: u sqrt(2) / sin A
          const sine = Math.sin(found.crossingAngle.toNumber('rad'));
          const position = found.ellipse?.position.toNumber('mm') ?? Number.NaN;
          expect(position / ((3 * Math.SQRT2) / sine)).toBeCloseTo(1, 8);
          expectFinite(found);
        },
      ),
      FEWER,
    );
  });

  test('the error ellipse is what small slips of the tapes do', () => {
    fc.assert(
      fc.property(mm(3000, 9000), mm(3000, 9000), mm(1000, 5500), (a, b, apart) => {
        if (a.minus(b).abs().times('1.1').compare(apart) >= 0) return;
        const slip = length('0.001 mm');
        const at = (da: Length, db: Length) =>
          pointByTapes({
            from: [
              { x: '0 m', y: '0 m', distance: a.plus(da), uncertainty: '2 mm' },
              { x: apart, y: '0 m', distance: b.plus(db), uncertainty: '5 mm' },
            ],
            side: 'left',
          });
        const none = length('0 mm');
        const [still, first, second] = [at(none, none), at(slip, none), at(none, slip)];
        const gone = (of: typeof still, k: number) =>
          [of.point.x.minus(still.point.x), of.point.y.minus(still.point.y)].map(
            (one) => k * 1000 * one.toNumber('mm'),
          );
        const [[ax = 0, ay = 0], [bx = 0, by = 0]] = [gone(first, 2), gone(second, 5)];
        const azimuth = still.ellipse?.azimuth.toNumber('rad') ?? Number.NaN;
        const across = Math.hypot(
          ax * Math.sin(azimuth) + ay * Math.cos(azimuth),
          bx * Math.sin(azimuth) + by * Math.cos(azimuth),
        );
        expect(across / (still.ellipse?.semiMajor.toNumber('mm') ?? Number.NaN)).toBeCloseTo(1, 3);
        const square = ax * ax + ay * ay + bx * bx + by * by;
        expect(
          Math.sqrt(square) / (still.ellipse?.position.toNumber('mm') ?? Number.NaN),
        ).toBeCloseTo(1, 3);
      }),
      FEWER,
    );
  });

  test('a taped length and its plan: by rise and by slope alike', () => {
    fc.assert(
      fc.property(mm(1000, 50_000), mm(-900, 900), (taped, rise) => {
        const { plan } = planDistance({ taped, rise });
        const square = plan.times(plan).plus(rise.times(rise)).minus(taped.times(taped));
        expect(Math.abs(square.toNumber('m2'))).toBeLessThan(1e-30);
        const slope = rise.dividedBy(plan);
        const by = planDistance({ taped, slope: { value: slope.toString(), unit: 'ratio' } });
        expect(by.plan.toNumber('m')).toBeCloseTo(plan.toNumber('m'), 12);
      }),
      FEWER,
    );
  });
});

test('marks on a grade: a shift and a slope through all of them change no rise', () => {
  const levels = fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 3, maxLength: 8 });
  fc.assert(
    fc.property(
      levels,
      fc.constantFrom('ends' as const, 'first' as const, 'best-fit' as const),
      fc.integer({ min: -9e6, max: 9e6 }),
      fc.integer({ min: -200, max: 200 }),
      (list, reference, shift, fall) => {
        const of = (base: number, slope: number) =>
          checkStakeProfile({
            stakes: list.map((level, k) => ({
              id: `S${k}`,
              station: { value: `${10 * base + 2500 * k}/3`, unit: 'mm' } as const,
              elevation: `${base + slope * k + level} mm`,
            })),
            tolerance: '10 mm',
            reference,
          });
        const [here, there] = [of(0, 0), of(shift, fall)];
        expect(there.code).toBe(here.code);
        there.rises.forEach(({ rise }, k) => {
          expect(rise.equals(here.rises[k]?.rise ?? rise.plus(length('1 m')))).toBe(true);
        });
        if (list.length === 3 && reference === 'best-fit' && here.ok === false) {
          expect(here.ambiguous).toBe(true);
          expect(here.moves).toHaveLength(3);
        }
      },
    ),
    FEWER,
  );
});

describe('a string', () => {
  const span = mm(500, 50_000);
  const tension = fc
    .integer({ min: 20, max: 400 })
    .map((newtons) => ({ value: newtons, unit: 'N' }) as const);
  const weight = fc
    .integer({ min: 1, max: 50 })
    .map((tenths) => ({ value: tenths / 10, unit: 'g/m' }) as const);

  test('sags a hair more as a catenary, alike from both ends, a quarter with a stake between', () => {
    fc.assert(
      fc.property(
        span,
        tension,
        weight,
        fc.integer({ min: 0, max: 100 }),
        (long, pull, weightPerLength, share) => {
          const from = long.times(share).dividedBy(100);
          const at = (place: Length) =>
            stringSag({ span: long, tension: pull, weightPerLength, from: place });
          const [here, there] = [at(from), at(long.minus(from))];
          expect(here.catenarySag.compare(here.sagAtMidspan)).toBe(1);
          expect(here.catenarySag.dividedBy(here.sagAtMidspan).toNumber()).toBeCloseTo(1, 3);
          expect(here.sagWithMidStake.times(4).dividedBy(here.sagAtMidspan).toNumber()).toBeCloseTo(
            1,
            3,
          );
          expect(text(here.at?.sag ?? from)).toBe(text(there.at?.sag ?? long));
          expect(here.at?.sag.isNegative()).toBe(false);
          const twice = stringSag({ span: long.times(2), tension: pull, weightPerLength });
          expect(twice.sagAtMidspan.equals(here.sagAtMidspan.times(4))).toBe(true);
          expectFinite(here);
        },
      ),
      FEW,
    );
  });

  test('of the greatest span keeps its tolerance, and a longer one does not', () => {
    fc.assert(
      fc.property(
        span,
        tension,
        weight,
        fc.integer({ min: 1, max: 20 }),
        (long, pull, weightPerLength, tenths) => {
          const line = {
            tension: pull,
            weightPerLength,
            tolerance: { value: tenths / 10, unit: 'mm' },
          } as const;
          const { maximumSpan, minimumTension } = stringSag({ ...line, span: long });
          const [greatestSpan, tensionNeeded] = [maximumSpan ?? long, minimumTension ?? pull];
          expect(stringSag({ ...line, span: greatestSpan }).inTolerance).toBe(true);
          expect(
            stringSag({ ...line, span: greatestSpan.times('1.000000000001') }).inTolerance,
          ).toBe(false);
          expect(stringSag({ ...line, span: long, tension: tensionNeeded }).inTolerance).toBe(true);
        },
      ),
      runs(10),
    );
  });

  test('along an edge runs at one height above it, in whatever unit the height is given', () => {
    const levels = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(
        levels,
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: -5, max: 5 }),
        (list, inches, percent) => {
          const grade = gradeLine({
            points: list.map((level, k) => ({ station: `${4 * k} m`, elevation: `${level} mm` })),
          });
          const of = (stringHeight: Length, carriesCrossSlope: boolean) =>
            stringsAlongEdge({
              grade,
              stakes: list.map((_, k) => ({ id: `S${k}`, station: `${4 * k} m` })),
              stringHeight,
              offset: '450 mm',
              crossSlope: `${percent}%`,
              carriesCrossSlope,
            });
          const height = length(inches, 'in');
          const edge = of(height, false);
          expect(edge.breaksWithoutStake).toEqual([]);
          const out = of(length(inches * 254, 'mm').dividedBy(10), true);
          edge.stakes.forEach(({ elevation, finishedGrade }, k) => {
            expect(elevation.minus(finishedGrade).equals(height)).toBe(true);
            const carried = out.stakes[k]?.elevation.minus(elevation);
            expect(carried?.equals(length(percent * 4.5, 'mm'))).toBe(true);
          });
        },
      ),
      FEWER,
    );
  });

  test('across two others: the measure down leaves nothing, from either side', () => {
    fc.assert(
      fc.property(
        mm(-500, 500),
        mm(-500, 500),
        mm(100, 9000),
        fc.integer({ min: 0, max: 100 }),
        mm(100, 900),
        mm(0, 9),
        (left, right, width, share, below, sag) => {
          const fromLeft = width.times(share).dividedBy(100);
          const spot = { surface: 'subgrade', width, below, sag };
          const one = depthBetweenStrings({
            ...spot,
            left,
            right,
            fromLeft,
            measured: below.minus(sag),
          });
          expect(one.action).toBe('none');
          expect(one.elevation?.equals(one.target)).toBe(true);
          const other = depthBetweenStrings({
            ...spot,
            left: right,
            right: left,
            fromLeft: width.minus(fromLeft),
          });
          expect(other.line.equals(one.line)).toBe(true);
          expect(other.extrapolated).toBe(false);
        },
      ),
      FEWER,
    );
  });

  test('every depth of the table is that at a stake less the sag', () => {
    fc.assert(
      fc.property(
        fc.array(mm(500, 9000), { minLength: 1, maxLength: 4 }),
        mm(400, 3000),
        tension,
        weight,
        (steps, spacing, pull, weightPerLength) => {
          let along = length(0, 'm');
          const stations = [along, ...steps.map((step) => (along = along.plus(step)))];
          const table = depthTable({
            buildUp: buildUp({
              layers: [
                { name: 'paver', thickness: '60 mm' },
                { name: 'base', thickness: '10 in' },
              ],
            }),
            stringHeight: '6 in',
            stakes: stations.map((station, k) => ({ id: `S${k}`, station })),
            spacing,
            lifts: [{ layer: 'base', maxLift: '3 in', compactedPerLoose: '0.8' }],
            string: { tension: pull, weightPerLength },
          });
          table.rows.forEach(({ station, sag, depths }, k) => {
            expect(sag.isNegative()).toBe(false);
            expect(sag.compare(table.maximumSag)).not.toBe(1);
            depths.forEach((depth, i) => {
              expect(depth.plus(sag).equals(table.surfaces[i]?.below ?? depth.negated())).toBe(
                true,
              );
            });
            const before = table.rows[k - 1]?.station;
            if (before !== undefined) {
              expect(station.compare(before)).toBe(1);
              expect(station.minus(before).compare(spacing)).not.toBe(1);
            }
          });
          expect(table.rows.filter(({ stake }) => stake !== null)).toHaveLength(stations.length);
        },
      ),
      FEW,
    );
  });
});
