import { describe, expect, test } from 'vitest';
import { axleGroupLimit, checkAxleGroups, spoilLoads, spoilPile } from 'settline/haul';
import { stateVolume } from 'settline/volumes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { without } from '../without.js';

const bank = stateVolume('42 m3', 'bank');
const loose = stateVolume('8 m3', 'loose');

describe('spoil loads', () => {
  const valid = {
    bank,
    loosePerBank: 1.25,
    bankDryDensity: '1600 kg/m3',
    moisture: 0.25,
    boxVolume: '10 m3',
    payload: '16 t',
  };

  test('a box that is full just as the payload is reached', () => {
    // 1600 x 1.25 / 1.25 = 1600 kg/m3 loose: 10 m3 weigh 16 t
    const spoil = spoilLoads({ ...valid, bank: stateVolume('16 m3', 'bank') });
    expect(spoil.loose.to('m3').toString()).toBe('20');
    expect(spoil.looseDensity.to('kg/m3').toString()).toBe('1600');
    expect([spoil.loads, spoil.loadsByVolume, spoil.loadsByMass]).toEqual([2, 2, 2]);
    expect(spoil.limitedBy).toBe('volume');
    expect(spoil.dryMass?.to('t').toString()).toBe('25.6');
    expect(spoil.mass.to('t').toString()).toBe('32');
  });

  test('rain adds mass and no volume', () => {
    const wet = spoilLoads({ ...valid, moisture: 0.4 });
    const dry = spoilLoads({ ...valid, moisture: 0 });
    expect(wet.loose.volume.equals(dry.loose.volume)).toBe(true);
    expect(wet.mass.to('t').toString()).toBe('94.08');
    expect([wet.loads, dry.loads]).toEqual([6, 6]);
    expect([wet.limitedBy, dry.limitedBy]).toEqual(['mass', 'volume']);
    expect([wet.loadsByVolume, wet.loadsByMass]).toEqual([6, 6]);
  });

  test('moist density has its water in it', () => {
    const rest = without(valid, 'bankDryDensity', 'moisture');
    const spoil = spoilLoads({ ...rest, bankMoistDensity: '2000 kg/m3' });
    expect(spoil.dryMass).toBeNull();
    expect(spoil.mass.to('t').toString()).toBe('84');
    expect(spoil.loads).toBe(6);
  });

  testRefusals(spoilLoads, valid, [
    ['bank', '42 m3', 'WRONG_TYPE'],
    ['bank', stateVolume('42 m3', 'loose'), 'WRONG_STATE'],
    ['loosePerBank', 30, 'OUT_OF_RANGE'],
    ['loosePerBank', 0.89, 'OUT_OF_RANGE'],
    ['loosePerBank', undefined, 'REQUIRED'],
    ['bankDryDensity', undefined, 'REQUIRED'],
    ['bankMoistDensity', '2 t/m3', 'CONFLICTING_FIELDS', 'bankDryDensity'],
    ['moisture', undefined, 'REQUIRED'],
    ['moisture', 12, 'OUT_OF_RANGE'],
    ['boxVolume', '0 m3', 'NOT_POSITIVE'],
    ['payload', '13 tons', 'UNIT_AMBIGUOUS'],
  ]);

  test('moisture beside a moist density is refused', () => {
    const rest = without(valid, 'bankDryDensity');
    const moist = { ...rest, bankMoistDensity: '2 t/m3' };
    expect(() => spoilLoads(moist)).toThrow(/already includes its water/);
  });

  test('a soil that would be heavier than any is refused by its own field', () => {
    const heavy = { ...valid, bankDryDensity: '4.9 t/m3', moisture: 1 };
    expect(expectFault(() => spoilLoads(heavy), 'OUT_OF_RANGE').path).toEqual(['bankDryDensity']);
  });
});

