// Slopes of angles against decimals of many more digits, from nearly level to nearly upright.
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { angle, angleOfSlope, slope, slopeOfAngle } from 'settline/units';
import { SOME } from './arbitrary.js';

const Wide = Decimal.clone({ precision: 150 });
const DEGREE = Wide.acos(-1).div(180);

/** Degrees close to 0 and to 90, and between. */
const degrees = fc.oneof(
  fc.integer({ min: 1, max: 89_999 }).map((k) => new Wide(k).div(1000)),
  fc
    .tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 2, max: 45 }), fc.boolean())
    .map(([k, places, isSteep]) => {
      const little = new Wide(`${k}e-${places}`);
      return isSteep ? new Wide(90).minus(little) : little;
    }),
);

test('tangents have forty digits, up to the vertical', () => {
  fc.assert(
    fc.property(degrees, fc.constantFrom(1, -1), (size, sign) => {
      const exact = Wide.tan(size.times(DEGREE)).times(sign);
      const found = slopeOfAngle(angle(`${size.times(sign).toFixed()} deg`)).to('ratio');
      const off = new Wide(found.toFixed()).div(exact).minus(1);
      expect(off.abs().lt('1e-38'), `${size.toFixed()} deg: ${found.toFixed()}`).toBe(true);
    }),
    SOME,
  );
});

test('an angle comes back from its slope', () => {
  fc.assert(
    fc.property(degrees, (size) => {
      const back = angleOfSlope(slopeOfAngle(angle(`${size.toFixed()} deg`)));
      expect(new Wide(back.to('deg').toFixed()).div(size).minus(1).abs().lt('1e-38')).toBe(true);
    }),
    SOME,
  );
  expect(angleOfSlope(slope('100%')).to('deg').toFixed(30)).toBe(new Wide(45).toFixed(30));
});
