import { describe, expect, test } from 'vitest';
import { checkLifts, compactionMethod, controlStrip } from 'settline/ground';
import { testRefusals } from '../refusals.js';

const plate = (mass: string) => ({ plant: 'plate', mass, plateArea: '0.25 m2' }) as const;

describe('method of compaction', () => {
  test.each([
    ['349 kg', null, null],
    ['350 kg', '100', 5],
    ['450 kg', '100', 5],
    ['450.1 kg', '200', 7],
  ])('a plate of %s on 0.25 m2: %s mm in %s passes', (mass, most, passes) => {
    const method = compactionMethod({ ...plate(mass), fill: 'granular' });
    expect(method.thickestLift?.to('mm').toString() ?? null).toBe(most);
    expect(method.passes).toBe(passes);
    expect(method.note).toContain(
      most ??
        'The method does not permit this plate on granular fill at any thickness. Use a heavier machine.',
    );
  });

  test('a lift goes up to the next row, and not past the last', () => {
    const of = (lift: string) => compactionMethod({ ...plate('500 kg'), fill: 'granular', lift });
    expect([of('100 mm').passes, of('101 mm').passes, of('200 mm').passes]).toEqual([3, 5, 7]);
    expect(of('201 mm').passes).toBeNull();
    expect(of('201 mm').note).toContain('thicker than the 200 mm');
  });

  test('rollers by width, vibrotampers by mass', () => {
    const roller = { plant: 'single-drum', mass: '2500 kg', drumWidth: '1 m' } as const;
    expect(
      compactionMethod({ ...roller, fill: 'cohesive' }).lifts.map(({ passes }) => passes),
    ).toEqual([3, 6]);
    const tamper = (mass: string) =>
      compactionMethod({ plant: 'vibrotamper', mass, fill: 'granular' }).lifts.length;
    expect([tamper('24 kg'), tamper('25 kg'), tamper('49 kg'), tamper('50 kg')]).toEqual([
      0, 1, 1, 2,
    ]);
  });

  test('wholly cohesive fill bars the thickest lift', () => {
    const roller = { plant: 'twin-drum', mass: '2500 kg', drumWidth: '1 m' } as const;
    const clay = { ...roller, fill: 'cohesive' } as const;
    expect(compactionMethod(clay).thickestLift?.to('mm').toString()).toBe('200');
    const whole = compactionMethod({ ...clay, isWhollyCohesive: true });
    expect(whole.thickestLift?.to('mm').toString()).toBe('150');
  });

  testRefusals(compactionMethod, { ...plate('500 kg'), fill: 'granular' }, [
    ['plateArea', undefined, 'REQUIRED'],
    ['drumWidth', '1 m', 'CONFLICTING_FIELDS'],
    ['plant', 'steamroller', 'UNKNOWN_CHOICE'],
    ['fill', undefined, 'REQUIRED'],
    ['mass', '0 kg', 'NOT_POSITIVE'],
    ['lift', '6 m', 'OUT_OF_RANGE'],
    ['isWhollyCohesive', true, 'CONFLICTING_FIELDS'],
  ]);
});

describe('check of lifts', () => {
  const lifts = [
    { name: 'first', thickness: '200 mm', passes: 7 },
    { name: 'second', thickness: '150 mm', passes: 4 },
    { name: 'third', thickness: '210 mm', passes: 50 },
  ];

  test('each lift by its row', () => {
    const check = checkLifts({ ...plate('500 kg'), fill: 'granular', lifts });
    expect(check.verdict).toBe('fail');
    expect(check.lifts.map(({ verdict, requiredPasses }) => [verdict, requiredPasses])).toEqual([
      ['pass', 7],
      ['fail', 5],
      ['fail', null],
    ]);
    expect(check.lifts[1]?.note).toBe('Give it 1 more pass.');
    expect(check.working.map(({ kind }) => kind)).toEqual(['formula', 'formula', 'procedure']);
    const good = checkLifts({ ...plate('500 kg'), fill: 'granular', lifts: lifts.slice(0, 1) });
    expect(good.verdict).toBe('pass');
  });

  test('a plate too light for the method may compact none of them', () => {
    const check = checkLifts({ ...plate('349 kg'), fill: 'granular', lifts: lifts.slice(0, 1) });
    expect(check.thickestLift).toBeNull();
    expect(check.verdict).toBe('fail');
    expect(check.lifts[0]?.requiredPasses).toBeNull();
    expect(check.lifts[0]?.note).toBe(
      'The method does not permit a lift this thick with this machine. Use thinner lifts or a heavier machine.',
    );
  });

  test('two passes less than the three of a thin lift', () => {
    const thin = [{ name: 'thin', thickness: '100 mm', passes: 1 }];
    const check = checkLifts({ ...plate('500 kg'), fill: 'granular', lifts: thin });
    expect(check.lifts[0]?.note).toBe('Give it 2 more passes.');
  });

  testRefusals(checkLifts, { ...plate('500 kg'), fill: 'granular', lifts }, [
    ['lifts', [], 'EMPTY_LIST'],
    ['lifts.1.name', 'first', 'DUPLICATE_ID'],
    ['lifts.1.passes', 2.5, 'NOT_WHOLE'],
    ['lifts.2.thickness', undefined, 'REQUIRED'],
  ]);
});

describe('control strip', () => {
  const readings = [
    { passes: 2, dryDensity: '2000 kg/m3' },
    { passes: 4, dryDensity: '2080 kg/m3' },
    { passes: 6, dryDensity: '2121.6 kg/m3' },
  ];

  test('passes up to the reading after which no pass gains more than 1 %', () => {
    // 2 % a pass, then 1 % a pass
    const strip = controlStrip({ readings });
    expect(strip.passes).toBe(4);
    expect(strip.density.to('kg/m3').toString()).toBe('2121.6');
    expect([strip.isStillRising, strip.hasFallen]).toEqual([false, false]);
    expect(strip.note).toContain('4 passes are enough on this strip.');
    const first = controlStrip({
      readings: [
        { passes: 1, dryDensity: '2100 kg/m3' },
        { passes: 2, dryDensity: '2101 kg/m3' },
      ],
    });
    expect(first.note).toMatch(/^1 pass is enough on this strip\./);
    expect(strip.working.map(({ result }) => result.value)).toEqual([2, 1]);
  });

  test('still rising, or falling', () => {
    const rising = controlStrip({ readings, stopGain: '0.9' });
    expect([rising.passes, rising.isStillRising]).toEqual([null, true]);
    expect(rising.note).toContain('Roll on');
    const falls = controlStrip({
      readings: [...readings, { passes: 8, dryDensity: '2100 kg/m3' }],
    });
    expect([falls.hasFallen, falls.density.to('kg/m3').toString()]).toEqual([true, '2121.6']);
    expect(falls.note).toContain('fallen');
  });

  testRefusals(controlStrip, { readings }, [
    ['readings', readings.slice(0, 1), 'TOO_FEW'],
    ['readings.1.passes', 2, 'NOT_INCREASING'],
    ['readings.1.dryDensity', '0 kg/m3', 'NOT_POSITIVE'],
    ['stopGain', -1, 'NEGATIVE'],
  ]);
});

test('a vibrotamper is rated by its mass alone', () => {
  const tamper = { plant: 'vibrotamper', mass: '60 kg', fill: 'cohesive', lift: '100 mm' } as const;
  const method = compactionMethod(tamper);
  expect([method.rating, method.passes]).toEqual([60, 4]);
  expect(method.working[0]).toMatchObject({
    formula: 'r = m',
    given: [{ symbol: 'm', name: 'mass in kg' }],
  });
});
