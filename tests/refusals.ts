import { expect, test } from 'vitest';
import { pathText, type ErrorCode } from 'settline';
import { faultsOf } from './faults.js';

/** A field set to a wrong value (`undefined` takes it away), and the fault that must come of it. */
export type Refusal = readonly [field: string, value: unknown, code: ErrorCode, path?: string];

/** Tests that each wrong field alone is refused, with its code at its path. */
export function testRefusals(
  run: (options: never) => unknown,
  valid: Readonly<Record<string, unknown>>,
  refusals: readonly Refusal[],
): void {
  test('takes the valid options that the refusals start from', () => {
    expect(() => run(valid as never)).not.toThrow();
  });
  const cases = refusals.map(
    ([field, value, code, path]) => [field, value, code, path ?? pathOf(field)] as const,
  );
  test.each(cases)('refuses %s = %j: %s', (field, value, code, path) => {
    const faults = faultsOf(() => run(withField(valid, field, value) as never));
    expect(faults.map((fault) => `${fault.code} ${pathText(fault.path)}`)).toContain(
      `${code} ${path}`,
    );
  });
}

/** A dotted name as a path is written: `stakes[3].y`. */
const pathOf = (field: string): string => field.replace(/\.(\d+)/g, '[$1]');

/** A copy with one field changed; a dotted name goes down into objects and lists. */
function withField(
  options: Readonly<Record<string, unknown>>,
  field: string,
  value: unknown,
): unknown {
  const [name = '', ...rest] = field.split('.');
  const copy: Record<string, unknown> | unknown[] = Array.isArray(options)
    ? [...(options as unknown[])]
    : { ...options };
  const inner = (copy as Record<string, unknown>)[name];
  (copy as Record<string, unknown>)[name] =
    rest.length === 0
      ? value
      : withField((inner ?? {}) as Record<string, unknown>, rest.join('.'), value);
  return copy;
}