describe('axle groups', () => {
  const five = ['0 ft', '12 ft', '16 ft', '46 ft', '50 ft'].map((position, index) => ({
    id: `${index + 1}`,
    position,
    load: index === 0 ? '12000 lb' : '17000 lb',
  }));

  test('every group of consecutive axles is there once, singles too', () => {
    const { groups } = checkAxleGroups({ axles: five, caps: {} });
    expect(groups).toHaveLength(15);
    expect(groups.map(({ axles }) => axles.join(''))).toContain('234');
    expect(groups.filter(({ axles }) => axles.length === 1).map(({ limit }) => limit)).toEqual(
      new Array(5).fill(null),
    );
  });

  test('limits by the formula, the tandem cap, two tandems and gross', () => {
    const { groups, overloaded, worst } = checkAxleGroups({ axles: five, caps: 'us-interstate' });
    const of = (ids: string) => {
      const group = groups.find(({ axles }) => axles.join('') === ids);
      return `${group?.limit?.to('lb').toString() ?? ''} ${group?.limitedBy ?? ''}`;
    };
    expect(of('1')).toBe('20000 single');
    expect(of('23')).toBe('34000 tandem');
    // 500 (16 x 3 / 2 + 72) = 48,000
    expect(of('123')).toBe('48000 formula');
    // axles 2 to 5 are 38 ft apart: 500 (38 x 4 / 3 + 84) = 67,333, two tandems 68,000
    expect(of('2345')).toBe('68000 two-tandems');
    // 500 (50 x 5 / 4 + 96) = 79,250, to 79,000: less than the gross cap
    expect(of('12345')).toBe('79000 formula');
    // 80,000 lb on 79,000
    expect(overloaded.map(({ axles }) => axles.join(''))).toEqual(['12345']);
    expect(worst?.excess?.to('lb').toString()).toBe('1000');
    expect(groups.find(({ axles }) => axles.join('') === '23')?.status).toBe('read');
  });

  test('a load exactly on the limit is not over it, a hair more is', () => {
    const pair = (load: string) =>
      checkAxleGroups({
        axles: [
          { id: 'a', position: '0 ft', load: '17000 lb' },
          { id: 'b', position: '4 ft', load },
        ],
        caps: { tandem: '34000 lb', tandemSpread: '8 ft' },
      }).worst;
    expect(pair('17000 lb')?.isOver).toBe(false);
    expect(pair('17000.000001 lb')?.isOver).toBe(true);
  });

  test('own caps are marked as given; what is left out is not checked', () => {
    const { groups } = checkAxleGroups({
      axles: [
        { id: 'a', position: '0 ft' },
        { id: 'b', position: '30 in', load: '9000 lb' },
      ],
      caps: { single: '18000 lb', singleSpread: '40 in', gross: '17000 lb' },
    });
    const both = groups.find(({ axles }) => axles.length === 2);
    // closer than 40 in they are one single axle; the gross cap is lower still
    expect(both?.limitedBy).toBe('gross');
    expect(both?.limit?.to('lb').toString()).toBe('17000');
    expect(both?.status).toBe('given');
    expect(both?.load).toBeNull();
    expect(both?.isOver).toBeNull();
    expect(groups[0]?.limitedBy).toBe('single');
  });

  test('two tandems closer than 36 ft, or not tandems, go by the formula', () => {
    const at = (positions: readonly string[]) =>
      checkAxleGroups({
        axles: positions.map((position, index) => ({ id: `${index}`, position })),
        caps: 'us-interstate',
      }).groups.find(({ axles }) => axles.length === 4)?.limitedBy;
    expect(at(['0 ft', '4 ft', '32 ft', '36 ft'])).toBe('two-tandems');
    expect(at(['0 ft', '4 ft', '31.9 ft', '35.9 ft'])).toBe('formula');
    expect(at(['0 ft', '8.1 ft', '32 ft', '36 ft'])).toBe('formula');
    // 500 (39 x 4 / 3 + 84) = 68,000: no gain
    expect(at(['0 ft', '4 ft', '35 ft', '39 ft'])).toBe('formula');
  });

  test('no loads: no verdict', () => {
    const { worst, overloaded } = checkAxleGroups({
      axles: five.map(({ id, position }) => ({ id, position })),
      caps: 'us-interstate',
    });
    expect(worst).toBeNull();
    expect(overloaded).toEqual([]);
  });

  testRefusals(checkAxleGroups, { axles: five, caps: { tandem: '1 t', tandemSpread: '1 m' } }, [
    ['axles', [], 'EMPTY_LIST'],
    ['axles', [five[0]], 'TOO_FEW'],
    ['axles', new Array(21).fill(five[0]), 'TOO_MANY'],
    ['axles.1.position', '0 ft', 'NOT_INCREASING', 'axles[1].position'],
    ['axles.1.id', '1', 'DUPLICATE_ID', 'axles[1].id'],
    ['axles.1.load', '0 lb', 'NOT_POSITIVE', 'axles[1].load'],
    ['caps', undefined, 'REQUIRED'],
    ['caps', 'utopia', 'UNKNOWN_CHOICE'],
    ['caps', 5, 'WRONG_TYPE'],
    ['caps.tandemSpread', undefined, 'REQUIRED'],
    ['caps.tandem', undefined, 'REQUIRED'],
    ['caps.singleSpread', '1 m', 'REQUIRED', 'caps.single'],
    ['caps', { twoTandemsFrom: '11 m' }, 'REQUIRED', 'caps.tandem'],
    ['caps.gross', '80 tons', 'UNIT_AMBIGUOUS'],
  ]);

  describe('the formula alone', () => {
    test('to the last digit, and to 500 lb with halves down', () => {
      const tie = axleGroupLimit({ axles: 3, spread: '9 ft' });
      expect(tie.unrounded.to('lb').toString()).toBe('42750');
      expect(tie.limit.to('lb').toString()).toBe('42500');
      const over = axleGroupLimit({ axles: 3, spread: '9.000001 ft' });
      expect(over.limit.to('lb').toString()).toBe('43000');
      expect(over.working[0]?.source).toBe('bridge-formula');
    });

    testRefusals(axleGroupLimit, { axles: 2, spread: '4 ft' }, [
      ['axles', 1, 'OUT_OF_RANGE'],
      ['axles', 2.5, 'NOT_WHOLE'],
      ['axles', 21, 'OUT_OF_RANGE'],
      ['axles', 0, 'NOT_POSITIVE'],
      ['spread', '0 ft', 'NOT_POSITIVE'],
      ['spread', 18, 'UNIT_MISSING'],
    ]);
  });
});

