import { describe, expect } from 'vitest';
import {
  checkSlope,
  gradeLine,
  levelChange,
  planeThrough,
  rampRun,
  verticalCurve,
} from 'settline/grading';

import {
  DAMP_PROOF_FREEBOARD,
  DRIVE_GRADIENTS,
  DRIVEWAY_BREAK_LIMITS,
  LEVEL_CHANGE_LIMITS,
  SLOPE_LIMITS,
  STEP_COMFORT,
} from 'settline/sources';
import {
  angleOfSlope,
  length,
  type Length,
  type LengthUnit,
  type Slope,
  slope,
} from 'settline/units';
import { expectDerived, expectExact, expectMisprint, expectPrinted } from '../printed.js';
import { published } from './published.js';

const number = (value: Length | null | undefined, unit: LengthUnit): number =>
  value?.toNumber(unit) ?? Number.NaN;
const percent = (value: Slope): number => value.toNumber('percent');

describe('grade lines', () => {
  published(
    { source: 'training-slides-gradients', section: 'slides 7 and 11', kind: 'printed' },
    'gradients as falls',
    () => {
      // 16.6 mm/m was cut off, not rounded
      expectMisprint(slope('1:60').toNumber('mm/m'), '16.6', '16.7');
      const drain = gradeLine({
        points: [
          { station: '0 m', elevation: '10 m' },
          { station: '8 m', grade: '-1:40' },
        ],
      });
      expectPrinted(-number(drain.segments[0]?.rise, 'm'), '0.200');
    },
  );

  published(
    { source: 'surveying-definitions', section: 'grade-1, gradient', kind: 'printed' },
    '3 ft in 100 ft',
    () => {
      const line = gradeLine({
        points: [
          { station: '0 ft', elevation: '0 ft' },
          { station: '100 ft', elevation: '3 ft' },
        ],
      });
      expectExact(line.segments[0]?.grade.to('percent').toString(), '3');
    },
  );

  published(
    {
      source: 'open-surveying-library',
      section: 'contour creation, interpolation, Figures E-1 and E-2',
      kind: 'printed',
    },
    'contours between two levels',
    () => {
      // 0.9/4.1 and 2.9/4.1 of the distance
      const line = gradeLine({
        points: [
          { station: '0 m', elevation: '863.1 ft' },
          { station: '1 m', elevation: '867.2 ft' },
        ],
      });
      expectPrinted(number(line.stationsAt('864 ft')[0], 'm'), '0.219512195121951');
      expectPrinted(number(line.stationsAt('866 ft')[0], 'm'), '0.707317073170732');
    },
  );

  published(
    { source: 'geology-lab', section: 'steps 1 to 3', kind: 'printed' },
    'a proportion that rounding spoils',
    () => {
      // the angle is rounded to 14 degrees, which makes 401 m of 400 m
      const line = gradeLine({
        points: [
          { station: '0 m', elevation: '0 m' },
          { station: '1600 m', elevation: '400 m' },
        ],
      });
      expectMisprint(number(line.stationsAt('100 m')[0], 'm'), '401', '400');
      const grade = line.segments[0]?.grade ?? slope(0, 'ratio');
      expectPrinted(angleOfSlope(grade).toNumber('deg'), '14');
    },
  );

  published(
    { source: 'curve-stakeout', section: 'sewer stakeout, text of Figure 10-19', kind: 'printed' },
    'cuts to a sewer grade',
    () => {
      // The grade falls toward the lower stations: the line runs that way from 9+00.
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
    },
  );

  published(
    { source: 'sewer-rails-question', section: 'question 8(a)', kind: 'derived' },
    'sight rails on a 1 % sewer',
    () => {
      // The printed invert 1066.48 makes a boning rod of 23.5 m (1086.48 would make 3.5 m); the
      // heights of the rails are the same either way.
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
    },
  );

  published(
    {
      source: 'elementary-surveying',
      section: 'problems 23.11 and 23.12, statements',
      kind: 'derived',
    },
    'pipeline stakes between two inverts',
    () => {
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
    },
  );

  published(
    { source: 'sewer-inverts-problem', section: 'problem text', kind: 'derived' },
    'inverts every 50 ft on -1 %',
    () => {
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
      expectExact(inverts, '326.32 325.82 325.32 324.82 324.32 323.82 323.32 323.12'.split(' '));
    },
  );
});

