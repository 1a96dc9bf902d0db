import { describe, expect, test } from 'vitest';
import { checkSquare } from 'settline/stakes';
import { angle, unitsOf, type Dimension, type Quantity, type QuantityInput } from 'settline/units';
import { quantity } from '../../src/input/field.js';
import * as ranges from '../../src/input/ranges.js';
import type { QuantityRange } from '../../src/input/ranges.js';
import { readOptions, shapeOf } from '../../src/input/shape.js';
import { faultsOf } from '../faults.js';

const isRange = (value: unknown): value is QuantityRange<Dimension> =>
  typeof value === 'object' && value !== null && 'dimension' in value;

const ofQuantities = Object.entries<unknown>({ ...ranges }).flatMap(([name, range]) =>
  isRange(range) ? [{ name, range }] : [],
);

interface Only {
  readonly value: QuantityInput<Dimension>;
}

const read = (range: QuantityRange<Dimension>, value: QuantityInput<Dimension>) =>
  readOptions({ value }, shapeOf<Only>()({ value: quantity(range) })).value;

/** The one message that refuses a value, and the limit in it. */
function refusal(range: QuantityRange<Dimension>, value: QuantityInput<Dimension>) {
  const [issue, second] = faultsOf(() => read(range, value));
  expect(second).toBeUndefined();
  expect(issue?.code).toBe('OUT_OF_RANGE');
  const limit = String(issue?.params['most']);
  expect(issue?.message).toContain(` is beyond ${limit}. `);
  return { message: issue?.message ?? '', limit };
}

/** Twice the limit, written in a unit. */
const beyond = ({ most }: QuantityRange<Dimension>, unit: string) => ({
  value: (most as Quantity<'length'>)
    .times(2)
    .to(unit as 'm')
    .toSignificantDigits(15)
    .toString(),
  unit: unit as never,
});

describe('a limit is told in the unit that the caller wrote, and is itself within the range', () => {
  test('there are ranges', () => {
    expect(ofQuantities.length).toBeGreaterThan(60);
  });

  test.each(ofQuantities)('$name', ({ range }) => {
    for (const unit of unitsOf(range.dimension)) {
      const { limit } = refusal(range, beyond(range, unit));
      const told = unit === 'ratio' || unit === 'percent' ? '%' : unit;
      const end = told === '%' ? told : ` ${told}`;
      expect(limit.endsWith(end), `${limit} for ${unit}`).toBe(true);
      const value = limit.slice(0, -end.length);
      const within = { value, unit: unit === 'ratio' ? 'percent' : unit } as never;
      expect(() => read(range, within)).not.toThrow();
    }
  });
});

describe('no message on an angle says radians to a caller who did not', () => {
  const angles = ofQuantities.filter(({ range }) => range.dimension === 'angle');

  test.each(angles)('$name', ({ range }) => {
    for (const value of ['4000 deg', '5000 gon', angle('20000000 arcsec')]) {
      expect(refusal(range, value).message).not.toMatch(/\brad/);
    }
    expect(refusal(range, '80 rad').message).toMatch(/^80 rad is beyond [\d.]+ rad\. /);
    const [negative] = faultsOf(() => read({ ...range, sign: 'positive' }, '-1 deg'));
    expect(negative?.message).toBe('-1 deg is not greater than zero. Write a positive value');
  });
});

test('feet and inches are told in feet', () => {
  expect(refusal(ranges.THICKNESS as never, `18' 3"`).limit).toBe('16.4 ft');
  expect(refusal(ranges.THICKNESS as never, '6001 mm').limit).toBe('5000 mm');
});

test('a public function tells it so', () => {
  const [issue] = faultsOf(() =>
    checkSquare({ length: '40000 ft', width: '9 ft', diagonals: ['9 ft', '9 ft'] }),
  );
  expect(issue?.message).toMatch(/^40000 ft is beyond 32800 ft\. /);
});
