import { describe, expect, test } from 'vitest';
import { checkLevels, checkThickness, describeCheckMove, type CheckMove } from 'settline/checks';
import { testRefusals } from '../refusals.js';

const moves = (check: {
  readonly outOfTolerance: readonly { readonly id: string; readonly move: CheckMove | null }[];
}) => check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'mm' })}`);
const verdicts = (check: { readonly readings: readonly { readonly verdict: string }[] }) =>
  check.readings.map(({ verdict }) => verdict);

describe('checkLevels', () => {
  const shots = (...measured: readonly string[]) =>
    measured.map((text, k) => ({ id: `P${k}`, plan: '10 m', measured: text }));
  const own = { over: '10 mm', under: '5 mm' };

  test('on a limit passes, a hair over or under fails', () => {
    const readings = shots('10.010 m', '10.0100001 m', '9.995 m', '9.9949999 m', '10 m');
    const check = checkLevels({ layer: 'subgrade', readings, tolerance: own });
    expect(verdicts(check)).toEqual(['pass', 'fail', 'pass', 'fail', 'pass']);
    expect(moves(check)).toEqual(['P1: cut 10 mm', 'P3: add 5 mm']);
    expect(check).toMatchObject({ check: 'level', subject: 'subgrade', verdict: 'fail' });
    expect(check).toMatchObject({ toleranceSet: null, source: null });
    expect(check.readings[0]?.margin.isZero()).toBe(true);
    expect(check.readings[1]?.margin.to('mm').toString()).toBe('-0.0001');
  });

  test('compares with the uncertainty: the limit itself is then unclear', () => {
    const readings = shots('10.008 m', '10.009 m', '10.012 m', '10.0121 m', '9.996 m');
    const check = checkLevels({
      layer: 'base',
      readings,
      tolerance: own,
      uncertainty: '2 mm',
    });
    expect(verdicts(check)).toEqual(['pass', 'unclear', 'unclear', 'fail', 'unclear']);
    expect(check.outOfTolerance.map(({ move }) => move?.action)).toEqual([
      undefined,
      undefined,
      'cut',
      undefined,
    ]);
    expect(
      checkLevels({
        layer: 'base',
        readings: readings.slice(1, 2),
        tolerance: own,
        uncertainty: '2 mm',
      }).verdict,
    ).toBe('unclear');
  });

  test('a named set carries its name and source, one for each layer', () => {
    const readings = shots('10.004 m', '9.985 m');
    const set = 'irc-sp-63-2004';
    const subBase = checkLevels({ layer: 'sub-base', readings, tolerance: set });
    expect(verdicts(subBase)).toEqual(['fail', 'pass']);
    expect(subBase).toMatchObject({ toleranceSet: set, source: set });
    expect(verdicts(checkLevels({ layer: 'base', readings, tolerance: set }))).toEqual([
      'pass',
      'fail',
    ]);
    expect(verdicts(checkLevels({ layer: 'pavers', readings, tolerance: set }))).toEqual([
      'pass',
      'fail',
    ]);
  });

  test('keeps plan and measured, and shows its working', () => {
    const check = checkLevels({ layer: 'base', readings: shots('10.003 m'), tolerance: own });
    expect(check.readings[0]?.plan.to('m').toString()).toBe('10');
    expect(check.readings[0]?.measured.to('m').toString()).toBe('10.003');
    expect(check.working[0]).toMatchObject({ formula: 'd = z - z0', source: 'derived' });
    expect(check.note).toBe('All readings are within tolerance.');
  });

  const valid = { layer: 'base', readings: shots('10 m', '10 m'), tolerance: 'irc-sp-63-2004' };
  testRefusals(checkLevels, valid, [
    ['layer', '', 'EMPTY'],
    ['layer', 'subgrade', 'LIMIT_NOT_SET', 'tolerance'],
    ['readings', [], 'EMPTY_LIST'],
    ['readings.1.id', 'P0', 'DUPLICATE_ID', 'readings[1].id'],
    ['readings.1.id', undefined, 'REQUIRED', 'readings[1].id'],
    ['readings.1.plan', 10, 'UNIT_MISSING', 'readings[1].plan'],
    ['readings.1.measured', undefined, 'REQUIRED', 'readings[1].measured'],
    ['tolerance', undefined, 'REQUIRED'],
    ['tolerance', 'none', 'UNKNOWN_CHOICE'],
    ['tolerance', 'paver-guide-in', 'LIMIT_NOT_SET'],
    ['tolerance', 10, 'WRONG_TYPE'],
    ['tolerance', { over: '10 mm' }, 'REQUIRED', 'tolerance.under'],
    ['tolerance', { over: '-1 mm', under: '0 mm' }, 'NEGATIVE', 'tolerance.over'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
    ['uncertainty', '11 m', 'OUT_OF_RANGE'],
  ]);
});

describe('checkThickness', () => {
  const thick = (...millimetres: readonly number[]) =>
    millimetres.map((value, k) => ({ id: `P${k}`, thickness: { value, unit: 'mm' as const } }));
  const guide = (readings: Parameters<typeof checkThickness>[0]['readings']) =>
    checkThickness({ layer: 'base', design: '200 mm', readings, tolerance: 'paver-guide-mm' });

  test('each reading and the average; on a limit passes', () => {
    const check = guide(thick(187, 220, 186.999, 220.001, 200));
    expect(verdicts(check)).toEqual(['pass', 'pass', 'fail', 'fail', 'pass']);
    expect(moves(check)).toEqual(['P2: add 13 mm', 'P3: cut 20 mm']);
    expect(check.note).toContain('over a deep dig');
    expect(guide(thick(200)).note).not.toContain('over a deep dig');
    expect(check.thinnest.to('mm').toString()).toBe('186.999');
    expect(check.thickest.to('mm').toString()).toBe('220.001');
    expect(check.average.value.to('mm').toString()).toBe('202.8');
    expect(check).toMatchObject({ toleranceSet: 'paver-guide-mm', source: 'paver-tolerances' });
  });

  test('from elevations, and from rod readings under one height of instrument', () => {
    const check = guide([
      { id: 'a', top: '99.715 m', bottom: '99.510 m' },
      { id: 'b', rodOnTop: '1.430 m', rodOnBottom: '1.620 m' },
    ]);
    expect(check.readings.map(({ value }) => value.to('mm').toString())).toEqual(['205', '190']);
  });

  test('the average has limits of its own where they are given', () => {
    const readings = thick(190, 190, 190);
    const averageTolerance = { over: '5 mm', under: '5 mm' };
    const base = {
      layer: 'base',
      design: '200 mm',
      readings,
      tolerance: 'paver-guide-mm',
    } as const;
    expect(checkThickness(base).verdict).toBe('pass');
    const check = checkThickness({ ...base, averageTolerance });
    expect(check).toMatchObject({ verdict: 'fail', outOfTolerance: [] });
    expect(check.average).toMatchObject({
      id: 'average',
      verdict: 'fail',
      move: { action: 'add' },
    });
    expect(check.averageLimits.minimum.to('mm').toString()).toBe('195');
    const edge = checkThickness({ ...base, readings: thick(195, 195), averageTolerance });
    expect(edge.verdict).toBe('pass');
  });

  test('an uncertain thickness near a limit is unclear', () => {
    const check = checkThickness({
      layer: 'bedding',
      design: '25 mm',
      readings: thick(29, 28, 36),
      tolerance: 'irc-sp-63-2018',
      uncertainty: '2 mm',
    });
    expect(verdicts(check)).toEqual(['unclear', 'pass', 'fail']);
  });

  const valid = {
    layer: 'base',
    design: '200 mm',
    readings: thick(200, 200),
    tolerance: 'paver-guide-mm',
  };
  testRefusals(checkThickness, valid, [
    ['design', '0 mm', 'NOT_POSITIVE'],
    ['design', '25 m', 'OUT_OF_RANGE'],
    ['layer', 'pavers', 'LIMIT_NOT_SET', 'tolerance'],
    ['tolerance', 'irc-sp-63-2004', 'LIMIT_NOT_SET'],
    ['readings.0', { id: 'x' }, 'REQUIRED', 'readings[0]'],
    ['readings.0', { id: 'x', thickness: '1 mm', top: '1 m' }, 'CONFLICTING_FIELDS', 'readings[0]'],
    ['readings.0', { id: 'x', top: '1 m' }, 'REQUIRED', 'readings[0].bottom'],
    ['readings.0', { id: 'x', top: '1 m', bottom: '2 m' }, 'NEGATIVE', 'readings[0].top'],
    [
      'readings.0',
      { id: 'x', rodOnTop: '2 m', rodOnBottom: '1 m' },
      'NEGATIVE',
      'readings[0].rodOnTop',
    ],
    ['readings.0', { id: 'x', thickness: '-1 mm' }, 'NEGATIVE', 'readings[0].thickness'],
    ['averageTolerance', { over: '1 mm' }, 'REQUIRED', 'averageTolerance.under'],
    ['averageTolerance', 'paver-guide-mm', 'WRONG_TYPE'],
  ]);
});
