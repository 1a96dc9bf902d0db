import { expect } from 'vitest';

/**
 * Asserts that a value agrees with a figure as it was printed, as text: within half of its last
 * printed place, and no more.
 */
export function expectPrinted(value: number, printed: string): void {
  const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  const half = 0.5 * 10 ** -decimals;
  const error = Math.abs(value - Number(printed));
  expect(error, `${value} against the printed ${printed}`).toBeLessThanOrEqual(half * (1 + 1e-9));
}

/** Asserts that a printed figure is not what the library gives: a misprint, kept beside the right one. */
export function expectMisprint(value: number, printed: string, corrected: string): void {
  expectPrinted(value, corrected);
  expect(Math.abs(value - Number(printed)), `${printed} is a misprint`).toBeGreaterThan(
    Math.abs(value - Number(corrected)),
  );
}
