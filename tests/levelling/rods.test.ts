import { describe, expect, test } from 'vitest';
import { buildUp, lifts } from 'settline/build-up';
import {
  cutFill,
  describeCutFill,
  rodTargets,
  stakeRods,
  type RodTarget,
} from 'settline/levelling';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const WALK = buildUp({
  layers: [
    { name: 'paver', thickness: '60 mm' },
    { name: 'bedding', thickness: '25 mm' },
    { name: 'base', thickness: '250 mm' },
  ],
});
const LIFTS = lifts({ thickness: '250 mm', maxLift: '100 mm', compactedPerLoose: '0.8' });

/** A list whose first place holds nothing. */
function withGap<T>(list: readonly T[]): T[] {
  const gapped = new Array<T>(1);
  gapped.push(...list);
  return gapped;
}

const shown = (targets: readonly RodTarget[]) =>
  targets.map(({ surface, elevation, rod, reach }) => [
    surface,
    elevation.toNumber('m'),
    rod.toNumber('m'),
    reach,
  ]);

describe('rodTargets', () => {
  test('by pencil, from finished grade down', () => {
    const targets = rodTargets({
      instrumentHeight: '31.42 m',
      finishedGrade: '30 m',
      buildUp: WALK,
    });
    expect(shown(targets)).toEqual([
      ['finished grade', 30, 1.42, 'on-rod'],
      ['bedding top', 29.94, 1.48, 'on-rod'],
      ['base top', 29.915, 1.505, 'on-rod'],
      ['subgrade', 29.665, 1.755, 'on-rod'],
    ]);
    expect(targets).toHaveLength(4);
    expect(targets.working).toHaveLength(4);
    expect(targets.working[0]?.title).toBe('Rod on the finished grade');
    expect(JSON.parse(JSON.stringify(targets))).toHaveLength(4);
  });

  test('with the lifts of the base, top lift first', () => {
    const targets = rodTargets({
      instrumentHeight: '31 m',
      finishedGrade: '30 m',
      buildUp: WALK,
      lifts: LIFTS,
    });
    expect(targets.map(({ surface }) => surface)).toEqual([
      'finished grade',
      'bedding top',
      'base top',
      'lift 2 top',
      'lift 1 top',
      'subgrade',
    ]);
    // thirds of 250 mm
    expect(
      targets[4]?.rod.equals(length('1 m').plus(length('335 mm')).minus(length('83 1/3 mm'))),
    ).toBe(true);
  });

  test('surfaces out of reach', () => {
    const targets = rodTargets({
      instrumentHeight: '30 m',
      finishedGrade: '30.05 m',
      buildUp: WALK,
      rodLength: '250 mm',
    });
    expect(targets.map(({ reach }) => reach)).toEqual([
      'above-instrument',
      'on-rod',
      'on-rod',
      'beyond-rod',
    ]);
    expect(targets[0]?.rod.toNumber('mm')).toBe(-50);
    // exactly the length of the rod can be read
    const [first] = rodTargets({
      instrumentHeight: '30 m',
      finishedGrade: '28 m',
      buildUp: WALK,
      rodLength: '2 m',
    });
    expect(first?.reach).toBe('on-rod');
  });

  testRefusals(
    rodTargets,
    {
      instrumentHeight: '31 m',
      finishedGrade: '30 m',
      buildUp: WALK,
      lifts: LIFTS,
      rodLength: '5 m',
    },
    [
      ['instrumentHeight', undefined, 'REQUIRED'],
      ['instrumentHeight', 31, 'UNIT_MISSING'],
      ['finishedGrade', '30', 'UNIT_MISSING'],
      ['finishedGrade', '11 km', 'OUT_OF_RANGE'],
      ['buildUp', undefined, 'REQUIRED'],
      ['buildUp', { layers: [] }, 'WRONG_TYPE'],
      ['lifts', { tops: ['1 m'] }, 'WRONG_TYPE'],
      ['lifts', { tops: [] }, 'WRONG_TYPE'],
      ['lifts', { tops: withGap(LIFTS.tops) }, 'WRONG_TYPE'],
      ['buildUp', { ...WALK, layers: withGap(WALK.layers) }, 'WRONG_TYPE'],
      ['rodLength', '21 m', 'OUT_OF_RANGE'],
      [
        'lifts',
        lifts({ thickness: '200 mm', maxLift: '100 mm', compactedPerLoose: 0.8 }),
        'CONFLICTING_FIELDS',
      ],
      ['rodLength', '0 m', 'NOT_POSITIVE'],
    ],
  );
});

