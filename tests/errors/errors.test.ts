import { describe, expect, test } from 'vitest';
import { attempt, isSettlineError, pathText, SettlineError } from 'settline/errors';
import * as root from 'settline';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';

test('the subpath and the root are one: an error of either is known to both', () => {
  expect(root.SettlineError).toBe(SettlineError);
  const outcome = attempt(() => length('3'));
  expect(outcome).toMatchObject({ ok: false, errors: [{ code: 'UNIT_MISSING' }] });
  expect(() => length('3')).toThrow(SettlineError);
  expect(isSettlineError(new Error('another'))).toBe(false);
});

describe('pathText', () => {
  test('names with dots, indexes and odd names in brackets', () => {
    expect(pathText([])).toBe('');
    expect(pathText(['stakes', 3, 'y'])).toBe('stakes[3].y');
    expect(pathText(['limits', '3/8 in'])).toBe('limits["3/8 in"]');
    expect(pathText([2, 'x'])).toBe('[2].x');
  });

  test.each([undefined, null, 'stakes', 3, {}, [null], [{}], [Symbol('s')]])(
    'refuses %s, which is no path',
    (path) => {
      expectFault(() => pathText(path as never), 'WRONG_TYPE');
    },
  );

  test('refuses a list with a gap', () => {
    const path: string[] = [];
    path[1] = 'x';
    expectFault(() => pathText(path), 'WRONG_TYPE');
  });
});
