import { describe, expect, test } from 'vitest';
import {
  checkSlope,
  fallBetween,
  gradeBreak,
  levelChange,
  rampRun,
  sillClearance,
  stepLayout,
} from 'settline/grading';
import { SLOPE_PURPOSES } from 'settline/sources';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

describe('checkSlope', () => {
  test('a least fall counts the way it runs, a steepest slope does not', () => {
    const drain = (fall: string) => checkSlope({ fall, purpose: 'drainage' }).verdict;
    expect([drain('2%'), drain('1.999%'), drain('-3%')]).toEqual(['pass', 'fail', 'fail']);
    const ramp = (fall: string) => checkSlope({ fall, purpose: 'accessible-ramp' }).verdict;
    expect([ramp('1:12'), ramp('-1:12'), ramp('8.34%')]).toEqual(['pass', 'pass', 'fail']);
  });

  test('1/4 in per ft is exactly 1:48', () => {
    const check = checkSlope({ fall: '1/4 in per ft', purpose: 'accessible-ramp-cross' });
    expect(check.verdict).toBe('pass');
    expect(check.checks[0]?.margin.isZero()).toBe(true);
  });

  test('an uncertainty leaves a band in which nothing can be said', () => {
    const verdict = (fall: string) =>
      checkSlope({ fall, purpose: 'drainage', uncertainty: '0.3%' }).verdict;
    expect([verdict('2.3%'), verdict('2.29%'), verdict('1.7%'), verdict('1.69%')]).toEqual([
      'pass',
      'unclear',
      'unclear',
      'fail',
    ]);
  });

  test('limits of the caller, one or both; the worst verdict counts', () => {
    const limits = { minimum: '1%', maximum: '3%' };
    const both = checkSlope({ fall: '4%', limits });
    expect(both.checks.map(({ limit, verdict, source }) => [limit, verdict, source])).toEqual([
      ['minimum', 'pass', 'caller'],
      ['maximum', 'fail', 'caller'],
    ]);
    expect(both.verdict).toBe('fail');
    expect(both.working.map(formulaOf)).toEqual(['m = g - g0', 'm = g0 - abs(g)']);
    expect(checkSlope({ fall: '4%', limits: { minimum: '1%' } }).verdict).toBe('pass');
  });

  test('in words', () => {
    const note = (fall: string, uncertainty = '0%') =>
      checkSlope({ fall, purpose: 'drainage', uncertainty }).note;
    expect(note('2.5%')).toBe('Fall is 2.50%, minimum 2.00%: ok.');
    expect(note('2%')).toBe('Fall is 2.00%, minimum 2.00%: ok.');
    expect(note('1%')).toBe('Fall is 1.00%, below the 2.00% minimum fall.');
    expect(note('-1%')).toBe('Rises 1.00%, below the 2.00% minimum fall.');
    // as many places as it takes to tell them apart
    expect(note('1.9999%')).toBe('Fall is 1.9999%, below the 2.0000% minimum fall.');
    expect(note('2%', '0.1%')).toBe(
      'Fall is 2.00%, too close to the 2.00% minimum fall to tell. Take more readings, then check again.',
    );
    const ramp = (fall: string) => checkSlope({ fall, purpose: 'accessible-ramp' }).note;
    expect(ramp('-9%')).toBe('Slope is 9.00%, over the 8.33% maximum slope.');
    expect(ramp('-3%')).toBe('Slope is 3.00%, maximum 8.33%: ok.');
  });

  test('every purpose has a limit, a source and a caution', () => {
    for (const purpose of SLOPE_PURPOSES) {
      const check = checkSlope({ fall: '3%', purpose });
      expect(check.checks.length, purpose).toBeGreaterThan(0);
      expect(check.checks[0]?.source, purpose).not.toBe('caller');
      expect(check.cautions.map(({ id }) => id)).toEqual([
        purpose.startsWith('accessible') ? 'access' : 'drainage',
      ]);
    }
  });

  testRefusals(checkSlope, { fall: '1%', limits: { minimum: '1%', maximum: '2%' } }, [
    ['fall', undefined, 'REQUIRED'],
    ['fall', '2', 'UNIT_MISSING'],
    ['fall', '1001%', 'OUT_OF_RANGE'],
    ['limits', undefined, 'REQUIRED', 'purpose'],
    ['purpose', 'drainage', 'CONFLICTING_FIELDS'],
    ['limits', {}, 'REQUIRED'],
    ['limits.minimum', '3%', 'LIMITS_CONTRADICT', 'limits'],
    ['limits.minimum', '0%', 'NOT_POSITIVE'],
    ['uncertainty', '-1%', 'NEGATIVE'],
  ]);
  test('refuses a purpose that it does not know', () => {
    expectFault(() => checkSlope({ fall: '1%', purpose: 'parking' as never }), 'UNKNOWN_CHOICE');
  });
});

