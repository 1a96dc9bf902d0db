import { describe, expect, test } from 'vitest';
import {
  checkSlope,
  combineSlopes,
  fallBetween,
  freeboard,
  gradeBreak,
  gradeLine,
  levelChange,
  planeThrough,
  rampRun,
  stepLayout,
  valleyLine,
  verticalCurve,
  warpedSurface,
} from 'settline/grading';
import { gaugeBlock } from 'settline/levelling';
import { DRIVEWAY_BREAK_LIMITS, LEVEL_CHANGE_LIMITS, SLOPE_LIMITS } from 'settline/sources';
import { angleOfSlope, slope, type Length, type LengthUnit, type Slope } from 'settline/units';
import { expectMisprint, expectPrinted } from '../printed.js';

const number = (value: Length | undefined, unit: LengthUnit): number =>
  value?.toNumber(unit) ?? Number.NaN;
const percent = (value: Slope): number => value.toNumber('percent');

describe('grade lines', () => {
  test('gradients as falls', () => {
    // Lines, levels and gradients training slides, slides 7 and 11; read. 16.6 mm/m was cut off, not
    // rounded.
    expectMisprint(slope('1:60').toNumber('mm/m'), '16.6', '16.7');
    const drain = gradeLine({
      points: [
        { station: '0 m', elevation: '10 m' },
        { station: '8 m', grade: '-1:40' },
      ],
    });
    expectPrinted(-number(drain.segments[0]?.rise, 'm'), '0.200');
  });

  test('3 ft in 100 ft', () => {
    // Grade definitions (definitions of surveying and related terms), grade-1, gradient; read
    const line = gradeLine({
      points: [
        { station: '0 ft', elevation: '0 ft' },
        { station: '100 ft', elevation: '3 ft' },
      ],
    });
    expect(line.segments[0]?.grade.to('percent').toString()).toBe('3');
  });

  test('contours between two levels', () => {
    // Open-access surveying library, contour creation, interpolation, Figures E-1/E-2; read: 0.9/4.1 and
    // 2.9/4.1 of the distance
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '863.1 ft' },
        { station: '1 m', elevation: '867.2 ft' },
      ],
    });
    expectPrinted(number(line.stationsAt('864 ft')[0], 'm'), '0.219512195121951');
    expectPrinted(number(line.stationsAt('866 ft')[0], 'm'), '0.707317073170732');
  });

  test('a proportion that rounding spoils', () => {
    // Geology lab page: apparent dip and interpolation, steps 1 to 3; read: the angle is rounded to 14
    // degrees, which makes 401 m of 400 m
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '0 m' },
        { station: '1600 m', elevation: '400 m' },
      ],
    });
    expectMisprint(number(line.stationsAt('100 m')[0], 'm'), '401', '400');
    const grade = line.segments[0]?.grade ?? slope(0, 'ratio');
    expectPrinted(angleOfSlope(grade).toNumber('deg'), '14');
  });

  test('cross fall from a crown', () => {
    // Closed form crown / cross slope; DERIVED
    const drop = (half: string) =>
      gradeLine({
        points: [
          { station: '0 m', elevation: '0 m' },
          { station: half, grade: '-2%' },
        ],
      }).elevationAt(half);
    expectPrinted(-number(drop('12 ft'), 'ft'), '0.24');
    expectPrinted(-number(drop('12 ft'), 'in'), '2.88');
    expectPrinted(-number(drop('3.6 m'), 'm'), '0.072');
  });

  test('cuts to a sewer grade', () => {
    // Engineering Aid, Advanced (NAVEDTRA 14070), sewer stakeout, Figure 10-19 text; read: 121.78, cuts
    // 4.07 and 5.55. The grade falls toward the lower stations: the line runs that way from 9+00.
    const line = gradeLine({
      points: [
        { station: '0 ft', elevation: '122.87 ft' },
        { station: '50 ft', grade: '-2.18%' },
      ],
    });
    const [start, end] = [line.elevationAt('0 ft'), line.elevationAt('50 ft')];
    expectPrinted(number(end, 'ft'), '121.78');
    expectPrinted(126.94 - number(start, 'ft'), '4.07');
    expectPrinted(127.33 - number(end, 'ft'), '5.55');
  });

  test('sight rails on a 1 % sewer', () => {
    // Sight rails on a 1% sewer, question 8(a); DERIVED. The printed invert 1066.48 makes a boning rod of
    // 23.5 m (1086.48 would make 3.5 m); the heights of the rails are the same either way.
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '1066.48 m' },
        { station: '225 m', grade: '1%' },
      ],
    });
    const rod = 1088.46 + 1.52 - number(line.elevationAt('0 m'), 'm');
    expectPrinted(rod, '23.5');
    const pegs = [
      ['75 m', 1088.92, '1.81'],
      ['150 m', 1089.85, '1.63'],
      ['225 m', 1090.03, '2.20'],
    ] as const;
    for (const [station, peg, height] of pegs) {
      expectPrinted(number(line.elevationAt(station), 'm') + rod - peg, height);
    }
  });

  test('pipeline stakes between two inverts', () => {
    // Elementary surveying textbook, problems 23.11 and 23.12, problem statements; DERIVED
    const line = gradeLine({
      points: [
        { station: '0 ft', elevation: '843.95 ft' },
        { station: '637 ft', elevation: '847.22 ft' },
      ],
    });
    expectPrinted(percent(line.segments[0]?.grade ?? slope(0, 'ratio')), '0.51334');
    const sight = 853.63 + 5.32;
    const stations = [0, 100, 200, 300, 400, 500, 600, 637];
    const inverts = '843.95 844.463 844.977 845.49 846.003 846.517 847.03 847.22'.split(' ');
    const minus = [5.36, 5.86, 5.88, 6.47, 7.53, 8.42, 8.89, 9.12];
    const cuts = '9.64 8.627 8.093 6.99 5.417 4.013 3.03 2.61'.split(' ');
    const rods = '9 8.487 7.973 7.46 6.947 6.433 5.92 5.73'.split(' ');
    stations.forEach((station, k) => {
      const invert = number(line.elevationAt({ value: station, unit: 'ft' }), 'ft');
      expectPrinted(invert, inverts[k] ?? '');
      expectPrinted(sight - (minus[k] ?? 0) - invert, cuts[k] ?? '');
      expectPrinted(sight - (invert + 6), rods[k] ?? '');
    });
  });

  test('inverts every 50 ft on -1 %', () => {
    // Sewer invert list on -1%, problem text; DERIVED
    const line = gradeLine({
      points: [
        { station: '1000 ft', elevation: '326.32 ft' },
        { station: '1320 ft', grade: '-1%' },
      ],
    });
    const stations = [1000, 1050, 1100, 1150, 1200, 1250, 1300, 1320];
    const inverts = stations.map((station) =>
      line.elevationAt({ value: station, unit: 'ft' }).to('ft').toString(),
    );
    expect(inverts).toEqual('326.32 325.82 325.32 324.82 324.32 323.82 323.32 323.12'.split(' '));
  });
});

