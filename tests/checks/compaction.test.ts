import { describe, expect, test } from 'vitest';
import { lifts } from 'settline/build-up';
import { checkCompaction, relativeCompaction, trialStrip } from 'settline/checks';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const spot = { wetDensity: '2200 kg/m3', moisture: '0.1', maximumDryDensity: '2000 kg/m3' };

describe('relativeCompaction', () => {
  test('by pencil', () => {
    const found = relativeCompaction({ ...spot, optimumMoisture: 0.125 });
    expect(found.dryDensity.to('kg/m3').toString()).toBe('2000');
    expect(found.percent).toBe(100);
    expect(found.waterToAdd?.to('kg/m3').toString()).toBe('50');
    expect(found.isSuspect).toBe(false);
  });

  test('a layer that is wet of the optimum has to lose water', () => {
    const found = relativeCompaction({ ...spot, optimumMoisture: 0.08 });
    expect(found.waterToAdd?.to('kg/m3').toString()).toBe('-40');
    expect(relativeCompaction(spot).waterToAdd).toBeNull();
  });

  test('more than 105 % says that the reference is wrong, 105 % does not', () => {
    const at105 = { ...spot, wetDensity: '2310 kg/m3' };
    expect(relativeCompaction(at105)).toMatchObject({ percent: 105, isSuspect: false });
    expect(relativeCompaction({ ...spot, wetDensity: '2310.0001 kg/m3' }).isSuspect).toBe(true);
  });

  test('shows its working', () => {
    const { working } = relativeCompaction(spot);
    expect(working.map(({ result }) => result.symbol)).toEqual(['d', 'R']);
  });
});

testRefusals(relativeCompaction, spot, [
  ['wetDensity', undefined, 'REQUIRED'],
  ['wetDensity', '0 kg/m3', 'NOT_POSITIVE'],
  ['wetDensity', '6 t/m3', 'OUT_OF_RANGE'],
  ['moisture', 11, 'OUT_OF_RANGE'],
  ['moisture', -0.1, 'NEGATIVE'],
  ['maximumDryDensity', '2000 kg', 'UNIT_UNKNOWN'],
  ['optimumMoisture', 12, 'OUT_OF_RANGE'],
]);

describe('checkCompaction', () => {
  const spots = (...wet: readonly string[]) =>
    wet.map((value, k) => ({
      id: `P${k}`,
      wetDensity: { value, unit: 'kg/m3' as const },
      moisture: 0.1,
    }));
  const base = {
    layer: 'base',
    maximumDryDensity: '2000 kg/m3',
    test: 'standard',
    tolerance: 'paver-guide-in',
  } as const;

  test('98 % passes, a hair less fails', () => {
    const check = checkCompaction({ ...base, readings: spots('2156', '2155.9999', '2200') });
    expect(check.readings.map(({ verdict }) => verdict)).toEqual(['pass', 'fail', 'pass']);
    expect(check.readings[0]?.percent).toBe(98);
    expect(check.outOfTolerance[0]?.move).toEqual({ action: 'compact', by: null });
    expect(check).toMatchObject({
      verdict: 'fail',
      minimumPercent: 98,
      source: 'paver-tolerances',
    });
    expect(check.limits.minimum.to('kg/m3').toString()).toBe('1960');
  });

  test('limits of the caller and uncertainty in percent', () => {
    const check = checkCompaction({
      ...base,
      readings: spots('2112', '2090', '2068', '2067.9'),
      tolerance: { minimumPercent: 95 },
      uncertainty: 1,
    });
    expect(check.readings.map(({ verdict }) => verdict)).toEqual([
      'pass',
      'unclear',
      'unclear',
      'fail',
    ]);
    expect(check.source).toBeNull();
  });

  test('a spot beyond 105 % casts doubt on the reference', () => {
    const check = checkCompaction({ ...base, readings: spots('2200', '2311') });
    expect(check.readings.map(({ isSuspect }) => isSuspect)).toEqual([false, true]);
    expect(check.note).toContain('105%');
    expect(checkCompaction({ ...base, readings: spots('2200') }).note).not.toContain('105%');
  });

  testRefusals(checkCompaction, { ...base, readings: spots('2200') }, [
    ['test', 'modified', 'CONFLICTING_FIELDS'],
    ['test', undefined, 'REQUIRED'],
    ['tolerance', 'permeable-guide', 'LIMIT_NOT_SET'],
    ['tolerance', {}, 'REQUIRED', 'tolerance.minimumPercent'],
    ['tolerance', { minimumPercent: 0.95 }, 'OUT_OF_RANGE', 'tolerance.minimumPercent'],
    ['readings.0.moisture', 11, 'OUT_OF_RANGE', 'readings[0].moisture'],
    ['uncertainty', 30, 'OUT_OF_RANGE'],
  ]);
});

