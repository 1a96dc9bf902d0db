import { expect, test } from 'vitest';
import { once, onceForEach } from '../src/once.js';

test('what is asked for twice is made once, nothing too', () => {
  let made = 0;
  const nothing = once((): number | undefined => {
    made += 1;
    return undefined;
  });
  expect(made).toBe(0);
  expect([nothing(), nothing()]).toEqual([undefined, undefined]);
  expect(made).toBe(1);
});

test('each key has its own', () => {
  const made: string[] = [];
  const length = onceForEach((text: string) => {
    made.push(text);
    return text.length;
  });
  expect([length('a'), length('four'), length('a')]).toEqual([1, 4, 1]);
  expect(made).toEqual(['a', 'four']);
});

test('what has the same key is the same', () => {
  const first = onceForEach(
    (pair: readonly [string, number]) => pair[1],
    ([name]) => name,
  );
  expect([first(['a', 1]), first(['a', 2]), first(['b', 3])]).toEqual([1, 1, 3]);
});