test('a plane through three points of an exercise', () => {
  // Three-point exercise with exact rational plane, exercise 1 data; DERIVED: z = 200 + E / 4 + N
  const plane = planeThrough({
    points: [
      { x: '400 m', y: '100 m', z: '400 m' },
      { x: '0 m', y: '0 m', z: '200 m' },
      { x: '0 m', y: '300 m', z: '500 m' },
    ],
  });
  expect(plane.gradeX.to('ratio').toString()).toBe('0.25');
  expect(plane.gradeY.to('ratio').toString()).toBe('1');
  expectPrinted(percent(plane.slope), '103.0776');
  expectPrinted(angleOfSlope(plane.slope).toNumber('deg'), '45.8683');
  expectPrinted(plane.downhillAzimuth?.toNumber('deg') ?? Number.NaN, '194.0362');
});

describe('vertical curves', () => {
  test('a crest, with its table', () => {
    // Open-access surveying library, vertical curves self-study solutions, Problem (2), curve table; read.
    // The high point is derived.
    const curve = verticalCurve({
      intersection: { station: '5650 ft', elevation: '1325 ft' },
      before: '5%',
      after: '-3.5%',
      length: '500 ft',
    });
    const table = [
      [5400, '1312.5', '5'],
      [5500, '1316.65', '3.3'],
      [5600, '1319.1', '1.6'],
      [5700, '1319.85', '-0.1'],
      [5800, '1318.9', '-1.8'],
      [5900, '1316.25', '-3.5'],
    ] as const;
    for (const [station, elevation, grade] of table) {
      const at = curve.at({ value: station, unit: 'ft' });
      expect(at.elevation.to('ft').toString()).toBe(elevation);
      expect(at.grade.to('percent').toString()).toBe(grade);
    }
    expectPrinted(number(curve.turningPoint?.station, 'ft'), '5694.1176');
    expectPrinted(number(curve.turningPoint?.elevation, 'ft'), '1319.8529');
  });

  test('a sag, with a misprint of one foot', () => {
    // as before, Problem (3); read
    const curve = verticalCurve({
      start: { station: '8800 ft', elevation: '1220 ft' },
      before: '-4%',
      after: '2.75%',
      length: '425 ft',
    });
    const table = [
      [8800, '1220', '-4'],
      [8900, '1216.794', '-2.41'],
      [9000, '1215.176', '-0.82'],
      [9200, '1216.706', '2.35'],
      [9225, '1217.344', '2.75'],
    ] as const;
    for (const [station, elevation, grade] of table) {
      const at = curve.at({ value: station, unit: 'ft' });
      expectPrinted(number(at.elevation, 'ft'), elevation);
      expectPrinted(percent(at.grade), grade);
    }
    expectMisprint(number(curve.elevationAt('9100 ft'), 'ft'), '1216.147', '1215.147');
    expectPrinted(number(curve.turningPoint?.station, 'ft'), '9051.852');
    expectPrinted(number(curve.turningPoint?.elevation, 'ft'), '1214.963');
    expect(curve.kind).toBe('sag');
  });

  test('a sag from its intersection', () => {
    // Open-access surveying library, vertical curves, Example 2; read: the low point printed at 12+72.07
    // comes to 1272.0755, which is cut off; the levels of the ends are derived
    const curve = verticalCurve({
      intersection: { station: '1217.53 ft', elevation: '634.25 ft' },
      before: '-3.5%',
      after: '2%',
      length: '400 ft',
    });
    expectMisprint(number(curve.turningPoint?.station, 'ft'), '1272.07', '1272.08');
    expectPrinted(number(curve.turningPoint?.elevation, 'ft'), '636.80');
    expectPrinted(number(curve.start.elevation, 'ft'), '641.25');
    expectPrinted(number(curve.end.elevation, 'ft'), '638.25');
  });

  test('a curve as short as a rate of change allows', () => {
    // Handbook of Civil Engineering Calculations, parabolic arc; read, the levels between are derived
    const curve = verticalCurve({
      intersection: { station: '5420 ft', elevation: '296.3 ft' },
      before: '-4.6%',
      after: '1.8%',
      changePer: { change: '0.02%', distance: '1 ft' },
    });
    expect(curve.length.to('ft').toString()).toBe('320');
    expectPrinted(number(curve.start.station, 'ft'), '5260');
    expectPrinted(number(curve.start.elevation, 'ft'), '303.66');
    expectPrinted(number(curve.end.station, 'ft'), '5580');
    expectPrinted(number(curve.end.elevation, 'ft'), '299.18');
    expectPrinted(number(curve.elevationAt('5300 ft'), 'ft'), '301.98');
    expectPrinted(number(curve.elevationAt('5400 ft'), 'ft'), '299.18');
    expectPrinted(number(curve.elevationAt('5500 ft'), 'ft'), '298.38');
  });

  test('a crest between three levels', () => {
    // Forum check of a vertical curve, stations 0+00 to 5+00; read
    const curve = verticalCurve({
      intersection: { station: '250 ft', elevation: '1070.64 ft' },
      before: '1.34%',
      after: '-1.77%',
      length: '500 ft',
    });
    const table = [
      [0, '1067.29'],
      [100, '1068.32'],
      [200, '1068.726'],
      [250, '1068.696'],
      [300, '1068.511'],
      [400, '1067.674'],
      [500, '1066.215'],
    ] as const;
    for (const [station, elevation] of table) {
      expectPrinted(number(curve.elevationAt({ value: station, unit: 'ft' }), 'ft'), elevation);
    }
    expectPrinted(number(curve.turningPoint?.station, 'ft'), '215.43');
    expectPrinted(number(curve.turningPoint?.elevation, 'ft'), '1068.733');
  });
});

