import { describe, expect, test } from 'vitest';
import { gradeLine, requiredStakes, verticalCurve } from 'settline/grading';
import { length } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const DRIVE = gradeLine({
  points: [
    { station: '0 m', elevation: '30 m' },
    { station: '10 m', elevation: '29.8 m' },
    { station: '16 m', grade: '1%' },
    { station: '20 m', elevation: '29.86 m' },
  ],
});

describe('gradeLine', () => {
  test('grades between levels, levels from grades', () => {
    expect(DRIVE.segments.map(({ grade }) => grade.to('percent').toString())).toEqual([
      '-2',
      '1',
      '0',
    ]);
    expect(DRIVE.points.map(({ elevation }) => elevation.toNumber('m'))).toEqual([
      30, 29.8, 29.86, 29.86,
    ]);
    expect(DRIVE.segments[0]?.rise.toNumber('mm')).toBe(-200);
    expect(DRIVE.length.toNumber('m')).toBe(20);
  });

  test('breaks, with what they are', () => {
    expect(DRIVE.breaks).toHaveLength(2);
    const [low, crest] = DRIVE.breaks;
    expect([low?.kind, low?.turns, low?.change.toNumber('percent')]).toEqual(['sag', true, 3]);
    expect([crest?.kind, crest?.turns]).toEqual(['crest', false]);
    expect(low?.station.toNumber('m')).toBe(10);
  });

  test('a point in line with its neighbours is no break', () => {
    const straight = gradeLine({
      points: [
        { station: '0 ft', elevation: '0 ft' },
        { station: '1 ft', elevation: '1/3 in' },
        { station: '3 ft', elevation: '1 in' },
      ],
    });
    expect(straight.breaks).toEqual([]);
    expect(straight.points).toHaveLength(3);
  });

  test('thirds are exact', () => {
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '0 m' },
        { station: '3 m', elevation: '1 m' },
      ],
    });
    expect(line.elevationAt('1 m').times(3).equals(length('1 m'))).toBe(true);
  });

  test('beyond its ends the line is carried on, and says so', () => {
    expect(DRIVE.at('-5 m').elevation.toNumber('m')).toBe(30.1);
    expect(DRIVE.at('-5 m').extrapolated).toBe(true);
    expect(DRIVE.at('25 m').elevation.toNumber('m')).toBe(29.86);
    expect(DRIVE.at('25 m').extrapolated).toBe(true);
    for (const end of ['0 m', '20 m']) expect(DRIVE.at(end).extrapolated).toBe(false);
    expect(Object.isFrozen(DRIVE.at('1 m'))).toBe(true);
  });

  test('at a break the grade is that of the stretch ahead', () => {
    expect(DRIVE.at('10 m').grade.toNumber('percent')).toBe(1);
    expect(DRIVE.at('10 m').elevation.toNumber('m')).toBe(29.8);
    expect(DRIVE.at('20 m').grade.isZero()).toBe(true);
  });

  test('stations at an elevation: within stretches, at points, at the ends of level stretches', () => {
    const at = (elevation: string) =>
      DRIVE.stationsAt(elevation).map((station) => station.toNumber('m'));
    expect(at('29.9 m')).toEqual([5]);
    expect(at('29.83 m')).toEqual([8.5, 13]);
    expect(at('29.8 m')).toEqual([10]);
    expect(at('30 m')).toEqual([0]);
    expect(at('29.86 m')).toEqual([7, 16, 20]);
    expect(at('31 m')).toEqual([]);
  });

  test('working has one step a stretch', () => {
    expect(DRIVE.working.map(formulaOf)).toEqual(
      Array.from({ length: 3 }, () => 'g = (z2 - z1) / L'),
    );
  });

  testRefusals(
    gradeLine,
    {
      points: [
        { station: '0 m', elevation: '1 m' },
        { station: '1 m', elevation: '1 m' },
      ],
    },
    [
      ['points', undefined, 'REQUIRED'],
      ['points', [], 'EMPTY_LIST'],
      ['points', [{ station: '0 m', elevation: '1 m' }], 'TOO_FEW'],
      ['points.1.station', '0 m', 'NOT_INCREASING'],
      ['points.1.station', '-1 m', 'NOT_INCREASING'],
      ['points.1.station', '101 km', 'OUT_OF_RANGE'],
      ['points.1.elevation', undefined, 'REQUIRED'],
      ['points.1.grade', '1%', 'CONFLICTING_FIELDS', 'points[1].elevation'],
      ['points.0', { station: '0 m', grade: '1%' }, 'REQUIRED', 'points[0].elevation'],
      ['points.1', { station: '1 m', grade: '1001%' }, 'OUT_OF_RANGE', 'points[1].grade'],
      ['points.1', 'end', 'WRONG_TYPE', 'points[1]'],
    ],
  );

  test('a station or a level that is asked for is read like any other', () => {
    expectFault(() => DRIVE.elevationAt('5'), 'UNIT_MISSING');
    expectFault(() => DRIVE.at('200 km'), 'OUT_OF_RANGE');
    expectFault(() => DRIVE.stationsAt('11 km'), 'OUT_OF_RANGE');
  });
});

