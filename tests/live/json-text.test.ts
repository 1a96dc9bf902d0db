import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  lineOf,
  readJson,
  valueAt,
  withValueAt,
  type Json,
  type Path,
} from '../../docs/.vitepress/live/page/json-text.js';
import { runs } from '../runs.js';

/** Every path of a value. */
const pathsOf = (value: unknown, path: Path = []): Path[] => {
  if (typeof value !== 'object' || value === null) return [path];
  const steps = Array.isArray(value) ? value.map((_, index) => index) : Object.keys(value);
  const inner = steps.flatMap((step) =>
    pathsOf((value as Record<string, unknown>)[step], [...path, step]),
  );
  return [path, ...inner];
};

test('it reads what JSON.parse reads, and each part stands where its span says', () => {
  fc.assert(
    fc.property(fc.json(), fc.constantFrom(0, 2), (json, indent) => {
      const value = JSON.parse(json) as Json;
      const text = JSON.stringify(value, null, indent);
      const reading = readJson(text);
      expect(reading.ok).toBe(true);
      if (!reading.ok) return;
      expect(reading.value).toEqual(value);
      for (const path of pathsOf(value)) {
        const { from, to } = reading.spanOf(path);
        expect(JSON.parse(text.slice(from, to))).toEqual(valueAt(value, path));
      }
    }),
    runs(300),
  );
});

test('what it refuses, JSON.parse refuses too; it refuses names that are written twice besides', () => {
  const broken = [
    '',
    '{',
    '[1,]',
    '{"a" 1}',
    '{"a":1,}',
    "{'a': 1}",
    '01',
    '1 2',
    '"a',
    '"\u0001"',
    'nul',
    '[1 2]',
  ];
  for (const text of broken) {
    expect(() => JSON.parse(text) as unknown).toThrow();
    expect(readJson(text).ok, text).toBe(false);
  }
  expect(readJson('{"a": 1, "a": 2}')).toMatchObject({ ok: false, at: { from: 9, to: 12 } });
});

test('a fault is told where it is, with what to write', () => {
  const reading = readJson('{\n  "a": 1\n  "b": 2\n}');
  expect(reading).toMatchObject({
    ok: false,
    message: 'found "\\"". Write a comma between fields, or } at the end.',
  });
  if (!reading.ok)
    expect(lineOf('{\n  "a": 1\n  "b": 2\n}', reading.at.from)).toEqual({ line: 3, column: 3 });
});

test('a path into what is missing gives the span of what it would stand in', () => {
  const text = '{ "stakes": [{ "id": "A" }] }';
  const reading = readJson(text);
  expect(reading.ok).toBe(true);
  if (!reading.ok) return;
  const { from, to } = reading.spanOf(['stakes', 0, 'x']);
  expect(text.slice(from, to)).toBe('{ "id": "A" }');
});

test('an edit changes a copy at its path and nothing else', () => {
  const value = { layers: [{ name: 'a' }, { name: 'b' }], x: 1 };
  expect(withValueAt(value, ['layers', 1, 'name'], 'c')).toEqual({
    layers: [{ name: 'a' }, { name: 'c' }],
    x: 1,
  });
  expect(withValueAt(value, ['layers', 0], undefined)).toEqual({ layers: [{ name: 'b' }], x: 1 });
  expect(withValueAt(value, ['x'], undefined)).toEqual({ layers: value.layers });
  expect(withValueAt({}, ['rule', 'k'], 12)).toEqual({ rule: { k: 12 } });
  expect(value).toEqual({ layers: [{ name: 'a' }, { name: 'b' }], x: 1 });
});
