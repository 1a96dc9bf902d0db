import { expect, test } from 'vitest';
import { pathText } from 'settline';
import { faultsOf } from './faults.js';

/** A function with valid options, and the misspelt fields it must refuse: path and what was meant. */
export type MisspeltCase = readonly [
  run: (options: never) => unknown,
  valid: object,
  misspelt: readonly (readonly [path: string, meant: string])[],
];

/**
 * Tests that a misspelt field is refused at its path, with the name that was meant and no second
 * fault. The misspelt field takes the value, and the place, of the one that was meant.
 */
export function testMisspelt(cases: Readonly<Record<string, MisspeltCase>>): void {
  const rows = Object.entries(cases).flatMap(([name, [run, valid, misspelt]]) =>
    misspelt.map(([path, meant]) => ({ name, run, valid, path, meant })),
  );
  test.each(rows)('$name: $path is not $meant', ({ run, valid, path, meant }) => {
    expect(() => run(valid as never)).not.toThrow();
    const wrong = JSON.parse(JSON.stringify(valid)) as object;
    const { parent, key } = placeOf(wrong, path);
    parent[key] = meant in parent ? parent[meant] : 1;
    Reflect.deleteProperty(parent, meant);
    const faults = faultsOf(() => run(wrong as never));
    expect(faults.map((fault) => [fault.code, pathText(fault.path)])).toEqual([
      ['UNKNOWN_FIELD', path],
    ]);
    expect(faults[0]?.params['meant']).toBe(meant);
    expect(faults[0]?.message).toContain(`Did you mean ${meant}?`);
  });
}

function placeOf(whole: object, path: string) {
  const steps = path.replaceAll('[', '.').replaceAll(']', '').split('.');
  const key = steps.pop() ?? '';
  const parent = steps.reduce<Record<string, unknown>>(
    (inner, step) => inner[step] as Record<string, unknown>,
    whole as Record<string, unknown>,
  );
  return { parent, key };
}