describe('stakeRods', () => {
  const table = stakeRods({
    instrumentHeight: '31.42 m',
    buildUp: WALK,
    stakes: [
      { id: 'N1', finishedGrade: '30 m', ground: '1.31 m' },
      { id: 'N2', finishedGrade: '29.9 m' },
      { id: 'N3', finishedGrade: '29.9 m', ground: '1.9 m' },
    ],
  });

  test('one column a surface, one row a stake', () => {
    expect(table.surfaces).toEqual(['finished grade', 'bedding top', 'base top', 'subgrade']);
    expect(table.stakes.map(({ targets }) => targets.map(({ rod }) => rod.toNumber('m')))).toEqual([
      [1.42, 1.48, 1.505, 1.755],
      [1.52, 1.58, 1.605, 1.855],
      [1.52, 1.58, 1.605, 1.855],
    ]);
  });

  test('ground and cut to the subgrade, fill negative', () => {
    expect(table.stakes.map(({ ground }) => ground?.toNumber('m') ?? ground)).toEqual([
      30.11,
      null,
      29.52,
    ]);
    // subgrade rod less ground rod
    expect(table.stakes.map(({ cut }) => cut?.toNumber('mm') ?? cut)).toEqual([445, null, -45]);
    expect(table.working).toHaveLength(12);
    expect(table.working[4]?.title).toBe('Rod on the finished grade, stake N2');
  });

  testRefusals(
    stakeRods,
    {
      instrumentHeight: '31 m',
      buildUp: WALK,
      stakes: [
        { id: 'A', finishedGrade: '30 m' },
        { id: 'B', finishedGrade: '30 m', ground: '1 m' },
      ],
    },
    [
      ['stakes', [], 'EMPTY_LIST'],
      ['stakes.1.id', 'A', 'DUPLICATE_ID'],
      ['stakes.1.id', '', 'EMPTY'],
      ['stakes.1.finishedGrade', undefined, 'REQUIRED'],
      ['stakes.1.ground', '-1 m', 'NEGATIVE'],
      ['buildUp', {}, 'WRONG_TYPE'],
      ['rodLength', '-1 m', 'NOT_POSITIVE'],
      ['instrumentHeight', undefined, 'REQUIRED'],
    ],
  );
});

describe('height of instrument from a set-up', () => {
  const SET_UP = { benchmark: '-2 m', back: '1.25 m' } as const;
  const shot = { reading: '1 m', surface: 'subgrade', target: '-2 m' } as const;

  test('benchmark and backsight', () => {
    const cut = cutFill({ instrumentHeight: SET_UP, ...shot });
    expect(cut.instrumentHeight.toNumber('m')).toBe(-0.75);
    expect(cut.working.map(formulaOf)).toEqual(['HI = BM + BS', 'g = HI - z', 'c = g - r']);
    const table = stakeRods({
      instrumentHeight: SET_UP,
      buildUp: WALK,
      stakes: [{ id: 'A', finishedGrade: '-2 m' }],
    });
    expect(table.instrumentHeight.toNumber('m')).toBe(-0.75);
    expect(table.working).toHaveLength(5);
    const targets = rodTargets({ instrumentHeight: SET_UP, finishedGrade: '-2 m', buildUp: WALK });
    expect(targets[0]?.rod.toNumber('m')).toBe(1.25);
    expect(targets.working[0]?.result.symbol).toBe('HI');
  });

  testRefusals(cutFill, { instrumentHeight: { benchmark: '30 m', back: '1 m' }, ...shot }, [
    ['instrumentHeight.benchmark', undefined, 'REQUIRED'],
    ['instrumentHeight.back', '-1 m', 'NEGATIVE'],
    ['instrumentHeight.back', '21 m', 'OUT_OF_RANGE'],
    ['instrumentHeight', {}, 'REQUIRED', 'instrumentHeight.benchmark'],
    ['instrumentHeight', { value: 3 }, 'UNIT_MISSING'],
  ]);
});

