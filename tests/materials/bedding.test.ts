import { describe, expect, test } from 'vitest';
import { bedRange, beddingSand, describeScreedLevel, screedLevel } from 'settline/materials';
import { BED_LIMITS } from 'settline/sources';
import { volume } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

describe('bedding sand', () => {
  const sand = {
    area: '100 m2',
    thickness: '25 mm',
    compactedDryDensity: '1600 kg/m3',
    compactedPerLoose: '0.8',
  } as const;

  test('bulking swells the volume, moisture the mass, waste both, none of them the bed', () => {
    const bare = beddingSand(sand);
    expect(bare.compacted.to('m3').toString()).toBe('2.5');
    expect(bare.compacted.state).toBe('compacted');
    expect(bare.delivered.to('m3').toString()).toBe('3.125');
    expect(bare.delivered.state).toBe('loose');
    expect(bare.deliveredMass.to('t').toString()).toBe('4');
    expect(bare.screeded).toBeNull();
    const full = beddingSand({ ...sand, moisture: 0.06, bulking: 0.2, waste: 0.1 });
    expect(full.compacted.to('m3').toString()).toBe('2.5');
    expect(full.dryLoose.to('m3').toString()).toBe('3.4375');
    expect(full.delivered.to('m3').toString()).toBe('4.125');
    expect(full.dryMass.to('t').toString()).toBe('4.4');
    expect(full.deliveredMass.to('t').toString()).toBe('4.664');
  });

  test('settlement says how thick to screed, and stands in for the compaction ratio', () => {
    const { screeded, delivered } = beddingSand({ ...sand, settlement: '6 mm' });
    expect(screeded?.thickness.to('mm').toString()).toBe('31');
    expect(screeded?.volume.to('m3').toString()).toBe('3.1');
    expect(delivered.to('m3').toString()).toBe('3.125');
    const { compactedPerLoose, ...rest } = sand;
    expect(compactedPerLoose).toBe('0.8');
    const measured = beddingSand({ ...rest, settlement: '6 mm' });
    expect(measured.delivered.to('m3').toString()).toBe('3.1');
    expect(measured.deliveredMass.to('t').toString()).toBe('4');
  });

  test('sand that rises into the joints is added to the bed', () => {
    const rising = {
      unit: { length: '198 mm', width: '98 mm' },
      joint: '2 mm',
      rise: '20 mm',
    } as const;
    // share of joint 1 - 198 x 98 / (200 x 100) = 0.0298
    const { compacted, deliveredMass } = beddingSand({ ...sand, rising });
    expect(compacted.to('m3').toString()).toBe('2.5596');
    expect(deliveredMass.to('t').toString()).toBe('4.09536');
  });

  test('without a density there are volumes and no masses', () => {
    const bed = { area: '100 m2', thickness: '25 mm', settlement: '6 mm', moisture: 0.05 } as const;
    const bare = beddingSand(bed);
    expect(bare.delivered.to('m3').toString()).toBe('3.1');
    expect(bare).toMatchObject({ dryMass: null, deliveredMass: null });
    expect(bare.working.map(({ result }) => result.symbol)).toEqual(['Vc', 'Vd']);
  });

  test('working', () => {
    const { working } = beddingSand({ ...sand, bulking: 0.2 });
    expect(working.map((step) => [formulaOf(step), step.source])).toEqual([
      ['Vc = A * (t + u)', 'derived'],
      ['Vd = Vc * (1 + q) * (1 + b) / r', 'sand-bulking-course'],
      ['M = Vc * (1 + q) * d * (1 + w)', 'derived'],
    ]);
    // without bulking nothing of the course is used
    expect(beddingSand(sand).working.map(({ source }) => source)).not.toContain(
      'sand-bulking-course',
    );
  });

  test('all faults at once, none of them a division by zero', () => {
    const issues = faultsOf(() =>
      beddingSand({
        area: '-1 m2',
        thickness: '25 mm',
        settlement: '-25 mm',
        moisture: 2,
        bulking: 2,
        waste: 2,
        rising: { unit: { length: '-3 mm', width: '0 mm' }, joint: '3 mm', rise: '-1 mm' },
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['area', 'NEGATIVE'],
      ['settlement', 'NEGATIVE'],
      ['moisture', 'OUT_OF_RANGE'],
      ['bulking', 'OUT_OF_RANGE'],
      ['waste', 'OUT_OF_RANGE'],
      ['rising.unit.length', 'NOT_POSITIVE'],
      ['rising.unit.width', 'NOT_POSITIVE'],
      ['rising.rise', 'NEGATIVE'],
    ]);
    expectFault(
      () => beddingSand({ ...sand, thickness: '0 mm', settlement: '0 mm' }),
      'NOT_POSITIVE',
    );
    const bed = { area: '1 m2', thickness: '25 mm' } as const;
    expectFault(() => beddingSand(bed), 'REQUIRED');
    expectFault(() => beddingSand({ ...bed, compactedDryDensity: '1.6 t/m3' }), 'REQUIRED');
    expectFault(() => beddingSand({ ...sand, settlement: '25 mm' }), 'OUT_OF_RANGE');
  });
});

describe('bulking of sand', () => {
  const inJar = (damp: string, flooded: string) =>
    beddingSand({
      area: '1 m2',
      thickness: '25 mm',
      compactedPerLoose: 0.8,
      bulking: { damp, flooded },
    });

  test('by the jar', () => {
    expect(inJar('200 mm', '160 mm').bulking).toBe(0.25);
    expect(inJar('8 in', '8 in').bulking).toBe(0);
    expect(inJar('9 in', '8 in').working[1]).toMatchObject({
      formula: 'b = (h1 - h2) / h2',
      source: 'sand-bulking-course',
    });
    // a third has no end in decimals, and 0.03125 m3 x 4 / 3 is exact
    expect(inJar('8 in', '6 in').delivered.volume.equals(volume('0.125/3', 'm3'))).toBe(true);
    const { path } = expectFault(() => inJar('8 in', '9 in'), 'OUT_OF_RANGE');
    expect(path).toEqual(['bulking', 'flooded']);
    expectFault(() => inJar('8 in', '0 in'), 'NOT_POSITIVE');
    expectFault(() => inJar('8.1 in', '4 in'), 'OUT_OF_RANGE');
    expect(inJar('8 in', '4 in').bulking).toBe(1);
  });
});

describe('laying high', () => {
  const bed = { paver: '2 3/8 in', bedding: '1 in', settlement: '1/4 in' } as const;

  test('heights below and above finished grade', () => {
    const level = screedLevel(bed);
    expect(level.laidAboveFinish.to('in').toString()).toBe('0.25');
    expect(level.screedBelowFinish.to('in').toString()).toBe('2.125');
    expect(level.baseTopBelowFinish.to('in').toString()).toBe('3.375');
    expect(level.looseBed.to('in').toString()).toBe('1.25');
    expect(level.elevations).toBeNull();
    expect(level.baseTopBelowFinish.minus(level.screedBelowFinish).equals(level.looseBed)).toBe(
      true,
    );
  });

  test('elevations', () => {
    const { elevations } = screedLevel({ ...bed, finishedGrade: '100 ft' });
    expect(elevations?.laid.minus(elevations.screed).to('in').toString()).toBe('2.375');
    expect(elevations?.laid.to('in').toString()).toBe('1200.25');
    expect(elevations?.screed.to('in').toString()).toBe('1197.875');
    expect(elevations?.baseTop.to('in').toString()).toBe('1196.625');
  });

  test('in words', () => {
    expect(describeScreedLevel(screedLevel(bed), { system: 'us' })).toBe(
      'screed 2 1/8 in below finished grade, 1 1/4 in above the base; lay the pavers 1/4 in high',
    );
    const flat = screedLevel({ ...bed, settlement: '0 in' });
    expect(describeScreedLevel(flat, { system: 'us' })).toContain(
      'lay the pavers at finished grade',
    );
    const thin = screedLevel({ paver: '5 mm', bedding: '25 mm', settlement: '6 mm' });
    expect(describeScreedLevel(thin, { system: 'metric' })).toBe(
      'screed 1 mm above finished grade, 31 mm above the base; lay the pavers 6 mm high',
    );
    expectFault(() => describeScreedLevel(flat, { system: 'x' as never }), 'UNKNOWN_CHOICE');
    for (const wrong of [undefined, null, 5, {}, { ...flat, looseBed: 5 }]) {
      const { message } = expectFault(
        () => describeScreedLevel(wrong as never, { system: 'us' }),
        'WRONG_TYPE',
      );
      expect(message).toBe('pass the result of screedLevel()');
    }
  });

  test('a bed that settles away is refused', () => {
    expectFault(() => screedLevel({ ...bed, settlement: '1 in' }), 'OUT_OF_RANGE');
    expectFault(() => screedLevel({ ...bed, settlement: '-1 mm' }), 'NEGATIVE');
    expectFault(() => screedLevel({ ...bed, paver: '0 mm' }), 'NOT_POSITIVE');
  });
});

describe('what the base leaves of the bed', () => {
  const limits = { minimum: '20 mm', maximum: '30 mm' };
  const range = (deviations: readonly string[], uncertainty = '0 mm') =>
    bedRange({
      nominal: '25 mm',
      deviations: deviations.map((deviation, i) => ({ id: `P${i + 1}`, deviation })),
      limits,
      uncertainty,
    });

  test('a low base makes a thick bed; on the limit passes, slightly over fails', () => {
    const { readings, thinnest, thickest, verdict } = range([
      '5 mm',
      '-5 mm',
      '5.0001 mm',
      '-5.0001 mm',
    ]);
    expect(readings.map((one) => [one.verdict, one.code])).toEqual([
      ['pass', null],
      ['pass', null],
      ['fail', 'too-thin'],
      ['fail', 'too-thick'],
    ]);
    expect(thinnest.to('mm').toString()).toBe('19.9999');
    expect(thickest.to('mm').toString()).toBe('30.0001');
    expect(verdict).toBe('fail');
    expect(readings[2]?.note).toContain('Take it down');
    expect(readings[3]?.note).toContain('Do not fill with bedding');
    expect(readings[0]?.note).toBeNull();
  });

  test('with an uncertainty', () => {
    const { readings, verdict } = range(['0 mm', '4 mm', '-6 mm'], '1 mm');
    expect(readings.map((one) => one.verdict)).toEqual(['pass', 'pass', 'unclear']);
    expect(readings[2]?.note).toContain('Take more readings');
    expect(verdict).toBe('unclear');
    expect(range(['0 mm', '4 mm'], '1 mm').verdict).toBe('pass');
  });

  test('a base above the units leaves less than nothing, and says so', () => {
    const { readings, working } = range(['30 mm']);
    expect(readings[0]?.bed.to('mm').toString()).toBe('-5');
    expect(readings[0]?.code).toBe('too-thin');
    expect(formulaOf(working[0])).toBe('b = t - d');
  });

  test('limits as published', () => {
    const { minimum, maximum } = BED_LIMITS['block-paving-guide'];
    const check = bedRange({
      nominal: '25 mm',
      deviations: [{ id: 'A', deviation: '-12 mm' }],
      limits: {
        minimum: `${minimum.value} ${minimum.unit}`,
        maximum: `${maximum.value} ${maximum.unit}`,
      },
    });
    expect(check.verdict).toBe('fail');
  });

  test.each([
    [() => range([]), 'EMPTY_LIST'],
    [
      () =>
        bedRange({
          nominal: '25 mm',
          deviations: [
            { id: 'A', deviation: '1 mm' },
            { id: 'A', deviation: '1 mm' },
          ],
          limits,
        }),
      'DUPLICATE_ID',
    ],
    [
      () =>
        bedRange({
          nominal: '25 mm',
          deviations: [{ id: 'A', deviation: '1 mm' }],
          limits: { minimum: '30 mm', maximum: '20 mm' },
        }),
      'LIMITS_CONTRADICT',
    ],
    [() => range(['30 m']), 'OUT_OF_RANGE'],
    [() => range(['1 mm'], '-1 mm'), 'NEGATIVE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});
