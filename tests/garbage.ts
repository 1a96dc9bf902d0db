import { expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import { isQuantity } from 'settline/units';

/** A function, options that it takes, and fields that are tested where they are read. */
export type GarbageCase = readonly [
  run: (options: never) => unknown,
  valid: object,
  elsewhere?: readonly string[],
];

const cyclic: Record<string, unknown> = {};
cyclic['self'] = cyclic;

/** What no field means: every kind of wrong value, and values at the edge of what numbers can hold. */
const GARBAGE: readonly unknown[] = [
  undefined,
  null,
  '',
  ' ',
  'x',
  '1/0 m',
  '1e-999 m',
  '1e400 m',
  '-1 m',
  '0 kg',
  '12',
  '1e-29 m',
  '5 ton',
  'z'.repeat(100_000),
  0,
  -0,
  -1,
  1.5,
  1e308,
  5e-324,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  true,
  12n,
  Symbol('no'),
  () => 1,
  [],
  [undefined],
  new Array(1_000_000),
  [[1, 2]],
  {},
  cyclic,
  Object.create(null),
  new Date(0),
  { value: 5 },
  { value: 1, unit: 'm', more: 1 },
  { value: 1, unit: 'toString' },
  { dimension: 'length', si: 5, to: () => 'x' },
  { state: 'compacted', volume: 5 },
];

/**
 * Tests that a function answers in whole numbers and quantities, or refuses with a
 * `SettlineError`, whatever stands in any one of its fields; and that it changes nothing it was given.
 */
export function testGarbage(cases: Readonly<Record<string, GarbageCase>>): void {
  test.each(Object.entries(cases))('%s', (_, [run, valid, elsewhere = []]) => {
    const untouched = JSON.stringify(valid);
    let refused = 0;
    const attempt = (options: unknown) => {
      try {
        expectSound(run(options as never));
      } catch (error) {
        if (!isSettlineError(error)) throw error;
        refused += 1;
        for (const { message } of error.issues) expect(message.length).toBeLessThan(400);
      }
    };
    GARBAGE.forEach(attempt);
    for (const path of placesIn(valid)) {
      if (elsewhere.includes(String(path[0]))) continue;
      for (const value of GARBAGE) attempt(withValue(valid, path, value));
    }
    expect(refused).toBeGreaterThan(GARBAGE.length);
    expect(JSON.stringify(valid)).toBe(untouched);
  });
}

type Path = readonly (string | number)[];

function placesIn(value: unknown, path: Path = []): Path[] {
  const own = path.length === 0 ? [] : [path];
  if (typeof value !== 'object' || value === null || isQuantity(value)) return own;
  const inner = Object.entries(value).flatMap(([key, one]) =>
    placesIn(one, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [...own, ...inner];
}

function withValue(whole: unknown, [first, ...rest]: Path, value: unknown): unknown {
  if (first === undefined) return value;
  const copy = Array.isArray(whole) ? [...(whole as unknown[])] : { ...(whole as object) };
  const inner = copy as Record<string | number, unknown>;
  inner[first] = withValue(inner[first], rest, value);
  return copy;
}

/** No NaN, no Infinity, no -0 and no undefined field, however deep. */
function expectSound(value: unknown, at = 'result'): void {
  if (typeof value === 'number') {
    expect(Number.isFinite(value) && !Object.is(value, -0), `${at} is ${value}`).toBe(true);
  }
  expect(value, at).not.toBe(undefined);
  if (typeof value !== 'object' || value === null) return;
  if (isQuantity(value)) {
    expect(value.si.isFinite(), at).toBe(true);
    return;
  }
  for (const [key, inner] of Object.entries(value)) expectSound(inner, `${at}.${key}`);
}