describe('fallBetween', () => {
  const DRIVE = { from: '100 m', to: '99.8 m', distance: '14.5 m', minimumFall: '2%' } as const;

  test('what a drop lacks', () => {
    const drive = fallBetween(DRIVE);
    expect(drive.drop.toNumber('mm')).toBe(200);
    expect(drive.neededDrop.toNumber('mm')).toBe(290);
    expect(drive.margin.toNumber('mm')).toBe(-90);
    expect(drive.shortfall.toNumber('mm')).toBe(90);
    expect(drive.isEnough).toBe(false);
    expect(drive.fall.toNumber('percent')).toBeCloseTo(1.3793103448, 9);
  });

  test('just enough, more than enough, and rising', () => {
    const enough = fallBetween({ ...DRIVE, to: '99.71 m' });
    expect([enough.isEnough, enough.shortfall.isZero()]).toEqual([true, true]);
    const more = fallBetween({ ...DRIVE, to: '99 m' });
    expect([more.margin.toNumber('mm'), more.shortfall.toNumber('mm')]).toEqual([710, 0]);
    const rising = fallBetween({ ...DRIVE, to: '100.1 m' });
    expect(rising.fall.isNegative()).toBe(true);
    expect(rising.shortfall.toNumber('mm')).toBe(390);
  });

  testRefusals(fallBetween, DRIVE, [
    ['from', undefined, 'REQUIRED'],
    ['to', '99.8', 'UNIT_MISSING'],
    ['distance', '0 m', 'NOT_POSITIVE'],
    ['minimumFall', '0%', 'NOT_POSITIVE'],
  ]);
});