describe('requiredStakes', () => {
  const places = (stakes: ReturnType<typeof requiredStakes>) =>
    stakes.stakes.map(({ station, reasons }) => [
      station.toNumber('m'),
      reasons.map(({ kind }) => kind).join(' '),
    ]);

  test('ends, breaks and levels of a line, filled up to the spacing', () => {
    const needed = requiredStakes({ line: DRIVE, spacing: '5 m' });
    expect(places(needed)).toEqual([
      [0, 'start fixed-level'],
      [5, 'spacing'],
      [10, 'low-point'],
      [13, 'spacing'],
      [16, 'grade-break'],
      [20, 'end fixed-level'],
    ]);
    expect(needed.count).toBe(6);
    expect(needed.longestGap.toNumber('m')).toBe(5);
    expect(needed.stakes[3]?.elevation?.toNumber('m')).toBe(29.83);
    expect(needed.stakes[0]?.toNext?.toNumber('m')).toBe(5);
    expect(needed.stakes.at(-1)?.toNext).toBeNull();
    expect([needed.stakes[0]?.x, needed.stakes[0]?.y]).toEqual([null, null]);
    // a gap of exactly the spacing needs no more stakes
    expect(requiredStakes({ line: DRIVE, spacing: '10 m' }).count).toBe(4);
    expect(requiredStakes({ line: DRIVE, spacing: '9.999 m' }).count).toBe(5);
  });

  test('a high point of a line', () => {
    const line = gradeLine({
      points: [
        { station: '0 m', elevation: '0 m' },
        { station: '4 m', grade: '2%' },
        { station: '8 m', grade: '-2%' },
      ],
    });
    expect(requiredStakes({ line, spacing: '10 m' }).stakes[1]?.reasons[0]?.text).toBe(
      'high point',
    );
  });

  test('turns of an edge in plan, with coordinates', () => {
    const needed = requiredStakes({
      path: [
        { x: '0 m', y: '0 m' },
        { x: '3 m', y: '4 m' },
        { x: '6 m', y: '8 m' },
        { x: '6 m', y: '10 m' },
        { x: '8 m', y: '10 m' },
      ],
      spacing: '5 m',
    });
    expect(places(needed)).toEqual([
      [0, 'start'],
      [5, 'spacing'],
      [10, 'turn'],
      [12, 'turn'],
      [14, 'end'],
    ]);
    expect(needed.stakes.map(({ x, y }) => [x?.toNumber('m'), y?.toNumber('m')])).toEqual([
      [0, 0],
      [3, 4],
      [6, 8],
      [6, 10],
      [8, 10],
    ]);
    expect(needed.stakes[2]?.reasons[0]?.text).toBe('turns left');
    expect(needed.stakes[3]?.reasons[0]?.text).toBe('turns right');
    expect([needed.stakes[0]?.elevation, needed.stakes[0]?.extrapolated]).toEqual([null, false]);
  });

  test('a closed edge comes back to its start', () => {
    const needed = requiredStakes({
      path: [
        { x: '0 m', y: '0 m' },
        { x: '4 m', y: '0 m' },
        { x: '4 m', y: '3 m' },
      ],
      closed: true,
      spacing: '10 m',
    });
    expect(places(needed)).toEqual([
      [0, 'start turn'],
      [4, 'turn'],
      [7, 'turn'],
    ]);
    expect(needed.stakes.at(-1)?.toNext?.toNumber('m')).toBe(5);
    expect(needed.longestGap.toNumber('m')).toBe(5);
    // as many points with the first one repeated
    const repeated = requiredStakes({
      path: [
        { x: '0 m', y: '0 m' },
        { x: '4 m', y: '0 m' },
        { x: '4 m', y: '3 m' },
        { x: '0 m', y: '0 m' },
      ],
      closed: true,
      spacing: '10 m',
    });
    expect(repeated.count).toBe(3);
    expect(repeated.stakes).toEqual(needed.stakes);
  });

  test('named places share a stake with what stands near, at the weightier place', () => {
    const near = requiredStakes({
      line: DRIVE,
      spacing: '20 m',
      places: [
        { station: '10.2 m', reason: 'drain' },
        { station: '12 m', reason: 'door jamb' },
      ],
      mergeWithin: '200 mm',
    });
    expect(places(near).map(([station]) => station)).toEqual([0, 10, 12, 16, 20]);
    expect(near.stakes[1]?.reasons.map(({ text }) => text)).toEqual(['low point', 'drain']);
    const apart = requiredStakes({
      line: DRIVE,
      spacing: '20 m',
      places: [{ station: '10.2 m', reason: 'drain' }],
      mergeWithin: '199 mm',
    });
    expect(apart.count).toBe(5);
    // the break comes after the place that is near it
    const before = requiredStakes({
      line: DRIVE,
      spacing: '20 m',
      places: [{ station: '9.9 m', reason: 'drain' }],
      mergeWithin: '200 mm',
    });
    expect(places(before).map(([station]) => station)).toEqual([0, 10, 16, 20]);
    expect(before.stakes[1]?.reasons.map(({ text }) => text)).toEqual(['low point', 'drain']);
  });

  test('levels beyond the edge need no stake', () => {
    const needed = requiredStakes({
      path: [
        { x: '0 m', y: '0 m' },
        { x: '12 m', y: '0 m' },
      ],
      line: DRIVE,
      spacing: '12 m',
    });
    expect(places(needed).map(([station]) => station)).toEqual([0, 10, 12]);
  });

  test('a line whose points do not run forward is no grade line', () => {
    const [first, ...others] = DRIVE.points;
    const turned = { ...DRIVE, points: [...others, first] };
    const run = () => requiredStakes({ line: turned as never, spacing: '5 m' });
    expect(expectFault(run, 'WRONG_TYPE').message).toBe('pass the result of gradeLine()');
  });

  test('a line that is shorter than its edge is carried on and marked', () => {
    const needed = requiredStakes({
      path: [
        { x: '0 m', y: '0 m' },
        { x: '25 m', y: '0 m' },
      ],
      line: DRIVE,
      spacing: '25 m',
    });
    expect(needed.stakes.map(({ extrapolated }) => extrapolated)).toEqual([
      false,
      false,
      false,
      false,
      true,
    ]);
  });

  testRefusals(
    requiredStakes,
    {
      path: [
        { x: '0 m', y: '0 m' },
        { x: '5 m', y: '0 m' },
        { x: '5 m', y: '5 m' },
      ],
      line: DRIVE,
      spacing: '2 m',
      places: [{ station: '1 m', reason: 'drain' }],
    },
    [
      ['spacing', undefined, 'REQUIRED'],
      ['spacing', '0 m', 'NOT_POSITIVE'],
      ['spacing', '0.1 mm', 'CAPACITY_EXCEEDED'],
      ['path', [{ x: '0 m', y: '0 m' }], 'TOO_FEW'],
      ['path.1', { x: '0 m', y: '0 m' }, 'POINTS_COINCIDE', 'path[1]'],
      ['path.1.x', undefined, 'REQUIRED'],
      ['line', { points: [] }, 'WRONG_TYPE'],
      ['places.0.station', '11 m', 'OUT_OF_RANGE'],
      ['places.0.station', '-1 m', 'OUT_OF_RANGE'],
      ['places.0.reason', '', 'EMPTY'],
      ['mergeWithin', '-1 mm', 'NEGATIVE'],
      ['closed', 'yes', 'WRONG_TYPE'],
    ],
  );

  test('neither edge nor line; a closed line', () => {
    expectFault(() => requiredStakes({ spacing: '2 m' }), 'REQUIRED');
    const faults = faultsOf(() => requiredStakes({ line: DRIVE, closed: true, spacing: '2 m' }));
    expect(faults.map(({ message }) => message)).toEqual([
      'missing. Only an edge in plan can be closed',
    ]);
    const ends = [
      { x: '0 m', y: '0 m' },
      { x: '5 m', y: '0 m' },
    ];
    const run = () => requiredStakes({ path: ends, closed: true, spacing: '2 m' });
    expect(expectFault(run, 'TOO_FEW').path).toEqual(['path']);
  });
});

