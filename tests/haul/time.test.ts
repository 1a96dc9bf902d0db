import { describe, expect, test } from 'vitest';
import { haulBalance, machineTime, plateTime } from 'settline/haul';
import { stateVolume } from 'settline/volumes';
import { testRefusals } from '../refusals.js';
import { without } from '../without.js';

describe('machine time', () => {
  const valid = {
    bank: stateVolume('60 m3', 'bank'),
    loosePerBank: 1.2,
    bucket: '0.5 m3',
    fillFactor: 0.8,
    cycle: '30 s',
    efficiency: '50/60',
  };

  test('buckets, output and time', () => {
    const dig = machineTime(valid);
    expect(dig.perBucket.to('m3').toString()).toBe('0.4');
    expect(dig.cycles).toBe(180); // 72 / 0.4, exactly
    expect(dig.loosePerHour.toNumber('m3/h')).toBeCloseTo(40, 12);
    expect(dig.bankPerHour.toNumber('m3/h')).toBeCloseTo(100 / 3, 12);
    expect(dig.time.toNumber('h')).toBeCloseTo(1.8, 12);
    expect(dig.loose.to('m3').toString()).toBe('72');
  });

  test('a hair more is one more bucket', () => {
    expect(machineTime({ ...valid, bank: stateVolume('60.000001 m3', 'bank') }).cycles).toBe(181);
  });

  test('a shorter cycle, a fuller bucket and a fuller hour each take less time', () => {
    const base = machineTime(valid).time;
    for (const better of [{ cycle: '29 s' }, { fillFactor: 0.81 }, { efficiency: 0.84 }]) {
      expect(machineTime({ ...valid, ...better }).time.compare(base)).toBe(-1);
    }
  });

  testRefusals(machineTime, valid, [
    ['bank', stateVolume('1 m3', 'loose'), 'WRONG_STATE'],
    ['loosePerBank', 130, 'OUT_OF_RANGE'],
    ['bucket', 0.5, 'UNIT_MISSING'],
    ['fillFactor', 0.2, 'OUT_OF_RANGE'],
    ['fillFactor', 90, 'OUT_OF_RANGE'],
    ['cycle', 22, 'UNIT_MISSING'],
    ['cycle', '0 s', 'NOT_POSITIVE'],
    ['efficiency', 0, 'NOT_POSITIVE'],
    ['efficiency', 50, 'OUT_OF_RANGE'],
  ]);
});

describe('haul balance', () => {
  const valid = {
    loadTime: '5 min',
    haulTime: '9 min',
    dumpTime: '2 min',
    returnTime: '4 min',
    truckLoad: '10 m3',
  };

  test('a whole balance needs no further truck, and neither waits', () => {
    const haul = haulBalance({
      ...valid,
      trucks: [3, 4, 5],
      volume: stateVolume('120 m3', 'loose'),
    });
    expect(haul.truckCycle.to('min').toString()).toBe('20');
    expect(haul.balance).toBe(4);
    expect(haul.trucksNeeded).toBe(4);
    expect(haul.fleets.map(({ limitedBy }) => limitedBy)).toEqual(['trucks', 'both', 'machine']);
    expect(haul.fleets.map(({ output }) => output.toNumber('m3/h'))).toEqual([90, 120, 120]);
    expect(haul.fleets[1]?.time?.to('h').toString()).toBe('1');
    expect(haul.machineMaximum.toNumber('m3/h')).toBe(120);
    expect(haul.perTruck.toNumber('m3/h')).toBe(30);
  });

  test('a hair longer away needs one truck more', () => {
    expect(haulBalance({ ...valid, haulTime: '541 s' }).trucksNeeded).toBe(5);
  });

  test('a truck that is always at the machine is one truck', () => {
    const none = { haulTime: '0 s', dumpTime: '0 s', returnTime: '0 s' };
    const { trucksNeeded, fleets } = haulBalance({ ...valid, ...none });
    expect(trucksNeeded).toBe(1);
    expect(fleets.map(({ trucks, limitedBy }) => [trucks, limitedBy])).toEqual([[1, 'both']]);
    expect(fleets[0]?.time).toBeNull();
  });

  testRefusals(haulBalance, { ...valid, trucks: [2], volume: stateVolume('10 m3', 'loose') }, [
    ['loadTime', '0 min', 'NOT_POSITIVE'],
    ['haulTime', '-1 min', 'NEGATIVE'],
    ['dumpTime', undefined, 'REQUIRED'],
    ['returnTime', '4', 'UNIT_MISSING'],
    ['truckLoad', '0 m3', 'NOT_POSITIVE'],
    ['trucks', [], 'EMPTY_LIST'],
    ['trucks.0', 1.5, 'NOT_WHOLE', 'trucks[0]'],
    ['trucks.0', 101, 'OUT_OF_RANGE', 'trucks[0]'],
    ['volume', stateVolume('10 m3', 'bank'), 'WRONG_STATE'],
  ]);
});

describe('plate time', () => {
  const valid = {
    area: '90 m2',
    plateWidth: '0.5 m',
    overlap: 0.1,
    speed: '20 m/min',
    passes: 4,
    lifts: 3,
    efficiency: 1,
    lift: '0.1 m',
  };

  test('lane, pass, lift and all', () => {
    const plate = plateTime(valid);
    expect(plate.lane.to('m').toString()).toBe('0.45');
    expect(plate.perPass.to('min').toString()).toBe('10');
    expect(plate.perLift.to('min').toString()).toBe('40');
    expect(plate.time.to('h').toString()).toBe('2');
    // 9 m3 in 40 minutes
    expect(plate.output?.toNumber('m3/h')).toBe(13.5);
  });

  test('half the time in motion takes twice as long', () => {
    expect(
      plateTime({ ...valid, efficiency: 0.5 })
        .time.to('h')
        .toString(),
    ).toBe('4');
    const rest = without(valid, 'lift');
    expect(plateTime(rest).output).toBeNull();
  });

  testRefusals(plateTime, valid, [
    ['area', '0 m2', 'NOT_POSITIVE'],
    ['plateWidth', 0.5, 'UNIT_MISSING'],
    ['overlap', 0.95, 'OUT_OF_RANGE'],
    ['overlap', -0.1, 'NEGATIVE'],
    ['speed', '60 km/h', 'OUT_OF_RANGE'],
    ['passes', 0, 'NOT_POSITIVE'],
    ['passes', 51, 'OUT_OF_RANGE'],
    ['lifts', 2.5, 'NOT_WHOLE'],
    ['efficiency', 1.1, 'OUT_OF_RANGE'],
    ['lift', '0 m', 'NOT_POSITIVE'],
  ]);
});
