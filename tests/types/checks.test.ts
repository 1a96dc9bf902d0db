import { expect, test } from 'vitest';
import { checkLevels, checkThickness, type SetWith } from 'settline/checks';
import { expectFault } from '../faults.js';

const readings = [{ id: 'a', plan: '1 m', measured: '1 m' }];

test('a set that prints no such limit does not compile, and is refused', () => {
  // @ts-expect-error the guide prints no tolerance of level
  const check = () => checkLevels({ layer: 'base', readings, tolerance: 'paver-guide-in' });
  expectFault(check, 'LIMIT_NOT_SET');
  const set: SetWith<'level'> = 'irc-sp-63-2004';
  expect(checkLevels({ layer: 'base', readings, tolerance: set }).verdict).toBe('pass');
});

test('a reading of thickness needs one of its forms', () => {
  expectFault(
    () =>
      checkThickness({
        layer: 'base',
        design: '8 in',
        // @ts-expect-error neither a thickness nor levels
        readings: [{ id: 'a' }],
        tolerance: 'paver-guide-in',
      }),
    'REQUIRED',
  );
});