describe('checkCompaction against a control strip', () => {
  const strip = {
    layer: 'base',
    readings: [
      { id: 'a', wetDensity: '2100 kg/m3', moisture: '0.05' },
      { id: 'b', wetDensity: '2058 kg/m3', moisture: '0.05' },
    ],
    maximumDryDensity: '2000 kg/m3',
    test: 'control-strip',
    tolerance: { minimumPercent: 98 },
  } as const;

  test('98 % of the density of the strip', () => {
    const check = checkCompaction(strip);
    expect(check.readings.map(({ percent, verdict }) => [percent, verdict])).toEqual([
      [100, 'pass'],
      [98, 'pass'],
    ]);
    expect(check.test).toBe('control-strip');
    expect(checkCompaction({ ...strip, tolerance: { minimumPercent: 99 } }).verdict).toBe('fail');
  });

  test('a set for a laboratory test does not fit', () => {
    const issue = expectFault(
      () => checkCompaction({ ...strip, tolerance: 'paver-guide-mm' }),
      'CONFLICTING_FIELDS',
    );
    expect(issue.path).toEqual(['test']);
    expect(issue.message).toContain('from a control strip');
  });

  test('a spot past 105 % casts doubt on the strip', () => {
    const note = checkCompaction({ ...strip, maximumDryDensity: '1900 kg/m3' }).note;
    expect(note).toContain('control strip');
  });
});

describe('trialStrip', () => {
  test('ratio of the sums, range and scatter by pencil', () => {
    const strip = trialStrip({
      readings: [
        { loose: '100 mm', compacted: '79 mm' },
        { loose: '100 mm', compacted: '80 mm' },
        { loose: '100 mm', compacted: '81 mm' },
      ],
      compactedThickness: '4 in',
    });
    expect(strip).toMatchObject({
      compactedPerLoose: 0.8,
      range: { minimum: 0.79, maximum: 0.81 },
    });
    // deviations -1, 0, 1 mm: sqrt(2 / 6) mm over 100 mm
    expect(strip.standardUncertainty).toBeCloseTo(Math.sqrt(1 / 3) / 100, 15);
    expect(strip.spread?.to('in').toString()).toBe('5');
    expect([strip.loose, strip.compacted].map((one) => one.to('mm').toString())).toEqual([
      '100',
      '80',
    ]);
    expect(strip.working.map(({ result }) => result.symbol)).toEqual(['r', 's']);
  });

  test('thick spots count for more than thin ones', () => {
    const { compactedPerLoose } = trialStrip({
      readings: [
        { loose: '200 mm', compacted: '150 mm' },
        { loose: '50 mm', compacted: '50 mm' },
      ],
    });
    expect(compactedPerLoose).toBe(0.8);
  });

  test('from elevations; two readings tell no uncertainty', () => {
    const strip = trialStrip({
      readings: [
        { bottom: '9.90 m', looseTop: '10.025 m', compactedTop: '10.000 m' },
        { bottom: '9.90 m', looseTop: '10.025 m', compactedTop: '10.000 m' },
      ],
    });
    expect(strip).toMatchObject({
      compactedPerLoose: 0.8,
      standardUncertainty: null,
      spread: null,
    });
  });

  test('is what lifts take', () => {
    const { compactedPerLoose } = trialStrip({
      readings: [{ loose: '7 in', compacted: '6 in' }],
    });
    const base = lifts({ thickness: '6 in', maxLift: '6 in', compactedPerLoose });
    expect(base.loose.toNumber('in')).toBeCloseTo(7, 12);
  });

  const valid = { readings: [{ loose: '100 mm', compacted: '80 mm' }] };
  testRefusals(trialStrip, valid, [
    ['readings', [], 'EMPTY_LIST'],
    ['readings.0.loose', '0 mm', 'NOT_POSITIVE', 'readings[0].loose'],
    ['readings.0.compacted', undefined, 'REQUIRED', 'readings[0].compacted'],
    ['readings.0.compacted', '101 mm', 'OUT_OF_RANGE', 'readings[0].compacted'],
    ['readings.0.compacted', '49.9 mm', 'OUT_OF_RANGE', 'readings[0].compacted'],
    ['readings.0', {}, 'REQUIRED', 'readings[0]'],
    ['readings.0', { loose: '1 m', looseTop: '1 m' }, 'CONFLICTING_FIELDS', 'readings[0]'],
    [
      'readings.0',
      { bottom: '1 m', looseTop: '1 m', compactedTop: '1 m' },
      'NOT_POSITIVE',
      'readings[0].looseTop',
    ],
    [
      'readings.0',
      { bottom: '1 m', looseTop: '1.1 m', compactedTop: '1 m' },
      'OUT_OF_RANGE',
      'readings[0].compactedTop',
    ],
    ['compactedThickness', '0 in', 'NOT_POSITIVE'],
  ]);
});
