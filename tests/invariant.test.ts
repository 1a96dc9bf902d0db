import { expect, test } from 'vitest';
import { entry, known, lastOf, present } from '../src/invariant.js';

test('a value that is there is given back, null and zero too', () => {
  expect(known(0, 'count')).toBe(0);
  expect(known(null, 'count')).toBeNull();
  expect(entry(['a', 'b'], 1)).toBe('b');
  expect(entry([null], 0)).toBeNull();
  expect(lastOf(['a', 'b'])).toBe('b');
  expect(present(0, 'count')).toBe(0);
});

test('a value that is missing names itself and the library', () => {
  expect(() => known(undefined, 'count')).toThrow('settline is wrong: no count');
  expect(() => entry(['a', 'b'], 2)).toThrow('settline is wrong: no such entry');
  expect(() => entry(['a', 'b'], -1)).toThrow('settline is wrong: no such entry');
  expect(() => present(null, 'count')).toThrow('settline is wrong: no count');
  expect(() => present(undefined, 'count')).toThrow('settline is wrong: no count');
  expect(() => lastOf([])).toThrow('settline is wrong: no last entry');
});
