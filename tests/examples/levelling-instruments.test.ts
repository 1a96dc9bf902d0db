// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';

import {
  allowableMisclosure,
  beamError,
  closeBenchmark,
  curvatureRefraction,
  cutFill,
  errorBudget,
  gaugeBlock,
  headingError,
  laserReversal,
  rodTilt,
  twoPegTest,
} from 'settline/levelling';
import { type Length, type LengthUnit } from 'settline/units';
import { expectPrinted } from '../printed.js';
const number = (value: Length | null | undefined, unit: LengthUnit): number =>
  value?.toNumber(unit) ?? Number.NaN;

test('seconds of arc as heights', () => {
  // closed form, DERIVED. In the trade 10 seconds pass for 1/16 in over 100 ft: that is 10.74 seconds.
  const metric = ['0.7272', '1.4544', '2.1817', '2.9089'];
  const inches = ['0.02909', '0.05818', '0.08727', '0.11636'];
  [5, 10, 15, 20].forEach((seconds, k) => {
    const accuracy = { angle: { value: seconds, unit: 'arcsec' } } as const;
    const [here, there] = [
      beamError({ distance: '30 m', accuracy }),
      beamError({ distance: '100 ft', accuracy }),
    ];
    expectPrinted(number(here.error, 'mm'), metric[k] ?? '');
    expectPrinted(number(there.error, 'in'), inches[k] ?? '');
  });
});

const budgetOf = (sigma: string, count: number, coverage?: string) =>
  errorBudget({
    random: Array.from({ length: count }, (_, k) => ({
      name: `reading ${k + 1}`,
      sigma: `${sigma} mm`,
    })),
    tolerance: '10 mm',
    ...(coverage === undefined ? {} : { coverage }),
  });

test('level set-ups of two readings', () => {
  // Closed form error propagation for level set-ups; DERIVED
  const printed = ['2.12132', '4.242641', '6.363961'];
  const wide = ['4.157711', '8.315423', '12.473134'];
  [1, 4, 9].forEach((setUps, k) => {
    const budget = budgetOf('1.5', 2 * setUps, '1.959963984540054');
    expectPrinted(number(budget.total, 'mm'), printed[k] ?? '');
    expectPrinted(number(budget.uncertainty, 'mm'), wide[k] ?? '');
  });
});

describe('invented examples, computed by an independent script', () => {
  test('height of instrument and cut', () => {
    const shot = cutFill({
      instrumentHeight: { benchmark: '100 ft', back: '4.32 ft' },
      reading: '6.18 ft',
      surface: 'subgrade',
      target: '97.25 ft',
    });
    expect(shot.ground.to('ft').toString()).toBe('98.14');
    expect(shot.gradeRod.to('ft').toString()).toBe('7.07');
    expect(shot.cut.to('ft').toString()).toBe('0.89');
  });

  test('two-peg test with a short sight of 2 m', () => {
    const level = twoPegTest({
      midway: { a: '1.432 m', b: '1.287 m' },
      offset: { a: '1.515 m', b: '1.374 m' },
      distances: { midway: { a: '20 m', b: '20 m' }, offset: { a: '2 m', b: '42 m' } },
    });
    expect(level.trueDifference.to('m').toString()).toBe('0.145');
    expect(level.lineOfSight.to('mm/m').toString()).toBe('0.1');
    expectPrinted(number(level.corrected.b, 'm'), '1.3698');
    expectPrinted(level.angle.toNumber('arcsec'), '20.6');
  });

  test('rod out of plumb', () => {
    expectPrinted(number(rodTilt({ reading: '1.5 m', tilt: '5 deg' }).error, 'mm'), '5.71');
    expectPrinted(number(rodTilt({ reading: '2 m', tilt: '3 deg' }).error, 'mm'), '2.74');
    expectPrinted(number(rodTilt({ reading: '1.5 m', tilt: '2.09 deg' }).error, 'mm'), '1');
  });

  test('beam error', () => {
    const beam = beamError({ distance: '30 m', accuracy: { angle: '10 arcsec' }, limit: '3 mm' });
    expectPrinted(number(beam.error, 'mm'), '1.454');
    expectPrinted(number(beam.between, 'mm'), '2.91');
    expectPrinted(number(beam.maximumDistance, 'm'), '61.9');
    // 0.0673 D^2 with D in km: the sphere and refraction used here give 0.0673 too
    expectPrinted(number(curvatureRefraction({ sight: '100 m' }).error, 'mm'), '0.673');
  });

  test('half turn of a laser', () => {
    const test = laserReversal({
      distance: '50 m',
      x: { first: '1.503 m', second: '1.497 m' },
      y: { first: '1.5 m', second: '1.501 m' },
      accuracy: { angle: '10 arcsec' },
    });
    expect(test.x.error.to('mm').toString()).toBe('3');
    expectPrinted(test.x.angle.toNumber('arcsec'), '12.4');
    expect(test.y?.error.to('mm').toString()).toBe('-0.5');
    expect([test.x.verdict, test.y?.verdict, test.verdict]).toEqual(['fail', 'pass', 'fail']);
  });

  test('beam with a wrong heading', () => {
    const drive = headingError({
      gradeX: '-3%',
      gradeY: '2%',
      heading: '3 deg',
      at: { x: '20 m', y: '5 m' },
    });
    expectPrinted(drive.gradeX.toNumber('ratio'), '-0.03101');
    expectPrinted(drive.gradeY.toNumber('ratio'), '0.0184');
    expectPrinted(number(drive.error, 'mm'), '-28.1');
  });

  test('closing the day', () => {
    const rule = allowableMisclosure({ rule: { k: '3 mm', per: 'set-up' }, setUps: 4 });
    const day = closeBenchmark({
      benchmark: '30 m',
      back: '1.42 m',
      shots: [{ point: 'BM', reading: '1.409 m', known: '30 m' }],
      allowable: rule.allowable,
    });
    expect(day.instrumentHeight.to('m').toString()).toBe('31.42');
    expect(day.misclosure.to('mm').toString()).toBe('11');
    expect(day.allowable.to('mm').toString()).toBe('6');
    expect(day.isAccepted).toBe(false);
  });

  test('error budget', () => {
    const budget = errorBudget({
      random: ['2', '2', '1.5', '1'].map((sigma) => ({ name: 'one', sigma: `${sigma} mm` })),
      tolerance: '10 mm',
    });
    expectPrinted(number(budget.total, 'mm'), '3.35');
    expectPrinted(number(budget.remaining, 'mm'), '3.29');
  });

  test('block under the level', () => {
    expect(gaugeBlock({ slope: '2%', length: '1.2 m' }).block.to('mm').toString()).toBe('24');
    expect(gaugeBlock({ slope: '2%', length: '4 ft' }).block.to('in').toString()).toBe('0.96');
    const { slopeError } = gaugeBlock({ slope: '2%', length: '1.2 m', error: '1 mm' });
    expectPrinted(slopeError?.toNumber('percent') ?? Number.NaN, '0.083');
  });
});
