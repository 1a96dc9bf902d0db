import { describe, expect, test } from 'vitest';
import { geotextile, geotextileOverlap } from 'settline/materials';
import { testRefusals } from '../refusals.js';

const dig = { length: '20 m', width: '6 m', rollWidth: '4 m', overlap: '500 mm' } as const;
const metres = (one: { to(unit: 'm'): { toString(): string } } | null | undefined) =>
  one?.to('m').toString();

describe('strips of geotextile', () => {
  test('a strip more where the overlap leaves a gap', () => {
    const strips = (width: string) => geotextile({ ...dig, width }).strips;
    expect(strips('4 m')).toBe(1);
    expect(strips('4.0001 m')).toBe(2);
    expect(strips('7.5 m')).toBe(2); // 4 + 3.5
    expect(strips('7.5001 m')).toBe(3);
    expect(strips('11 m')).toBe(3);
  });

  test('upturns on both sides widen and lengthen', () => {
    const { strips, stripLength, coveredArea } = geotextile({ ...dig, upturn: '300 mm' });
    expect(strips).toBe(2);
    expect(metres(stripLength)).toBe('20.6');
    expect(coveredArea.to('m2').toString()).toBe('135.96'); // 20.6 x 6.6
    expect(geotextile({ ...dig, width: '7 m', upturn: '300 mm' }).strips).toBe(3);
  });

  test('fabric, laps and both ways of laying', () => {
    const fabric = geotextile(dig);
    expect(metres(fabric.totalLength)).toBe('40');
    expect(fabric.fabricArea.to('m2').toString()).toBe('160');
    expect(fabric.wasteShare).toBeCloseTo(1 / 3, 15);
    // across: 1 + ceil(16 / 3.5) = 6 strips of 6 m
    expect(fabric.across.strips).toBe(6);
    expect(metres(fabric.across.totalLength)).toBe('36');
    expect(fabric.better).toBe('along-width');
    const square = geotextile({ ...dig, length: '6 m' });
    expect(square.better).toBe('same');
    expect(geotextile({ ...dig, width: '4 m' }).better).toBe('along-length');
  });

  test('rolls: strips that fit are cut whole, longer ones are pieced', () => {
    const rolls = (rollLength: string, more = {}) => {
      const fabric = geotextile({ ...dig, rollLength, ...more });
      return [fabric.piecesPerStrip, fabric.rolls, metres(fabric.totalLength)];
    };
    expect(rolls('40 m')).toEqual([1, 1, '40']);
    // two strips of 20 m do not come out of 39.9 m
    expect(rolls('39.9 m')).toEqual([1, 2, '40']);
    expect(rolls('20 m')).toEqual([1, 2, '40']);
    // 12 + 8.5: a lap of 0.5 m each, and the last pieces do not share a roll
    expect(rolls('12 m')).toEqual([2, 4, '41']);
    // 15 + 6: the two last pieces of 6 m share a roll
    expect(rolls('15 m', { endLap: '1 m' })).toEqual([2, 3, '42']);
    expect(geotextile(dig)).toMatchObject({ rolls: null, surplus: null });
    expect(metres(geotextile({ ...dig, rollLength: '50 m' }).surplus)).toBe('10');
  });

  test('with rolls known, fewer rolls decide', () => {
    // along: 2 x 20 of 39 m rolls is 2 rolls; across: 6 x 6 is 1
    expect(geotextile({ ...dig, rollLength: '39 m' })).toMatchObject({
      rolls: 2,
      across: { rolls: 1 },
      better: 'along-width',
    });
  });

  test('working', () => {
    expect(geotextile(dig).working.map(({ result }) => result.value.toString())).toEqual([
      '2',
      '40 m',
    ]);
  });

  testRefusals(geotextile, { ...dig, rollLength: '50 m' }, [
    ['length', '0 m', 'NOT_POSITIVE'],
    ['width', undefined, 'REQUIRED'],
    ['rollWidth', '500 mm', 'ROLL_NARROWER_THAN_OVERLAP', 'overlap'],
    ['overlap', '4 m', 'ROLL_NARROWER_THAN_OVERLAP'],
    ['overlap', '-1 mm', 'NEGATIVE'],
    ['upturn', '-1 mm', 'NEGATIVE'],
    ['rollLength', '0.5 m', 'ROLL_NARROWER_THAN_OVERLAP', 'endLap'],
    ['endLap', '101 m', 'OUT_OF_RANGE'],
    ['length', '101 km', 'OUT_OF_RANGE'],
  ]);
});

describe('overlap by strength of the subgrade', () => {
  const lap = (cbr: number | string) => {
    const { minimum, maximum, sewn } = geotextileOverlap({ cbr });
    return [minimum?.to('ft').toString(), maximum?.to('ft').toString(), sewn];
  };

  test('on the border of two rows', () => {
    expect(lap(5)).toEqual(['0.9', '1.5', 'no']);
    expect(lap('3.0001')).toEqual(['0.9', '1.5', 'no']);
    expect(lap(3)).toEqual(['1.9', '3.3', 'no']);
    expect(lap('1.0001')).toEqual(['1.9', '3.3', 'no']);
    expect(lap(1)).toEqual(['3.3', undefined, 'or']);
    expect(lap(0.5)).toEqual(['3.3', undefined, 'or']);
    expect(lap(0.4999)).toEqual([undefined, undefined, 'must']);
  });

  test('says how far each table can be traced', () => {
    expect(geotextileOverlap({ cbr: 2 })).toMatchObject({
      source: 'geotextile-overlap-note',
      status: 'read',
    });
    const memory = geotextileOverlap({ cbr: 2, table: 'highway-geotextiles' });
    expect(memory).toMatchObject({ source: 'highway-geotextiles', status: 'memory' });
    expect(memory.minimum?.to('mm').toString()).toBe('600');
    // the rows of AASHTO M 288, appendix, as remembered
    const rows = [4, 2, 0.7, 0.3].map((cbr) => {
      const { minimum, maximum, sewn } = geotextileOverlap({ cbr, table: 'highway-geotextiles' });
      return [minimum?.to('mm').toString(), maximum?.to('mm').toString(), sewn];
    });
    expect(rows).toEqual([
      ['300', '450', 'no'],
      ['600', '1000', 'no'],
      ['1000', undefined, 'or'],
      [undefined, undefined, 'must'],
    ]);
  });

  testRefusals(geotextileOverlap, { cbr: 3 }, [
    ['cbr', -1, 'NOT_POSITIVE'],
    ['cbr', 0, 'NOT_POSITIVE'],
    ['cbr', 201, 'OUT_OF_RANGE'],
    ['cbr', undefined, 'REQUIRED'],
    ['table', 'none', 'UNKNOWN_CHOICE'],
  ]);
});
