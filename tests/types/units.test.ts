import { describe, expectTypeOf, test } from 'vitest';
import {
  convert,
  density,
  flow,
  force,
  area,
  length,
  mass,
  pressure,
  slope,
  speed,
  time,
  volume,
  type Area,
  type Decimal,
  type Density,
  type DimensionOf,
  type Flow,
  type Force,
  type Length,
  type Mass,
  type Pressure,
  type Time,
  type UnitOf,
  type Volume,
} from 'settline/units';
import { stateVolume, toState, loads, type StateVolume } from 'settline/volumes';

// These are checked when the tests are compiled; nothing in them needs to run.
const notRun = (check: () => void) => () => {
  expectTypeOf(check).toBeFunction();
};

describe('products have the right dimension', () => {
  test('algebra', () => {
    expectTypeOf(length('1 m').times(length('1 m'))).toEqualTypeOf<Area>();
    expectTypeOf(area('1 m2').times(length('1 m'))).toEqualTypeOf<Volume>();
    expectTypeOf(length('1 m').times(area('1 m2'))).toEqualTypeOf<Volume>();
    expectTypeOf(volume('1 m3').times(density('1 kg/m3'))).toEqualTypeOf<Mass>();
    expectTypeOf(force('1 N').dividedBy(area('1 m2'))).toEqualTypeOf<Pressure>();
    expectTypeOf(pressure('1 Pa').times(area('1 m2'))).toEqualTypeOf<Force>();
    expectTypeOf(mass('1 kg').dividedBy(volume('1 m3'))).toEqualTypeOf<Density>();
    expectTypeOf(length('1 m').dividedBy(length('1 m'))).toEqualTypeOf<Decimal>();
    expectTypeOf(length('1 m').times(slope('1%'))).toEqualTypeOf<Length>();
    expectTypeOf(speed('1 m/s').times(time('1 s'))).toEqualTypeOf<Length>();
    expectTypeOf(volume('1 m3').dividedBy(time('1 h'))).toEqualTypeOf<Flow>();
    expectTypeOf(volume('1 m3').dividedBy(flow('1 m3/h'))).toEqualTypeOf<Time>();
    expectTypeOf(length('1 m').times(2)).toEqualTypeOf<Length>();
    expectTypeOf(length('1 m').dividedBy('3')).toEqualTypeOf<Length>();
  });

  test('names', () => {
    expectTypeOf<DimensionOf<'yd3'>>().toEqualTypeOf<'volume'>();
    expectTypeOf<'in'>().toExtend<UnitOf<'length'>>();
    expectTypeOf<'kg'>().not.toExtend<UnitOf<'length'>>();
  });
});

describe('what makes no sense does not compile', () => {
  test(
    'sums of unlike quantities',
    notRun(() => {
      // @ts-expect-error: a length and an area do not add up
      length('1 m').plus(area('1 m2'));
      // @ts-expect-error: nor do they compare
      length('1 m').compare(mass('1 kg'));
      // @ts-expect-error: an area times an area is no quantity here
      area('1 m2').times(area('1 m2'));
      // @ts-expect-error: a mass is not divided by a length
      mass('1 kg').dividedBy(length('1 m'));
    }),
  );

  test(
    'units of another dimension',
    notRun(() => {
      // @ts-expect-error: kg is no unit of length
      length(1, 'kg');
      // @ts-expect-error: nor to read one in
      length('1 m').to('ft2');
      // @ts-expect-error: inches do not convert to square metres
      convert(1, 'in', 'm2');
      // @ts-expect-error: pounds of mass do not convert to pounds of force
      convert(1, 'lb', 'lbf');
      convert(1, 'in', 'm');
      // @ts-expect-error: a bare ton is ambiguous
      mass(1, 'ton');
    }),
  );

  test(
    'soil in the wrong state',
    notRun(() => {
      const bank = stateVolume('10 yd3', 'bank');
      expectTypeOf(bank).toEqualTypeOf<StateVolume<'bank'>>();
      const factors = { loosePerBank: 1.3, compactedPerBank: 0.9 };
      expectTypeOf(toState(bank, 'loose', factors)).toEqualTypeOf<StateVolume<'loose'>>();
      const truck = { looseDensity: '2500 lb/yd3', boxVolume: '10 yd3', payload: '12 t' };
      // @ts-expect-error: trucks carry loose soil
      loads({ volume: bank, ...truck });
    }),
  );

  test(
    'changing a quantity',
    notRun(() => {
      // @ts-expect-error: quantities are immutable
      length('1 m').dimension = 'area';
    }),
  );
});