describe('spoil pile', () => {
  const valid = { volume: loose, reposeAngle: '45 deg', setBack: '2 ft', room: '20 m' };

  test('a cone at 45 degrees is as high as half its width', () => {
    const heap = spoilPile(valid);
    expect(heap.shape).toBe('cone');
    // r^3 = 24 / pi
    expect(heap.height.toNumber('m')).toBeCloseTo((24 / Math.PI) ** (1 / 3), 12);
    expect(heap.width.toNumber('m')).toBeCloseTo(2 * heap.height.toNumber('m'), 12);
    expect(heap.length.equals(heap.width)).toBe(true);
    expect(heap.footprint.toNumber('m2')).toBeCloseTo(Math.PI * heap.height.toNumber('m') ** 2, 10);
  });

  test('a ridge holds its volume: straight part and one cone', () => {
    const heap = spoilPile({ ...valid, ridgeWidth: '2 m' });
    expect(heap.shape).toBe('ridge');
    expect(heap.height.toNumber('m')).toBeCloseTo(1, 12);
    const straight = heap.length.toNumber('m') - 2;
    expect((Math.PI * 1) / 3 + (2 * 1 * straight) / 2).toBeCloseTo(8, 10);
    expect(heap.footprint.toNumber('m2')).toBeCloseTo(Math.PI + 2 * straight, 10);
  });

  test('too little for its ends stays a cone', () => {
    expect(spoilPile({ ...valid, ridgeWidth: '10 m' }).shape).toBe('cone');
  });

  test('set-back and room', () => {
    expect(spoilPile(valid).isInsideSetBack).toBe(false);
    expect(spoilPile({ ...valid, setBack: '23.999 in' }).isInsideSetBack).toBe(true);
    const { reach, width } = spoilPile(valid);
    expect(spoilPile({ ...valid, room: reach }).fits).toBe(true);
    expect(spoilPile({ ...valid, room: width }).fits).toBe(false);
    const open = without(valid, 'room');
    expect(spoilPile(open).fits).toBeNull();
  });

  testRefusals(spoilPile, { ...valid, ridgeWidth: '1 m' }, [
    ['volume', '8 m3', 'WRONG_TYPE'],
    ['volume', bank, 'WRONG_STATE'],
    ['reposeAngle', '90 deg', 'OUT_OF_RANGE'],
    ['reposeAngle', '0 deg', 'NOT_POSITIVE'],
    ['ridgeWidth', '0 m', 'NOT_POSITIVE'],
    ['setBack', undefined, 'REQUIRED'],
    ['setBack', '-1 ft', 'NEGATIVE'],
    ['room', 'far', 'UNIT_UNKNOWN'],
  ]);
});