published(
  { source: 'three-point-exercise', section: 'exercise 1, data', kind: 'derived' },
  'a plane through three points of an exercise',
  () => {
    // z = 200 + E / 4 + N
    const plane = planeThrough({
      points: [
        { x: '400 m', y: '100 m', z: '400 m' },
        { x: '0 m', y: '0 m', z: '200 m' },
        { x: '0 m', y: '300 m', z: '500 m' },
      ],
    });
    expectExact(plane.gradeX.to('ratio').toString(), '0.25');
    expectExact(plane.gradeY.to('ratio').toString(), '1');
    expectPrinted(percent(plane.slope), '103.0776');
    expectPrinted(angleOfSlope(plane.slope).toNumber('deg'), '45.8683');
    expectPrinted(plane.downhillAzimuth?.toNumber('deg') ?? Number.NaN, '194.0362');
  },
);

describe('vertical curves', () => {
  published(
    {
      source: 'open-surveying-library',
      section: 'vertical curves, self-study solutions, problem (2), curve table',
      kind: 'printed',
    },
    'a crest, with its table',
    () => {
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
        expectExact(at.elevation.to('ft').toString(), elevation);
        expectExact(at.grade.to('percent').toString(), grade);
      }
      expectDerived(number(curve.turningPoint?.station, 'ft'), '5694.1176');
      expectDerived(number(curve.turningPoint?.elevation, 'ft'), '1319.8529');
    },
  );

  published(
    {
      source: 'open-surveying-library',
      section: 'vertical curves, self-study solutions, problem (3)',
      kind: 'printed',
    },
    'a sag, with a misprint of one foot',
    () => {
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
    },
  );

  published(
    { source: 'open-surveying-library', section: 'vertical curves, example 2', kind: 'printed' },
    'a sag from its intersection',
    () => {
      // the low point is printed at 12+72.07: 1272.0755 cut off
      const curve = verticalCurve({
        intersection: { station: '1217.53 ft', elevation: '634.25 ft' },
        before: '-3.5%',
        after: '2%',
        length: '400 ft',
      });
      expectMisprint(number(curve.turningPoint?.station, 'ft'), '1272.07', '1272.08');
      expectPrinted(number(curve.turningPoint?.elevation, 'ft'), '636.80');
      expectDerived(number(curve.start.elevation, 'ft'), '641.25');
      expectDerived(number(curve.end.elevation, 'ft'), '638.25');
    },
  );

  published(
    { source: 'civil-calculations', section: 'parabolic arc, page image 427', kind: 'printed' },
    'a curve as short as a rate of change allows',
    () => {
      const curve = verticalCurve({
        intersection: { station: '5420 ft', elevation: '296.3 ft' },
        before: '-4.6%',
        after: '1.8%',
        changePer: { change: '0.02%', distance: '1 ft' },
      });
      expectExact(curve.length.to('ft').toString(), '320');
      expectPrinted(number(curve.start.station, 'ft'), '5260');
      expectPrinted(number(curve.start.elevation, 'ft'), '303.66');
      expectPrinted(number(curve.end.station, 'ft'), '5580');
      expectPrinted(number(curve.end.elevation, 'ft'), '299.18');
      expectDerived(number(curve.elevationAt('5300 ft'), 'ft'), '301.98');
      expectDerived(number(curve.elevationAt('5400 ft'), 'ft'), '299.18');
      expectDerived(number(curve.elevationAt('5500 ft'), 'ft'), '298.38');
    },
  );

  published(
    { source: 'vertical-curve-forum', section: 'stations 0+00 to 5+00', kind: 'printed' },
    'a crest between three levels',
    () => {
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
    },
  );
});

