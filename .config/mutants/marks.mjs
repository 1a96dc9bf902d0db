// Set-up of a test file in the run that finds out which tests pass which mutants.
import { writeFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject } from 'vitest';

const marks = (globalThis.settlineMarks ??= new Map());
for (const passed of marks.values()) passed.fill(0);

const passedNow = () => {
  const found = {};
  for (const [name, passed] of marks) {
    const numbers = [...passed.keys()].filter((number) => passed[number] === 1);
    if (numbers.length > 0) found[name] = numbers;
  }
  return found;
};

let atLoad = {};
beforeAll(() => {
  atLoad = passedNow();
});
afterAll(() => {
  const { testPath } = expect.getState();
  const file = `${inject('marksFolder')}/${encodeURIComponent(testPath)}`;
  writeFileSync(file, JSON.stringify({ atLoad, passed: passedNow() }));
});
