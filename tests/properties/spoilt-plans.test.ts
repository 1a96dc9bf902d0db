// Saved plans spoilt at random places: refused by path, or read and printed; never a raw error.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isSettlineError } from 'settline/errors';
import { planFromJSON, readPlan, renderJobSheet, type JobPlan } from 'settline/job';
import { builtInPlans, savedPlan } from '../built-in-plans.js';
import { runs } from '../runs.js';

const SAVED = builtInPlans().map(([, plan]) => savedPlan(plan));

type Node = Record<string, unknown>;
const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** Walks down by shares of the fields of each level. */
function slotAt(plan: Node, shares: readonly number[]): readonly [holder: Node, key: string] {
  let slot: readonly [Node, string] = [plan, 'name'];
  let at: unknown = plan;
  for (const share of shares) {
    if (!isNode(at)) break;
    const keys = Object.keys(at);
    const key = keys[Math.floor(share * keys.length)];
    if (key === undefined) break;
    slot = [at, key];
    at = at[key];
  }
  return slot;
}

/** Ways to spoil the value of a field; some keep its form and change its figure. */
const SPOILS: readonly ((old: unknown, plan: Node) => unknown)[] = [
  () => undefined,
  () => null,
  () => -1,
  () => 0,
  () => 1e308,
  () => Number.NaN,
  () => 2.5,
  () => 12n,
  () => Symbol('s'),
  () => () => 0,
  () => '',
  () => 'a\nb',
  () => '7',
  () => 'x'.repeat(100_000),
  () => [],
  () => ({}),
  () => new Map([['a', 1]]),
  () => new Date(0),
  () =>
    new Proxy(
      {},
      {
        get: () => {
          throw new TypeError('a trap');
        },
        ownKeys: () => [],
      },
    ),
  () => ({ value: '-3', unit: 'm' }),
  () => ({ value: '0', unit: 'm' }),
  () => ({ value: '1e20000', unit: 'm' }),
  () => ({ value: '1/0', unit: 'm3' }),
  () => ({ value: '9'.repeat(30_000), unit: 'kg' }),
  () => ({ value: 1, unit: '__proto__' }),
  () => JSON.parse('{ "__proto__": { "polluted": true } }') as unknown,
  (_old, plan) => plan,
  (old) => [old, old],
  (old) => (Array.isArray(old) ? old.slice(1) : old),
  (old) => (Array.isArray(old) ? [...(old as unknown[])].reverse() : old),
  (old) => (typeof old === 'number' ? old * 1000 + 7 : old),
  (old) => (typeof old === 'string' ? `${old} ` : old),
  (old) => (isNode(old) && 'value' in old ? { ...old, value: '0' } : old),
  (old) => (isNode(old) && 'value' in old ? { ...old, value: '0.123' } : old),
];

const spoiltPlan = fc.record({
  of: fc.nat(SAVED.length - 1),
  spoils: fc.array(
    fc.record({
      shares: fc.array(fc.double({ min: 0, max: 0.999999, noNaN: true }), {
        minLength: 1,
        maxLength: 9,
      }),
      by: fc.nat(SPOILS.length - 1),
    }),
    { minLength: 1, maxLength: 3 },
  ),
});

function spoil({ of, spoils }: typeof spoiltPlan extends fc.Arbitrary<infer T> ? T : never): Node {
  const plan = structuredClone(SAVED[of]) as Node;
  for (const { shares, by } of spoils) {
    const [holder, key] = slotAt(plan, shares);
    holder[key] = SPOILS[by]?.(holder[key], plan);
  }
  return plan;
}

/** What comes out; undefined if it was refused in the words of the library. */
function tried<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    expect(error.message).not.toContain('[object');
    return undefined;
  }
}

const count = { read: 0, refused: 0, printed: 0 };

function judge(read: JobPlan | undefined): void {
  count[read === undefined ? 'refused' : 'read'] += 1;
  if (read === undefined) return;
  for (const system of ['us', 'metric'] as const) {
    const sheet = tried(() => renderJobSheet(read, { system }));
    if (sheet === undefined) continue;
    count.printed += 1;
    expect(sheet).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
    if (read.figures !== 'planned') expect(sheet).toMatch(/FIGURES NOT CHECKED|ALTERED PLAN/);
  }
}

test('a spoilt plan is refused in words, or read, marked and printed', () => {
  fc.assert(
    fc.property(spoiltPlan, (of) => {
      const start = process.cpuUsage();
      judge(tried(() => readPlan(spoil(of))));
      judge(tried(() => planFromJSON(spoil(of), { accept: 'altered' })));
      const { user, system } = process.cpuUsage(start);
      // seconds, where one plan takes a few hundredths
      expect((user + system) / 1e6).toBeLessThan(20);
    }),
    runs(120),
  );
  // the property tells something only if all three happen
  expect(Math.min(count.read, count.refused, count.printed)).toBeGreaterThan(20);
});

test('what is nothing like a plan is refused', () => {
  fc.assert(
    fc.property(fc.anything({ withBigInt: true, withDate: true, withMap: true }), (value) => {
      expect(tried(() => readPlan(value))).toBeUndefined();
      const dressed = isNode(value) ? { ...value, kind: 'settline-plan', version: 1 } : value;
      expect(tried(() => planFromJSON(dressed))).toBeUndefined();
    }),
    runs(300),
  );
});
