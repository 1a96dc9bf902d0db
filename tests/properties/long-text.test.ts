// However long the text that a caller hands in, a message shows 40 characters of it and no more: as a
// name, a unit, a choice, a number, a key, in whatever depth. The `path` of a fault is its own.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import { isQuantity } from 'settline/units';
import { runs } from '../runs.js';
import { recordedCalls, type RecordedCall } from './recorded-calls.js';
import { copied, isBranch, slotsOf } from './slots.js';

const { calls } = await recordedCalls();
const names = [...new Set(calls.map(({ name }) => name))];

const LONG = 'q'.repeat(200);
const DIGITS = '7'.repeat(200);
const SHOWN = 40;

/** What stands in the place of a value. */
const REPLACED: readonly ((value: unknown) => unknown)[] = [
  () => LONG,
  (value) => `${String(typeof value === 'string' ? value : 5)}${LONG}`,
  (value) => `${String(typeof value === 'string' ? value : 5)} ${LONG}`,
  () => `5 ${LONG}`,
  () => `${LONG} 5 ft`,
  () => `5 ft ${LONG} in`,
  () => DIGITS,
  () => `${DIGITS} ft`,
  () => `-${DIGITS} mm`,
  () => `0.${DIGITS}1/0 in`,
  () => `${DIGITS}q`,
  () => [LONG],
  () => ({ value: LONG, unit: 'ft' }),
  () => ({ value: 5, unit: LONG }),
  () => ({ value: `-${DIGITS}`, unit: 'm' }),
  () => ({ value: 5, unit: 'ft', [LONG]: 1 }),
];

interface Change {
  readonly place: number;
  readonly how: 'replace' | 'key' | 'rename' | 'everywhere';
  readonly with: number;
}

const change: fc.Arbitrary<Change> = fc.record({
  place: fc.nat(10_000),
  how: fc.constantFrom('replace', 'replace', 'replace', 'key', 'rename', 'everywhere'),
  with: fc.nat(REPLACED.length - 1),
});

function changed(given: readonly unknown[], { place, how, with: index }: Change): unknown[] {
  const root = { given: given.map(copied) } as Record<string, unknown>;
  const slots = slotsOf(root).slice(1);
  const [holder, key] = slots[place % Math.max(1, slots.length)] ?? [root, 'given'];
  if (how === 'replace' && holder !== root) holder[key] = REPLACED[index]?.(holder[key]);
  // an unknown key beside the others, or in the place of one
  if ((how === 'key' || how === 'rename') && !Array.isArray(holder) && holder !== root) {
    holder[how === 'key' ? LONG : `${key}${LONG}`] = holder[key];
    if (how === 'rename') Reflect.deleteProperty(holder, key);
  }
  // one name for all that have one: the same twice, or none that is known
  if (how === 'everywhere') {
    for (const [owner, name] of slots) if (name === key) owner[name] = LONG;
  }
  return root['given'] as unknown[];
}

/** Runs of the long text, longer than may be shown. */
const TOO_LONG = new RegExp(`[q7]{${SHOWN + 1}}`);

const textsOf = (value: unknown, depth = 0): string[] => {
  if (typeof value === 'string') return [value];
  if (!isBranch(value) || isQuantity(value) || depth > 6) return [];
  return Object.values(value).flatMap((part) => textsOf(part, depth + 1));
};

function tooLong({ call }: RecordedCall, given: readonly unknown[]): string | undefined {
  try {
    call(...given);
    return undefined;
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const texts = [
      error.message,
      ...error.issues.flatMap(({ message, params }) => [message, ...textsOf(params)]),
    ];
    return texts.find((text) => TOO_LONG.test(text));
  }
}

test.each(names)('%s', (name) => {
  const own = calls.filter((call) => call.name === name);
  fc.assert(
    fc.property(fc.nat(own.length - 1), change, (index, one) => {
      const recorded = own[index];
      if (recorded === undefined) expect.unreachable();
      expect(tooLong(recorded, changed(recorded.given, one))).toBeUndefined();
    }),
    runs(100),
  );
});
