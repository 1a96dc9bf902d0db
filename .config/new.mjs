// Writes the files of a new calculation, to be filled in.
//   npm run new -- build-up/edge-bench
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const [where = ''] = process.argv.slice(2);
const [, folder, file] = /^([a-z]+(?:-[a-z]+)*)\/([a-z]+(?:-[a-z]+)*)$/.exec(where) ?? [];

function end(message) {
  console.error(message);
  process.exit(1);
}

if (folder === undefined) end('Name a folder and a file: npm run new -- build-up/edge-bench');
const index = join('src', folder, 'index.ts');
if (!existsSync(index)) end(`${index} does not exist: name a folder of src that is a subpath`);

const Name = file.replace(/(?:^|-)([a-z])/g, (_, letter) => letter.toUpperCase());
const name = Name[0].toLowerCase() + Name.slice(1);
const words = file.replaceAll('-', ' ');
const source = join('src', folder, `${file}.ts`);
const test = join('tests', folder, `${file}.test.ts`);
for (const path of [source, test]) if (existsSync(path)) end(`${path} is there already`);

const SOURCE = `import { quantity } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** TODO: what the ${words} is worked out from. */
export interface ${Name}Options {
  /** TODO: the first length [length], more than 0 and at most 5 m. */
  readonly first: LengthInput;
  /** TODO: the second length [length], more than 0 and at most 5 m. */
  readonly second: LengthInput;
}

const OPTIONS = shapeOf<${Name}Options>()({
  first: quantity(THICKNESS),
  second: quantity(THICKNESS),
});

/** TODO: the ${words}. */
export interface ${Name} extends Worked {
  /** TODO: the result [length]. */
  readonly total: Length;
}

/**
 * TODO: what it computes, and the formula: \`t = a + b\`.
 *
 * @param options - see {@link ${Name}Options}
 * @returns TODO: the fields of the result [length]
 * @throws \`NOT_POSITIVE\`, \`OUT_OF_RANGE\` and the reading codes
 * @source derived
 * @example
 * const { total } = ${name}({ first: '3 1/4 in', second: '1 in' });
 * total.to('in').toString() //=> '4.25'
 */
export function ${name}(options: ${Name}Options): ${Name} {
  const { first, second } = readOptions(options, OPTIONS);
  const total = first.plus(second);
  return withWorking({ total }, () => [
    derivedStep({
      title: 'TODO: what is worked out',
      formula: 't = a + b',
      given: [given('a', 'first', first), given('b', 'second', second)],
      result: given('t', 'total', total),
    }),
  ]);
}
`;

const TEST = `import { describe, expect, test } from 'vitest';
import { ${name} } from 'settline/${folder}';

describe('${name}', () => {
  test('by pencil', () => {
    const { total, working } = ${name}({ first: '3 1/4 in', second: '1 in' });
    expect(total.to('in').toString()).toBe('4.25');
    expect(working.map(({ result }) => result.text)).toEqual(['4.25 in']);
  });

  test.each([
    [{ first: '0 in', second: '1 in' }, 'NOT_POSITIVE', ['first']],
    [{ first: '1 in', second: '6 m' }, 'OUT_OF_RANGE', ['second']],
    [{ first: '1 in' }, 'REQUIRED', ['second']],
    [{ first: '1 in', second: '1 in', third: '1 in' }, 'UNKNOWN_FIELD', ['third']],
  ])('%j is refused', (options, code, path) => {
    expect(() => ${name}(options as never)).toThrow(expect.objectContaining({ code, path }));
  });
});
`;

mkdirSync(dirname(test), { recursive: true });
writeFileSync(source, SOURCE);
writeFileSync(test, TEST);
const line = `export { ${name}, type ${Name}, type ${Name}Options } from './${file}.js';\n`;
const listed = readFileSync(index, 'utf8');
writeFileSync(index, `${listed}${line}`);
console.log(`Written: ${source}, ${test}, and the names in ${index}.

Next:
  1. replace every TODO, the formula and the figures (DEVELOPERS.md, "How to add a calculation")
  2. npm run format, npm run exports, npm run test:run -- ${test}
  3. npm run api, and a line in CHANGELOG.md`);