describe('limits that were read', () => {
  test('drainage and foundations', () => {
    // Construction Tolerances and Recommendations for Interlocking Concrete Pavements: 2 %;
    // residential building code quoted by inspectors: 2 % for hard surfaces, 6 in in 10 ft for soil
    expect(SLOPE_LIMITS.drainage.least?.value).toBe('2');
    expect(SLOPE_LIMITS['hard-surface-at-foundation'].least?.value).toBe('2');
    const soil = checkSlope({ fall: '5%', purpose: 'soil-at-foundation' });
    expect(soil.checks[0]?.value.to('percent').toString()).toBe('5');
    expect(soil.verdict).toBe('pass');
  });

  test('accessible routes and ramps', () => {
    // the two of a route are from memory, those of ramps and changes of level were read
    const limits = [
      ['accessible-route', '0.05', 'memory'],
      ['accessible-ramp', '0.083333', 'read'],
      ['accessible-ramp-cross', '0.020833', 'read'],
      ['accessible-counter-slope', '0.05', 'read'],
    ] as const;
    for (const [purpose, ratio, status] of limits) {
      const [check] = checkSlope({ fall: '0%', purpose }).checks;
      expectPrinted(check?.value.toNumber('ratio') ?? Number.NaN, ratio);
      expect(check?.status).toBe(status);
    }
    expect(LEVEL_CHANGE_LIMITS.vertical.value).toBe('1/4');
    expect(LEVEL_CHANGE_LIMITS.bevelled.value).toBe('1/2');
    expect(levelChange({ rise: '1/2 in' }).bevelRun?.to('in').toString()).toBe('1');
  });

  test('driveway breaks', () => {
    // manual on driveway profiles: 3 % and 11 ft
    expect(DRIVEWAY_BREAK_LIMITS.change.value).toBe('3');
    expect(DRIVEWAY_BREAK_LIMITS.apart.value).toBe('11');
  });
});

