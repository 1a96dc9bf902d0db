// Whatever a public function gets, it answers or refuses with a SettlineError: the call of its own
// example, spoilt in one to three places.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import { isQuantity, length } from 'settline/units';
import { DEPTH, runs } from '../runs.js';
import { recordedCalls, type RecordedCall } from './recorded-calls.js';
import { copied, isBranch, slotsOf } from './slots.js';

const { calls, silent } = await recordedCalls();
const names = [...new Set(calls.map(({ name }) => name))];

/** What only listens. */
const ANSWERS_NOTHING = ['servePlans'];

/** What starts workers: tests/many-jobs call these. */
const STARTS_WORKERS = ['webWorkers', 'nodeThreads'];

const hollow = (): unknown[] => {
  const list: unknown[] = [];
  list.length = 1000;
  return list;
};
const deep = (): unknown => {
  let value: unknown = 1;
  for (let k = 0; k < 9000; k += 1) value = { value };
  return value;
};
const cyclic = (): unknown => {
  const value: Record<string, unknown> = {};
  value['self'] = value;
  return value;
};

/** Values that belong nowhere, or only almost. */
const SPOILT: readonly (() => unknown)[] = [
  () => undefined,
  () => null,
  () => Number.NaN,
  () => Number.POSITIVE_INFINITY,
  () => -0,
  () => -1,
  () => 0.5,
  () => 1e308,
  () => '',
  () => 'x'.repeat(5000),
  () => '1e-999 m',
  () => '5 ft',
  () => '5',
  () => '3 t',
  () => true,
  () => [],
  () => [[]],
  hollow,
  deep,
  cyclic,
  () => ({}),
  () => ({ value: 5, unit: 'ft' }),
  () => ({ value: '1e-999', unit: 'm' }),
  () => ({ value: {}, unit: [] }),
  () => ({ dimension: 'length', si: 3 }),
  () => ({ [Symbol.for('settline.quantity')]: true, dimension: 'length' }),
  () => Object.create(null) as unknown,
  () => new Map(),
  () => Symbol('s'),
  () => 10n,
  () => () => 1,
  () => length('3 ft'),
  () => new Float64Array([1, 2, Number.NaN]),
];

interface Spoiling {
  readonly place: number;
  readonly how: 'replace' | 'remove' | 'add' | 'repeat';
  readonly value: number;
}

const spoiling: fc.Arbitrary<Spoiling> = fc.record({
  place: fc.nat(10_000),
  how: fc.constantFrom('replace', 'replace', 'replace', 'remove', 'add', 'repeat'),
  value: fc.nat(SPOILT.length - 1),
});

function spoil(given: readonly unknown[], spoilings: readonly Spoiling[]): unknown[] {
  const changed = given.map(copied);
  const root = { given: changed } as Record<string, unknown>;
  for (const { place, how, value } of spoilings) {
    const slots = slotsOf(root).slice(1);
    const slot = slots[place % Math.max(1, slots.length)];
    if (slot === undefined) continue;
    const [holder, key] = slot;
    if (how === 'replace') holder[key] = SPOILT[value]?.();
    else if (how === 'add') holder[`${key}x`] = 1;
    else if (Array.isArray(holder)) {
      if (how === 'remove') holder.splice(Number(key), 1);
      else holder.splice(Number(key), 0, holder[Number(key)]);
    } else if (how === 'remove') Reflect.deleteProperty(holder, key);
  }
  return (root['given'] as unknown[]).slice(0, given.length);
}

/** What no answer may hold: numbers that are none, and undefined where null says that there is none. */
function badPart(value: unknown, depth = 0): string | undefined {
  if (value === undefined) return 'undefined';
  if (typeof value === 'number') {
    return Number.isFinite(value) && !Object.is(value, -0) ? undefined : `${1 / value} or ${value}`;
  }
  if (typeof value !== 'object' || value === null || depth > 8) return undefined;
  if (isQuantity(value)) return badPart(value.si.toNumber(), depth);
  if (ArrayBuffer.isView(value)) {
    return [...(value as Float64Array)].map((one) => badPart(one, depth)).find(Boolean);
  }
  return Object.values(value)
    .slice(0, 500)
    .map((part) => badPart(part, depth + 1))
    .find(Boolean);
}

function deepFreeze(value: unknown): void {
  if (!isBranch(value) || Object.isFrozen(value)) return;
  Object.freeze(value);
  for (const part of Object.values(value)) deepFreeze(part);
}

/** What is wrong with the outcome of a call; undefined for an answer or a refusal. */
function wrongWith({ call, name }: RecordedCall, given: readonly unknown[]): string | undefined {
  given.forEach(deepFreeze);
  try {
    const answer = call(...given);
    if (answer === undefined && ANSWERS_NOTHING.includes(name)) return undefined;
    const bad = badPart(answer);
    return bad === undefined ? undefined : `answers ${bad}`;
  } catch (error) {
    if (isSettlineError(error)) {
      const long = error.issues.find(({ message }) => message.length > 600);
      return long === undefined ? undefined : `a message of ${long.message.length} characters`;
    }
    return `throws ${String(error).slice(0, 200)}`;
  }
}

test('the example of every public function calls it', () => {
  expect(names.length).toBeGreaterThan(150);
  expect(silent).toEqual(STARTS_WORKERS);
});

describe('answers or refuses, whatever it gets', () => {
  // 5000 calls, and 100 000 in a deep run
  const each = Math.ceil((DEPTH > 1 ? 10_000 : 5000) / names.length);

  test.each(names)('%s', (name) => {
    const own = calls.filter((call) => call.name === name);
    fc.assert(
      fc.property(
        fc.nat(own.length - 1),
        fc.array(spoiling, { minLength: 1, maxLength: 3 }),
        (index, spoilings) => {
          const recorded = own[index];
          if (recorded === undefined) expect.unreachable();
          expect(wrongWith(recorded, spoil(recorded.given, spoilings))).toBeUndefined();
        },
      ),
      runs(each),
    );
  });
});