describe('cutFill', () => {
  const SHOT = {
    instrumentHeight: '31 m',
    reading: '1.2 m',
    surface: 'base top',
    target: '29.75 m',
  } as const;

  test('a high spot is cut, a low spot filled', () => {
    const high = cutFill(SHOT);
    expect([high.cut.toNumber('mm'), high.action]).toEqual([50, 'cut']);
    const low = cutFill({ ...SHOT, reading: '1.268 m' });
    expect([low.cut.toNumber('mm'), low.action]).toEqual([-18, 'fill']);
    const right = cutFill({ ...SHOT, reading: '1.25 m' });
    expect([right.cut.toNumber('mm'), right.action]).toEqual([0, 'none']);
  });

  test('judged against a tolerance and its uncertainty', () => {
    const judge = (tolerance: string, uncertainty?: string) =>
      cutFill({ ...SHOT, tolerance, ...(uncertainty === undefined ? {} : { uncertainty }) })
        .verdict;
    expect(cutFill(SHOT).verdict).toBeNull();
    expect(judge('50 mm')).toBe('pass');
    expect(judge('49.99 mm')).toBe('fail');
    expect(judge('50 mm', '1 mm')).toBe('unclear');
    expect(judge('51 mm', '1 mm')).toBe('pass');
    expect(judge('49 mm', '1 mm')).toBe('unclear');
    expect(judge('48.9 mm', '1 mm')).toBe('fail');
  });

  test('the instruction in words', () => {
    expect(describeCutFill(cutFill(SHOT), { as: 'mm', nearest: '1 mm' })).toBe(
      'cut 50 mm to base top',
    );
    const low = cutFill({ ...SHOT, reading: '1.268 m' });
    expect(describeCutFill(low, { as: 'in', nearest: '1/8 in' })).toBe('fill 3/4 in to base top');
    // less than half a step is nothing to do
    const near = cutFill({ ...SHOT, reading: '1.2501 m' });
    expect(describeCutFill(near, { as: 'mm', nearest: '1 mm' })).toBe('base top: on grade');
    expect(describeCutFill(near, { as: 'mm', nearest: '0.1 mm' })).toBe('fill 0.1 mm to base top');
    expectFault(() => describeCutFill(near, { as: 'in', nearest: '1 mm' }), 'INCREMENT_UNSUITABLE');
  });

  testRefusals(cutFill, SHOT, [
    ['instrumentHeight', undefined, 'REQUIRED'],
    ['reading', '-1 m', 'NEGATIVE'],
    ['surface', undefined, 'REQUIRED'],
    ['surface', ' ', 'EMPTY'],
    ['target', '1 kg', 'UNIT_UNKNOWN'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
    ['uncertainty', '1 mm', 'REQUIRED', 'tolerance'],
  ]);

  test('says why an uncertainty needs a tolerance', () => {
    const { message, params } = expectFault(
      () => cutFill({ ...SHOT, uncertainty: '1 mm' }),
      'REQUIRED',
    );
    expect(message).toBe('missing. uncertainty needs it');
    expect(params).toEqual({ needs: 'uncertainty' });
  });
});