describe('limits', () => {
  published(
    { source: 'paver-tolerances', section: 'tolerance tables', kind: 'printed' },
    'drainage: 2 %',
    () => {
      expectExact(SLOPE_LIMITS.drainage.minimum?.value, '2');
    },
  );

  published(
    { source: 'residential-code', section: 'R401.3 and its exception', kind: 'printed' },
    'at a foundation: 2 % for hard surfaces, 6 in in 10 ft for soil',
    () => {
      expectExact(SLOPE_LIMITS['hard-surface-at-foundation'].minimum?.value, '2');
      const soil = checkSlope({ fall: '5%', purpose: 'soil-at-foundation' });
      expectExact(soil.checks[0]?.value.times(length('10 ft')).to('in').toString(), '6');
      expect(soil.verdict).toBe('pass');
    },
  );

  for (const [purpose, source, section, printed] of [
    ['accessible-route', 'route-slope', '11B-403.3', '1:20'],
    ['accessible-route-cross', 'route-slope', '11B-403.3', '1:48'],
    ['accessible-ramp', 'ada-ramps', '405.2', '1:12'],
    ['accessible-ramp-cross', 'ramp-cross-slope', '11B-405.3', '1:48'],
    ['accessible-counter-slope', 'ada-counter-slope', '406.2', '1:20'],
  ] as const) {
    published({ source, section, kind: 'printed' }, `${purpose}: ${printed}`, () => {
      const [check] = checkSlope({ fall: '0%', purpose }).checks;
      const limit = SLOPE_LIMITS[purpose].maximum;
      expectExact(limit?.value.replace('/', ':'), printed);
      expect(check?.value.equals(slope(printed))).toBe(true);
      expect(check).toMatchObject({ source, status: 'read' });
    });
  }

  published(
    { source: 'ada-level-change', section: '4.5.2', kind: 'printed' },
    'changes of level: 1/4 in upright, 1/2 in bevelled 1 to 2',
    () => {
      const { vertical, bevelled, bevel } = LEVEL_CHANGE_LIMITS;
      expectExact([vertical.value, bevelled.value, bevel.value], ['1/4', '1/2', '1/2']);
      expectDerived(number(levelChange({ rise: '1/2 in' }).bevelRun, 'in'), '1');
    },
  );

  published(
    { source: 'driveway-profiles', section: 'profiles', kind: 'printed' },
    'driveway breaks: 3 % and 11 ft',
    () => {
      expectExact(DRIVEWAY_BREAK_LIMITS.change.value, '3');
      expectExact(DRIVEWAY_BREAK_LIMITS.apart.value, '11');
    },
  );

  published(
    { source: 'nhbc-drives', section: '10.2.6', kind: 'printed' },
    'drives: 1 in 6, transitions beyond 1 in 10, 150 mm below the damp-proof course',
    () => {
      const { maximum, transitionsBeyond } = DRIVE_GRADIENTS;
      expectExact([maximum.value, transitionsBeyond.value], ['1/6', '1/10']);
      expectExact(DAMP_PROOF_FREEBOARD.value, '150');
    },
  );

  published(
    { source: 'masonry-handbook', section: 'p. 283', kind: 'printed' },
    'steps: two risers and a tread within 25 in',
    () => {
      expectExact(STEP_COMFORT.value, '25');
    },
  );
});

describe('ramps and outdoor routes', () => {
  const run = (maximumSlope: string) => number(rampRun({ rise: '30 in', maximumSlope }).run, 'ft');

  published(
    { source: 'ada-level-change', section: '4.8.2', kind: 'derived' },
    'a rise of 30 in (760 mm) at 1 in 12 runs 30 ft',
    () => {
      expectDerived(run('1:12'), '30');
    },
  );

  published(
    { source: 'ramp-runs', section: 'slopes and runs', kind: 'printed' },
    'runs of 30 ft at 1 in 12 and 40 ft at 1 in 16',
    () => {
      expectPrinted(run('1:12'), '30');
      expectPrinted(run('1:16'), '40');
    },
  );

  published(
    { source: 'outdoor-trails', section: '1017.7.1, Table 2', kind: 'printed' },
    '1 in 8 is printed as 12 percent',
    () => {
      expectMisprint(percent(slope('1:8')), '12', '12.5');
    },
  );

  published(
    { source: 'forest-routes', section: 'slopes and resting intervals', kind: 'printed' },
    'cross slopes of 1 in 33 (3 %) and 1 in 48 (2 %)',
    () => {
      expectPrinted(percent(slope('1:33')), '3');
      expectPrinted(percent(slope('1:48')), '2');
    },
  );

  published(
    { source: 'pavers-on-slopes', section: 'p. 51', kind: 'printed' },
    'an angle of 35 degrees is about 70 %',
    () => {
      expectPrinted(percent(slope('35 deg')), '70');
    },
  );

  published(
    { source: 'engineering-aid-3', section: 'chapter 12, Figure 12-21', kind: 'printed' },
    'an angle of 25 degrees laid off: 37.3 ft from 80 ft',
    () => {
      expectPrinted(number(length('80 ft').times(slope('25 deg')), 'ft'), '37.3');
    },
  );
});
