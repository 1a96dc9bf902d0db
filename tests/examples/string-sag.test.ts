// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import { gradeLine } from 'settline/grading';
import {
  depthBetweenStrings,
  stringAtStake,
  stringSag,
  stringsAlongEdge,
} from 'settline/string-line';
import { length } from 'settline/units';
import { expectPrinted } from '../printed.js';
const plain = { offset: '0 m', crossSlope: '0%', carriesCrossSlope: false } as const;

test('sag of a mason line, computed by an independent script', () => {
  const line = { tension: '60 N', weightPerLength: '1.2 g/m' } as const;
  const sag = stringSag({ ...line, span: '15 m', from: '3.75 m', tolerance: '2 mm' });
  expectPrinted(sag.sagAtMidspan.toNumber('mm'), '5.516');
  expectPrinted(sag.catenarySag.toNumber('mm'), '5.516');
  expectPrinted(sag.at?.sag.toNumber('mm') ?? Number.NaN, '4.137');
  expectPrinted(sag.minimumTension?.toNumber('N') ?? Number.NaN, '165.5');
  expectPrinted(sag.maximumSpan?.toNumber('m') ?? Number.NaN, '9.03');
  expectPrinted(sag.sagWithMidStake.toNumber('mm'), '1.379');
});

test('elevations of a sloped string', () => {
  // Closed form, derived from the constant-height rule: the string falls 2 % from 100.35 to 100.17
  // over 9 m, 0.1 m above finish, subgrade 0.29 m below finish
  const edge = gradeLine({
    points: [
      { station: '0 m', elevation: '100.25 m' },
      { station: '9 m', elevation: '100.07 m' },
    ],
  });
  const { stakes, spans } = stringsAlongEdge({
    ...plain,
    grade: edge,
    stringHeight: '0.1 m',
    stakes: ['0 m', '3 m', '4.5 m', '9 m'].map((station, k) => ({ id: `S${k}`, station })),
  });
  const texts = (of: readonly { to(unit: 'm'): { toString(): string } }[]) =>
    of.map((one) => one.to('m').toString());
  expect(texts(stakes.map(({ elevation }) => elevation))).toEqual([
    '100.35',
    '100.29',
    '100.26',
    '100.17',
  ]);
  expect(texts(stakes.map(({ finishedGrade }) => finishedGrade))).toEqual([
    '100.25',
    '100.19',
    '100.16',
    '100.07',
  ]);
  const subgrade = stakes.map(({ elevation }) => elevation.minus(length('390 mm')));
  expect(texts(subgrade)).toEqual(['99.96', '99.9', '99.87', '99.78']);
  expect(spans.map(({ slope }) => slope.to('percent').toString())).toEqual(['-2', '-2', '-2']);
});

describe('invented examples, computed by an independent script', () => {
  test('a string on an offset stake', () => {
    const stake = {
      finishedGrade: '29.88 m',
      stringHeight: '0.15 m',
      offset: '0.45 m',
      crossSlope: '-2%',
      ground: '29.84 m',
      inGround: '0.35 m',
      aboveString: '0.15 m',
    } as const;
    const carried = stringAtStake({ ...stake, carriesCrossSlope: true });
    expect(carried.elevation.to('m').toString()).toBe('30.021');
    expect(carried.aboveGround?.to('m').toString()).toBe('0.181');
    expect(carried.stakeLength?.to('m').toString()).toBe('0.681');
    const edge = stringAtStake({ ...stake, carriesCrossSlope: false });
    expect(edge.elevation.to('m').toString()).toBe('30.03');
  });

  test('a line across two strings', () => {
    const spot = depthBetweenStrings({
      left: '30.15 m',
      right: '30.046 m',
      width: '1 m',
      fromLeft: '0.4 m',
      surface: 'subgrade',
      below: '0.435 m',
      sag: '1.5 mm',
      measured: '0.44 m',
    });
    expectPrinted(spot.line.toNumber('m'), '30.1069');
    expectPrinted(spot.elevation?.toNumber('m') ?? Number.NaN, '29.6669');
    expectPrinted(spot.target.toNumber('m'), '29.6734');
    expect(spot.cut?.to('mm').toString()).toBe('-6.5');
    expect(spot.action).toBe('fill');
  });
});