describe('worked examples of the formula map: invented data, computed by an independent script', () => {
  test('fall between two fixed levels', () => {
    const drive = fallBetween({ from: '100 m', to: '99.61 m', distance: '14.5 m', least: '2%' });
    expectPrinted(percent(drive.fall), '2.69');
    expectPrinted(number(drive.neededDrop, 'm'), '0.29');
    expect(drive.isEnough).toBe(true);
  });

  test('plane through three fixed elevations', () => {
    const plane = planeThrough({
      points: [
        { x: '0 m', y: '0 m', z: '30 m' },
        { x: '11.8 m', y: '0.4 m', z: '29.69 m' },
        { x: '0.6 m', y: '4.9 m', z: '29.91 m' },
      ],
    });
    expectPrinted(percent(plane.gradeX), '-2.5755');
    expectPrinted(percent(plane.gradeY), '-1.5214');
    expectPrinted(percent(plane.slope), '2.9913');
    // printed as 30.57 degrees counter-clockwise from +x
    expectPrinted(90 - (plane.downhillAzimuth?.toNumber('deg') ?? Number.NaN), '30.57');
    expectPrinted(number(plane.elevationAt({ x: '6 m', y: '2 m' }), 'm'), '29.815');
  });

  test('plane of least squares', () => {
    const corners = [
      [0, 0, 30],
      [12, 0, 29.7],
      [12, 5, 29.585],
      [0, 5, 29.895],
      [6, 2.5, 29.8],
    ] as const;
    const plane = planeThrough({
      points: corners.map(([x, y, z]) => ({
        x: { value: x, unit: 'm' },
        y: { value: y, unit: 'm' },
        z: { value: z, unit: 'm' },
      })),
    });
    expectPrinted(percent(plane.gradeX), '-2.5417');
    expectPrinted(percent(plane.gradeY), '-2.2');
    const residuals = plane.residuals.map(({ residual }) => residual.to('mm').toString());
    expect(residuals).toEqual(['-3.5', '1.5', '-3.5', '1.5', '4']);
  });

  test('warped surface', () => {
    const surface = warpedSurface({
      length: '12 m',
      width: '5 m',
      corners: { startRight: '30 m', endRight: '29.7 m', endLeft: '29.52 m', startLeft: '29.9 m' },
      paver: { length: '200 mm', width: '100 mm' },
    });
    expect(surface.centre.to('m').toString()).toBe('29.78');
    expect(surface.twist.to('mm').toString()).toBe('-80');
    expectPrinted(percent(surface.grades.right), '-2.5');
    expectPrinted(percent(surface.grades.left), '-3.167');
    expectPrinted(percent(surface.grades.start), '-2');
    expectPrinted(percent(surface.grades.end), '-3.6');
    expectPrinted(number(surface.paverRock, 'mm'), '0.0267');
  });

  test('grade at a stake', () => {
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '30 m' },
        { station: '14.5 m', elevation: '29.71 m' },
      ],
    });
    expect(line.elevationAt('6 m').to('m').toString()).toBe('29.88');
  });

  test('grade break', () => {
    const edge = gradeBreak({
      before: '-2%',
      after: '-11%',
      vehicle: { wheelbase: '2.8 m', underside: '140 mm' },
      limit: { change: '3%', distance: '11 ft' },
    });
    expectPrinted(percent(edge.change.abs()), '9');
    expect(edge.transition?.breaks).toBe(3);
    expectPrinted(number(edge.transition?.length, 'm'), '6.706');
    expect(edge.clearance?.reach.to('mm').toString()).toBe('63');
  });

  test('ramp, threshold and cross fall of a walk', () => {
    expect(rampRun({ rise: '0.15 m', steepest: '1:20' }).run.to('m').toString()).toBe('3');
    expect(rampRun({ rise: '0.15 m', steepest: '1:12' }).run.to('m').toString()).toBe('1.8');
    expect(gaugeBlock({ slope: '1:48', length: '1.2 m' }).block.to('mm').toString()).toBe('25');
  });

  test('steps', () => {
    const steps = stepLayout({ rise: '24.4 in', mostRiser: '6.5 in', tread: '12 in' });
    expect(steps.risers).toBe(4);
    expect(steps.riser.to('in').toString()).toBe('6.1');
    expect(steps.run.to('in').toString()).toBe('36');
    expect(steps.comfort.value.to('in').toString()).toBe('24.2');
    expect(steps.comfort.keeps).toBe(true);
  });

  test('valley of two planes', () => {
    const square = [
      ['0 m', '0 m'],
      ['12 m', '0 m'],
      ['12 m', '8 m'],
      ['0 m', '8 m'],
    ] as const;
    const valley = valleyLine({
      first: { gradeX: '-2%', gradeY: '0%', point: { x: '0 m', y: '0 m', z: '30 m' } },
      second: { gradeX: '0%', gradeY: '-3%', point: { x: '0 m', y: '0 m', z: '29.8 m' } },
      path: square.map(([x, y]) => ({ x, y })),
    });
    expectPrinted(percent(valley.slope), '1.664');
    // -0.02 x + 0.03 y + 0.20 = 0 meets y = 0 at x = 10
    expect(valley.stakes[0]?.x.to('m').toString()).toBe('10');
    expect(valley.stakes[0]?.y.to('m').toString()).toBe('0');
  });

  test('freeboard', () => {
    const door = freeboard({
      sill: '30.2 m',
      finishAtWall: '30.04 m',
      least: '150 mm',
      away: { elevation: '29.97 m', distance: '3.05 m' },
    });
    expect(door.freeboard.to('mm').toString()).toBe('160');
    expectPrinted(percent(door.fallAway?.fall ?? slope(0, 'ratio')), '2.295');
    expect(door.verdict).toBe('pass');
  });

  test('vertical curve', () => {
    const edge = verticalCurve({
      start: { station: '0 m', elevation: '30 m' },
      before: '-2%',
      after: '-8%',
      length: '4 m',
    });
    expect(edge.elevationAt('2 m').to('m').toString()).toBe('29.93');
    expect(edge.middleOffset.to('mm').toString()).toBe('30');
    expect(edge.turningPoint).toBeNull();
  });

  test('long and cross slope together', () => {
    expectPrinted(percent(combineSlopes({ long: '4%', cross: '2%' }).steepest), '4.47');
  });
});
