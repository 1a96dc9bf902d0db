import { expect, test } from 'vitest';
import { withPureConstants } from '../../.config/pure-modules.mjs';

const wrapped = (text: string): string => String(withPureConstants('one.ts', text));

test.each([
  ['a call', 'make({ a: 1 })'],
  ['a call within a list', '[1, make()]'],
  ['a new object', 'new Map()'],
  ['a read of a property', 'TABLE.first'],
  ['a read by name', "TABLE['first']"],
  ['a spread', '{ ...TABLE }'],
  ['a spread of a list', '[...TABLE]'],
])('%s may be dropped by a bundler', (_name, value) => {
  expect(wrapped(`export const A: Of<B> = ${value};`)).toBe(
    `export const A: Of<B> = /* @__PURE__ */ (() => (${value}))();`,
  );
});

test.each([
  ['a literal', '{ a: 1, b: [2, "c"] }'],
  ['a name', 'OTHER'],
  ['a function that calls', '() => make(TABLE.first)'],
  ['a list of functions', '[() => make(), function two() { return make(); }]'],
  ['a type', '5 as Kinds["first"]'],
])('%s stays as it is', (_name, value) => {
  const text = `const A = ${value};`;
  expect(wrapped(text)).toBe(text);
});

test('several constants keep their places', () => {
  expect(wrapped('const a = f(), b = 2;\nlet c;\nconst d = g();')).toBe(
    'const a = /* @__PURE__ */ (() => (f()))(), b = 2;\nlet c;\nconst d = /* @__PURE__ */ (() => (g()))();',
  );
});

test.each(['make();', 'Object.freeze(A.prototype);', 'for (const a of B) a();', 'A.b = 1;'])(
  'a module that acts when it loads is refused: %s',
  (text) => {
    expect(() => wrapped(`const A = 1;\n${text}`)).toThrow('one.ts does something when it loads');
  },
);
