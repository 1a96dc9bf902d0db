import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  density,
  DIMENSIONS,
  flow,
  force,
  formatFor,
  fromNumber,
  length,
  lineWeight,
  mass,
  pressure,
  SI_UNIT,
  slope,
  speed,
  time,
  volume,
  type AnyQuantity,
} from 'settline/units';
import { expectFault } from '../faults.js';

describe('unit and step as on the sheets', () => {
  test.each<readonly [AnyQuantity, string, string]>([
    // on the tape
    [length('27 1/4 in'), '27 1/4 in', '692 mm'],
    [length('692 mm'), '27 1/4 in', '692 mm'],
    [length('-9 3/4 in'), '-9 3/4 in', '-248 mm'],
    [length('0 in'), '0 in', '0 mm'],
    [length('1/2 in'), '1/2 in', '13 mm'],
    [length('119 7/8 in'), '119 7/8 in', '3.045 m'],
    // long ones
    [length('10 ft'), `10' 0"`, '3.048 m'],
    [length('3 m'), '118 1/8 in', '3.000 m'],
    [length('24 ft'), `24' 0"`, '7.315 m'],
    [length('-7.315 m'), `-24' 0"`, '-7.315 m'],
    // what the tape does not show
    [length('1/8 in'), '1/8 in', '3.18 mm'],
    [length('3 mm'), '0.118 in', '3 mm'],
    [length('0.3 mm'), '0.012 in', '0.30 mm'],
    [length('0.0001 in'), '0.00010 in', '0.0025 mm'],
    // other kinds
    [area('320 ft2'), '320.0 ft2', '29.73 m2'],
    [volume('10 yd3'), '10.00 yd3', '7.65 m3'],
    [volume('1 l'), '0.0013 yd3', '0.0010 m3'],
    [mass('13 t'), '14.3 short tons', '13.0 t'],
    [mass('50 lb'), '50.0 lb', '22.7 kg'],
    [mass('2000 lb'), '1.0 short tons', '907.2 kg'],
    [density('2700 lb/yd3'), '2700 lb/yd3', '1602 kg/m3'],
    [slope('1:48'), '2.1%', '2.1%'],
    [slope('-2%'), '-2.0%', '-2.0%'],
    [slope('0.04%'), '0.040%', '0.040%'],
    [slope('0%'), '0.0%', '0.0%'],
    [angle('33.333 deg'), '33.33 deg', '33.33 deg'],
    [force('13 lbf'), '13.0 lbf', '57.8 N'],
    [force('2 kN'), '449.6 lbf', '2.00 kN'],
    [lineWeight('1.2 g/m'), '0.0008 lb/ft', '1.2 g/m'],
    [pressure('35 psi'), '35.0 psi', '241.3 kPa'],
    [pressure('2 MPa'), '290.1 psi', '2.00 MPa'],
    [time('22 s'), '22 s', '22 s'],
    [time('90 min'), '90.0 min', '90.0 min'],
    [time('2 h'), '2.0 h', '2.0 h'],
    [speed('20 m/min'), '66 ft/min', '20.0 m/min'],
    [flow('120 l/min'), '31.7 gal-us/min', '120.0 l/min'],
  ])('%o: %s, %s', (value, us, metric) => {
    expect(formatFor(value, 'us')).toBe(us);
    expect(formatFor(value, 'metric')).toBe(metric);
  });

  test('does not depend on how the quantity was written', () => {
    const [written, calculated] = [length('27 1/4 in'), length('0.69215 m')];
    expect(calculated).toEqual(written);
    expect(formatFor(calculated, 'us')).toBe(formatFor(written, 'us'));
  });

  test('every dimension, however small or large, prints as a number with a unit', () => {
    for (const dimension of DIMENSIONS) {
      for (const size of [0, 1e-30, 1e-9, 0.004, 1, 12345.678, 1e9]) {
        for (const system of ['us', 'metric'] as const) {
          const text = formatFor(fromNumber(size, SI_UNIT[dimension]), system);
          expect(text, `${size} ${dimension}`).toMatch(/^\d[\d.' /]*"?(%| [a-z/2-3 -]+)?$/i);
        }
      }
    }
  });

  test.each([
    [() => formatFor('5 ft' as never, 'us'), 'WRONG_TYPE'],
    [() => formatFor(length('5 ft'), 'imperial' as never), 'UNKNOWN_CHOICE'],
    [() => formatFor(length('5 ft'), undefined as never), 'UNKNOWN_CHOICE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});