describe('sillClearance', () => {
  const DOOR = {
    sill: '30.2 m',
    finishedGradeAtWall: '30.05 m',
    minimumClearance: '150 mm',
  } as const;

  test('exactly the minimum passes, slightly less does not', () => {
    const door = sillClearance(DOOR);
    expect(door.clearance.toNumber('mm')).toBe(150);
    expect([door.margin.isZero(), door.shortfall.isZero()]).toEqual([true, true]);
    const high = sillClearance({ ...DOOR, finishedGradeAtWall: '30 m' });
    expect([high.margin.toNumber('mm'), high.shortfall.toNumber('mm')]).toEqual([50, 0]);
    expect(door.verdict).toBe('pass');
    const low = sillClearance({ ...DOOR, minimumClearance: '150.001 mm' });
    expect(low.verdict).toBe('fail');
    expect([low.margin.toNumber('mm'), low.shortfall.toNumber('mm')]).toEqual([-0.001, 0.001]);
    expect(sillClearance({ ...DOOR, uncertainty: '2 mm' }).verdict).toBe('unclear');
    expect(door.cautions.map(({ id }) => id)).toEqual(['drainage']);
    expect(door.fallAway).toBeNull();
  });

  test('water that runs toward the wall fails it', () => {
    const toWall = sillClearance({ ...DOOR, away: { elevation: '30.06 m', distance: '1 m' } });
    expect(toWall.fallAway?.verdict).toBe('fail');
    expect(toWall.verdict).toBe('fail');
    const away = sillClearance({ ...DOOR, away: { elevation: '30.03 m', distance: '1 m' } });
    expect(away.fallAway?.fall.toNumber('percent')).toBe(2);
    expect(away.verdict).toBe('pass');
    expect(away.working).toHaveLength(2);
    const unclear = sillClearance({
      ...DOOR,
      finishedGradeAtWall: '30 m',
      away: { elevation: '29.98 m', distance: '1 m' },
      uncertainty: '1 mm',
    });
    expect(unclear.verdict).toBe('unclear');
  });

  test('a level close to the wall may make any slope', () => {
    const step = sillClearance({ ...DOOR, away: { elevation: '29 m', distance: '1 mm' } });
    expect(step.fallAway?.fall.toNumber('ratio')).toBe(1050);
  });

  testRefusals(sillClearance, { ...DOOR, away: { elevation: '30 m', distance: '1 m' } }, [
    ['sill', undefined, 'REQUIRED'],
    ['finishedGradeAtWall', '11 km', 'OUT_OF_RANGE'],
    ['minimumClearance', '0 mm', 'NOT_POSITIVE'],
    ['away.elevation', undefined, 'REQUIRED'],
    ['away.distance', '0 m', 'NOT_POSITIVE'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('gradeBreak', () => {
  const CREST = {
    before: '2%',
    after: '-8%',
    vehicle: { wheelbase: '2.8 m', underside: '70 mm' },
  } as const;

  test('a crest comes up between the axles', () => {
    const crest = gradeBreak(CREST);
    expect(crest.kind).toBe('crest');
    expect(crest.change.toNumber('percent')).toBe(-10);
    expect(crest.clearance?.part).toBe('underside');
    expect(crest.clearance?.reach.toNumber('mm')).toBe(70);
    // it just passes
    expect(crest.clearance?.verdict).toBe('pass');
    expect(crest.transition).toBeNull();
    const low = gradeBreak({ ...CREST, vehicle: { wheelbase: '2.8 m', underside: '69 mm' } });
    expect(low.clearance?.verdict).toBe('fail');
    expect(low.clearance?.clearance.toNumber('mm')).toBe(-1);
    expect(gradeBreak({ ...CREST, uncertainty: '1 mm' }).clearance?.verdict).toBe('unclear');
  });

  test('a sag comes up under the overhang', () => {
    const vehicle = { ...CREST.vehicle, overhang: '1 m', overhangHeight: '200 mm' };
    const sag = gradeBreak({ before: '-2%', after: '10%', vehicle });
    expect([sag.kind, sag.clearance?.part]).toEqual(['sag', 'overhang']);
    expect(sag.clearance?.reach.toNumber('mm')).toBe(120);
    expect(sag.clearance?.clearance.toNumber('mm')).toBe(80);
    expect(sag.working).toHaveLength(2);
    // without an overhang there is nothing to say
    expect(gradeBreak({ ...CREST, after: '9%' }).clearance).toBeNull();
    expect(gradeBreak({ before: '1%', after: '2%' }).clearance).toBeNull();
  });

  test('spread over breaks of equal size', () => {
    const spread = (after: string) =>
      gradeBreak({ before: '-2%', after, limit: { change: '3%', distance: '3 m' } }).transition;
    expect(spread('-11%')?.breaks).toBe(3);
    expect(spread('-11%')?.length.toNumber('m')).toBe(6);
    expect(spread('-11%')?.grades.map((grade) => grade.toNumber('percent'))).toEqual([
      -2, -5, -8, -11,
    ]);
    expect(spread('-11.1%')?.breaks).toBe(4);
    expect(spread('1%')?.grades.map((grade) => grade.toNumber('percent'))).toEqual([-2, 1]);
    expect(spread('1%')?.length.isZero()).toBe(true);
    expect(spread('-2%')?.breaks).toBe(0);
    expect(gradeBreak({ before: '1%', after: '1%' }).kind).toBe('straight');
  });

  test('an uncertainty needs the vehicle whose clearance it belongs to', () => {
    const flat = { before: '1%', after: '1%', uncertainty: '1 mm' };
    const { message, path } = expectFault(() => gradeBreak(flat), 'REQUIRED');
    expect([message, path]).toEqual(['missing. uncertainty needs it', ['vehicle']]);
  });

  testRefusals(gradeBreak, { ...CREST, limit: { change: '3%', distance: '3 m' } }, [
    ['before', undefined, 'REQUIRED'],
    ['after', '1001%', 'OUT_OF_RANGE'],
    ['vehicle.wheelbase', '0 m', 'NOT_POSITIVE'],
    ['vehicle.underside', undefined, 'REQUIRED'],
    ['vehicle.overhang', '1 m', 'REQUIRED', 'vehicle.overhangHeight'],
    ['vehicle.overhangHeight', '1 m', 'REQUIRED', 'vehicle.overhang'],
    ['limit.change', '0%', 'NOT_POSITIVE'],
    ['limit.change', '0.0001%', 'CAPACITY_EXCEEDED'],
    ['limit.distance', undefined, 'REQUIRED'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('rampRun', () => {
  test('flights with landings between them', () => {
    const ramp = rampRun({
      rise: '1 m',
      maximumSlope: '1:12',
      maximumRisePerFlight: '760 mm',
      landing: '1.5 m',
    });
    expect(ramp.flights).toBe(2);
    expect(ramp.run.toNumber('m')).toBe(12);
    expect(ramp.total.toNumber('m')).toBe(13.5);
    expect(ramp.flightRise.toNumber('mm')).toBe(500);
    expect(ramp.flightRun.toNumber('m')).toBe(6);
    const just = rampRun({
      rise: '760 mm',
      maximumSlope: '1:12',
      maximumRisePerFlight: '760 mm',
      landing: '1 m',
    });
    expect([just.flights, just.total.toNumber('m')]).toEqual([1, 9.12]);
    expect(ramp.cautions.map(({ id }) => id)).toEqual(['access', 'drainage']);
    expect(ramp.working).toHaveLength(2);
  });

  test('room that there is', () => {
    const room = rampRun({ rise: '150 mm', maximumSlope: '1:20', room: '2.5 m' }).room;
    expect(room?.fits).toBe(false);
    expect(room?.margin.toNumber('m')).toBe(-0.5);
    expect(room?.slope.toNumber('percent')).toBe(6);
    expect(rampRun({ rise: '150 mm', maximumSlope: '1:20', room: '3 m' }).room?.fits).toBe(true);
    expect(rampRun({ rise: '150 mm', maximumSlope: '1:20' }).room).toBeNull();
  });

  testRefusals(
    rampRun,
    {
      rise: '1 m',
      maximumSlope: '1:12',
      maximumRisePerFlight: '500 mm',
      landing: '1 m',
      room: '9 m',
    },
    [
      ['rise', '0 m', 'NOT_POSITIVE'],
      ['maximumSlope', '0%', 'NOT_POSITIVE'],
      ['maximumRisePerFlight', undefined, 'REQUIRED'],
      ['landing', undefined, 'REQUIRED'],
      ['landing', '0 m', 'NOT_POSITIVE'],
      ['maximumRisePerFlight', '0.1 mm', 'CAPACITY_EXCEEDED'],
      ['room', '0 m', 'NOT_POSITIVE'],
    ],
  );
});

describe('levelChange', () => {
  test('exactly at each limit', () => {
    const treatment = (rise: string) => levelChange({ rise }).treatment;
    expect(['1/4 in', '1/3 in', '1/2 in', '33/64 in'].map((rise) => treatment(rise))).toEqual([
      'vertical',
      'bevelled',
      'bevelled',
      'ramp',
    ]);
    expect(levelChange({ rise: '1/2 in' }).bevelRun?.equals(length('1 in'))).toBe(true);
    expect(levelChange({ rise: '1/4 in' }).bevelRun).toBeNull();
    expect(levelChange({ rise: '1 in' }).bevelRun).toBeNull();
    const bevel = levelChange({ rise: '3/8 in' });
    expect(bevel.source).toBe('ada-level-change');
    expect(bevel.working).toHaveLength(1);
    expect(levelChange({ rise: '1 in' }).cautions.map(({ id }) => id)).toEqual(['access']);
    expect(levelChange({ rise: '1 in' }).working).toEqual([]);
  });

  testRefusals(levelChange, { rise: '1 in' }, [
    ['rise', undefined, 'REQUIRED'],
    ['rise', '0 in', 'NOT_POSITIVE'],
    ['rise', '101 m', 'OUT_OF_RANGE'],
  ]);
});

describe('stepLayout', () => {
  const WALK = { rise: '600 mm', maximumRiser: '150 mm', tread: '350 mm' } as const;

  test('level treads', () => {
    const steps = stepLayout(WALK);
    expect([steps.risers, steps.treads]).toEqual([4, 3]);
    expect(steps.riser.toNumber('mm')).toBe(150);
    expect(steps.run.toNumber('mm')).toBe(1050);
    expect(steps.treadRise.isZero()).toBe(true);
    // 650 mm is more than 25 in
    expect(steps.comfort.isComfortable).toBe(false);
    expect(stepLayout({ ...WALK, rise: '600.1 mm' }).risers).toBe(5);
    expect(stepLayout({ ...WALK, rise: '100 mm' }).treads).toBe(0);
  });

  test('treads that fall to their front take a part of the rise', () => {
    const steps = stepLayout({ ...WALK, treadFall: '2%' });
    expect(steps.treadRise.toNumber('mm')).toBe(7);
    // 607 / 157: four risers of (600 - 21) / 4
    expect(steps.risers).toBe(4);
    expect(steps.riser.toNumber('mm')).toBe(144.75);
    const total = steps.riser.times(steps.risers).plus(steps.treadRise.times(steps.treads));
    expect(total.equals(length('600 mm'))).toBe(true);
    expect(steps.working).toHaveLength(3);
  });

  test('exactly 25 in is comfortable', () => {
    const isComfortable = (tread: string) =>
      stepLayout({ rise: '18 in', maximumRiser: '6 in', tread }).comfort.isComfortable;
    expect([isComfortable('13 in'), isComfortable('13 1/64 in')]).toEqual([true, false]);
  });

  testRefusals(stepLayout, WALK, [
    ['rise', '0 mm', 'NOT_POSITIVE'],
    ['maximumRiser', undefined, 'REQUIRED'],
    ['maximumRiser', '0.1 mm', 'CAPACITY_EXCEEDED'],
    ['tread', '-1 mm', 'NOT_POSITIVE'],
    ['treadFall', '-1%', 'NEGATIVE'],
    ['treadFall', '200%', 'OUT_OF_RANGE'],
  ]);
});
