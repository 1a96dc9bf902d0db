import { expect } from 'vitest';

/** How a figure of a check came about. */
export type CheckKind = 'printed' | 'misprint' | 'derived' | 'reading of a chart';

/** One comparison of a value with a figure, as it is recorded. */
export interface CheckedFigure {
  readonly kind: CheckKind;
  /** The figure as it was printed, or as it was worked out from what was printed. */
  readonly printed: string;
  /** What should have been printed; only for a misprint. */
  readonly right?: string;
  readonly computed: string;
  /** How far the value may be off: half of the last place; 0 where it must be the same. */
  readonly half: string;
  /** Why more than half of the last place is allowed, where it is. */
  readonly because?: string;
  readonly ok: boolean;
}

/** Takes the comparisons of the running check; absent in a test that is no published check. */
interface Recorder {
  readonly kind: CheckKind;
  readonly figures: CheckedFigure[];
}

let recorder: Recorder | undefined;

/** Collects the comparisons that a check makes, whether they hold or not. */
export async function recordFigures(
  kind: CheckKind,
  figures: CheckedFigure[],
  check: () => unknown,
): Promise<void> {
  recorder = { kind, figures };
  try {
    await check();
  } finally {
    recorder = undefined;
  }
}

/**
 * Asserts that a value agrees with a figure as it was printed, as text: within half of its last
 * printed place, and no more.
 */
export function expectPrinted(value: number, printed: string): void {
  compare({ value, printed, half: halfOf(printed) });
}

/** The same for a figure that was worked out from what is printed, in a check of printed ones. */
export function expectDerived(value: number, derived: string): void {
  compare({ value, printed: derived, half: halfOf(derived), kind: 'derived' });
}

/** Asserts that a printed figure is not what the library gives: a misprint, kept beside the right one. */
export function expectMisprint(value: number, printed: string, right: string): void {
  const half = halfOf(right);
  const off = Math.abs(value - Number(right));
  const isOff = Math.abs(value - Number(printed)) > off;
  const ok = off <= half * HAIR && isOff;
  record({ kind: 'misprint', printed, right, computed: textOf(value), half: String(half), ok });
  expect(off, `${value} against ${right}`).toBeLessThanOrEqual(half * HAIR);
  expect(isOff, `${printed} is a misprint`).toBe(true);
}

/**
 * Asserts that a value agrees with a printed figure that is itself good to less than its last place,
 * for the reason given: it was read off a chart, or worked out from figures rounded on the way.
 */
export function expectWithin(
  value: number,
  printed: string,
  { within, because }: { readonly within: number; readonly because: string },
): void {
  compare({ value, printed, half: within, because });
}

/** Asserts that values are exactly the printed ones; lists are compared item by item. */
export function expectExact(computed: unknown, printed: unknown): void {
  const items = flat(printed);
  flat(computed).forEach((item, k) => {
    // what is absent on both sides is no figure
    if (item === undefined && items[k] === undefined) return;
    const ok = item === items[k];
    record({ printed: String(items[k]), computed: textOf(item), half: '0', ok });
  });
  expect(computed).toEqual(printed);
}

// the printed figure and half of its last place are rounded to floats themselves
const HAIR = 1 + 1e-9;

function compare(given: {
  readonly value: number;
  readonly printed: string;
  readonly half: number;
  readonly kind?: CheckKind;
  readonly because?: string;
}): void {
  const { value, printed, half, because } = given;
  const off = Math.abs(value - Number(printed));
  const ok = off <= half * HAIR;
  const kind = given.kind === undefined ? {} : { kind: given.kind };
  const reason = because === undefined ? {} : { because };
  record({ ...kind, printed, computed: textOf(value), half: String(half), ...reason, ok });
  expect(off, `${value} against the printed ${printed}`).toBeLessThanOrEqual(half * HAIR);
}

function record(figure: Omit<CheckedFigure, 'kind'> & { readonly kind?: CheckKind }): void {
  if (recorder !== undefined) recorder.figures.push({ kind: recorder.kind, ...figure });
}

function halfOf(printed: string): number {
  const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  return Number(`5e-${decimals + 1}`);
}

/** A number to 15 digits, so that the record does not depend on the last bit. */
const textOf = (value: unknown): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(15))) : String(value);

const flat = (value: unknown): unknown[] =>
  Array.isArray(value) ? value.flatMap((item) => flat(item)) : [value];