describe('verticalCurve', () => {
  const SAG = {
    start: { station: '0 m', elevation: '30 m' },
    before: '-4%',
    after: '2%',
    length: '6 m',
  } as const;

  test('by pencil: low point where the grade is zero', () => {
    const curve = verticalCurve(SAG);
    expect(curve.kind).toBe('sag');
    expect(curve.turningPoint?.station.toNumber('m')).toBe(4);
    // 30 - 0.16 + 0.06 16 / 12
    expect(curve.turningPoint?.elevation.toNumber('m')).toBe(29.92);
    expect(curve.intersection.elevation.toNumber('m')).toBe(29.88);
    expect(curve.end.elevation.toNumber('m')).toBe(29.94);
    expect(curve.middleOffset.toNumber('mm')).toBe(45);
    expect(curve.elevationAt('3 m').minus(curve.intersection.elevation).toNumber('mm')).toBe(45);
    expect(curve.at('3 m').grade.toNumber('percent')).toBe(-1);
  });

  test('off the curve its straight grades go on, and say so', () => {
    const curve = verticalCurve(SAG);
    expect(curve.at('-1 m').elevation.toNumber('m')).toBe(30.04);
    expect(curve.at('7 m').elevation.toNumber('m')).toBe(29.96);
    expect([curve.at('-1 m'), curve.at('7 m')].map((at) => at.extrapolated)).toEqual([true, true]);
    expect([curve.at('0 m'), curve.at('6 m')].map((at) => at.extrapolated)).toEqual([false, false]);
  });

  test('no turn where the line keeps falling, or levels out', () => {
    expect(verticalCurve({ ...SAG, after: '-1%' }).turningPoint).toBeNull();
    expect(verticalCurve({ ...SAG, after: '0%' }).turningPoint).toBeNull();
    const straight = verticalCurve({ ...SAG, after: '-4%' });
    expect([straight.kind, straight.middleOffset.isZero()]).toEqual(['straight', true]);
    expect(verticalCurve({ ...SAG, before: '2%', after: '-4%' }).kind).toBe('crest');
  });

  test('from its intersection, or from a rate of change, it is the same curve', () => {
    const { length: run, ...rest } = SAG;
    expect(run).toBe('6 m');
    const byRate = verticalCurve({ ...rest, changePer: { change: '1%', distance: '1 m' } });
    expect(byRate.length.toNumber('m')).toBe(6);
    const { start, ...grades } = SAG;
    expect(start.station).toBe('0 m');
    const byMiddle = verticalCurve({
      ...grades,
      intersection: { station: '3 m', elevation: '29.88 m' },
    });
    expect(byMiddle.start.elevation.toNumber('m')).toBe(30);
  });

  testRefusals(verticalCurve, SAG, [
    ['start', undefined, 'REQUIRED'],
    ['start.station', undefined, 'REQUIRED'],
    ['intersection', { station: '3 m', elevation: '1 m' }, 'CONFLICTING_FIELDS', 'start'],
    ['before', undefined, 'REQUIRED'],
    ['after', '1001%', 'OUT_OF_RANGE'],
    ['length', '0 m', 'NOT_POSITIVE'],
    ['length', undefined, 'REQUIRED'],
    ['changePer', { change: '1%', distance: '1 m' }, 'CONFLICTING_FIELDS', 'length'],
  ]);
  testRefusals(
    verticalCurve,
    {
      start: { station: '0 m', elevation: '1 m' },
      before: '1%',
      after: '2%',
      changePer: { change: '1%', distance: '1 m' },
    },
    [
      ['after', '1%', 'NOT_POSITIVE', 'changePer'],
      ['changePer.change', '0%', 'NOT_POSITIVE'],
      ['changePer.distance', '0 m', 'NOT_POSITIVE'],
    ],
  );
  test('a station that is asked for is read like any other', () => {
    expectFault(() => verticalCurve(SAG).elevationAt('1'), 'UNIT_MISSING');
  });
});
