// What the generator of the documentation site makes of comments, sources, schema and checks.
import { describe, expect, test } from 'vitest';
import { SOURCES } from 'settline/sources';
import { calledParts } from '../../.config/site/called-parts.mjs';
import { checkedPage, foldersOf } from '../../.config/site/checked-page.mjs';
import { withImports } from '../../.config/site/example-text.mjs';
import { unitAndText } from '../../.config/site/field-table.mjs';
import { errorsText } from '../../.config/site/function-page.mjs';
import { inScript } from '../../.config/site/relative-base.mjs';
import { schemaPage } from '../../.config/site/schema-page.mjs';
import { sourceText } from '../../.config/site/sources.mjs';
import { stepFormulas } from '../../.config/site/step-formulas.mjs';
import { signatureText, typeText } from '../../.config/site/type-text.mjs';

describe('the text of a field', () => {
  test.for([
    [
      'Thickness [length], more than 0 and at most 5 m. Compacted.',
      'length, more than 0 and at most 5 m',
      'Thickness. Compacted.',
    ],
    ['Area [area]. Of the base.', 'area', 'Area. Of the base.'],
    ['Share, 0.5 to 1.', '', 'Share, 0.5 to 1.'],
    ['Ratio [slope], 0 to 0.5. Default: 0.', 'slope, 0 to 0.5', 'Ratio. Default: 0.'],
  ] as const)('%s', ([text, unit, rest]) => {
    expect(unitAndText(text)).toEqual({ unit, text: rest });
  });
});

describe('an example', () => {
  const names = new Map([['lifts', { subpath: 'settline/build-up', isType: false }]]);

  test('gets the imports that it leaves out', () => {
    expect(withImports('lifts({}).count //=> 3', names)).toBe(
      "import { lifts } from 'settline/build-up';\nlifts({}).count //=> 3",
    );
  });

  test('keeps its own imports, and says which site `job` is', () => {
    const code = "import { lifts } from 'settline/build-up';\nlifts(job).count //=> 3";
    expect(withImports(code, names)).toBe(
      `// job: the built-in site examples/cedar-court.json, parsed\n${code}`,
    );
  });
});

describe('a source', () => {
  test('is told by title and section, with a link to its row', () => {
    const { title, section } = SOURCES['nist-hb44'];
    expect(sourceText('nist-hb44', SOURCES, 1)).toEqual([
      `[${title}](../sources.md#nist-hb44), ${section}`,
    ]);
  });

  test('that is from memory says so', () => {
    expect(JSON.stringify(sourceText('fm-5-434', SOURCES, 1))).toContain(
      '(from memory: confirm it before use)',
    );
  });
});

test('error codes and the reading codes are links', () => {
  const page = '../../reference/error-codes.md';
  expect(errorsText(['`EMPTY_LIST` and the reading\ncodes'])).toBe(
    `[\`EMPTY_LIST\`](${page}#empty_list) and [the reading codes](${page}#reading-codes)`,
  );
});

test('formulas of the steps come with the names of their symbols', () => {
  const files = new Map([
    [
      'src/x/a.ts',
      `import { steps } from './b.js'; import { other } from './c.js';
      export function dig(d) { return [...steps(d), other()]; }`,
    ],
    [
      'src/x/b.ts',
      `export const steps = (d) => [formulaStep({ title: 'Dig', formula: 'E = D + a',
        given: [given('D', 'depth', d), given('a', 'more', a)], result: given('E', 'dig', e) }),
        derivedStep({ title: 'Base', formula: 'b = D - a', given: [], result: given('b', 'base', b) })];`,
    ],
    ['src/x/c.ts', "export function other() { return formulaStep({ formula: 'B = C' }); }"],
  ]);
  const [step, derived, ...rest] = stepFormulas(
    calledParts(files, 'src/x/a.ts', 'dig', (name: string) => name === 'other'),
  );
  expect(rest).toEqual([]);
  expect(derived).toEqual({
    title: 'Base',
    formula: 'b = D - a',
    symbols: new Map([['b', 'base']]),
  });
  expect(step?.title).toBe('Dig');
  expect(step?.formula).toBe('E = D + a');
  expect(step?.symbols).toEqual(
    new Map([
      ['D', 'depth'],
      ['a', 'more'],
      ['E', 'dig'],
    ]),
  );
});

describe('types as text', () => {
  const word = (value: string) => ({ type: 'literal', value });
  const union = { type: 'union', types: [word('a'), word('b')] };

  test('a list of a union has brackets', () => {
    expect(typeText({ type: 'array', elementType: union })).toBe("('a' | 'b')[]");
  });

  test('a signature shows what may be left out', () => {
    const parameters = [{ name: 'nearest', flags: { isOptional: true }, type: word('x') }];
    const signature = {
      name: 'print',
      parameters,
      type: { type: 'intrinsic', toString: () => 'string' },
    };
    expect(signatureText(signature)).toBe("function print(nearest?: 'x'): string;");
  });
});

describe('the base of the site', () => {
  test('is worked out where a script names a file', () => {
    expect(inScript('return"/settline-base/assets/a.js"', 'x.js')).toBe(
      'return(window.__settlineBase+"assets/a.js")',
    );
    expect(inScript('f(`/settline-base/`.length, "b")', 'x.js')).toBe(
      'f((window.__settlineBase+``).length, "b")',
    );
  });

  test.for(['JSON.parse(DATA)', 'deserializeFunctions(JSON.parse(DATA))'])(
    'is put into the data of the site when they are loaded: %s',
    (value) => {
      const data = String.raw`"{\"base\":\"/settline-base/\",\"x\":1}"`;
      const script = inScript(
        `window.__VP_SITE_DATA__=${value.replace('DATA', data)};`,
        'metadata.js',
      );
      expect(script).toContain(String.raw`"{\"base\":\"/\",\"x\":1}"`);
      expect(script).toMatch(/;window\.__VP_SITE_DATA__\.base=window\.__settlineBase;$/);
    },
  );

  test('is put into the index of the search when it is loaded', () => {
    const script = inScript(
      `const e='{"0":"/settline-base/a"}';export{e as default};`,
      '@localSearchIndexroot.x.js',
    );
    expect(script).toContain(`const e='{"0":"/settline-base/a"}';`);
    expect(script).toContain('e.replaceAll("/settline-base/",window.__settlineBase)');
  });

  test('within a text is refused', () => {
    expect(() => {
      inScript('f("see /settline-base/a")', 'x.js');
    }).toThrow(/x\.js: a base within a text/);
  });
});

test('a field of the schema shows how it is written', () => {
  const page = schemaPage({
    required: ['height'],
    properties: {
      height: {
        description: 'How high.',
        anyOf: [{ type: 'string', description: 'With its unit.' }],
      },
      stakes: {
        type: 'array',
        minItems: 2,
        maxItems: 9,
        description: 'Stakes.',
        items: { properties: { id: { type: 'string', description: 'Id.' } }, required: [] },
      },
    },
  });
  expect(page).toContain('| `height` | With its unit. | How high. |');
  expect(page).toContain('| `stakes`, optional | list, 2 to 9 | Stakes. |');
  expect(page).toContain('| `stakes[].id`, optional | string | Id. |');
});

describe('the page of checked figures', () => {
  const check = {
    source: 'a-book',
    title: 'A <book>',
    status: 'read',
    section: '3.1',
    test: 'sag',
    file: 'sag.test.ts',
    passed: true,
  };
  const figure = { kind: 'printed', printed: '1.25', computed: '1.2531', half: '0.005', ok: true };

  test('shows what is printed, computed, how far they are apart and what is allowed', () => {
    const page = checkedPage([{ ...check, figures: [figure] }], new Map());
    expect(page).toContain(
      '<td>1.25</td><td>1.2531</td><td>0.0031</td><td>0.005</td><td>holds</td>',
    );
    expect(page).toContain('## A &lt;book&gt; {#of-a-book}');
  });

  test('shows a misprint as one, with the right figure', () => {
    const misprint = { ...figure, kind: 'misprint', printed: '12.5', right: '1.25' };
    const page = checkedPage([{ ...check, figures: [misprint] }], new Map());
    expect(page).toContain(
      '<td>misprint</td><td>12.5, should be 1.25</td><td>1.2531</td><td>0.0031</td>',
    );
  });

  test('names the folder that a file of checks calls, not what every file imports', () => {
    expect(foldersOf("import 'x' from 'settline/units'; import y from 'settline/stakes';")).toEqual(
      ['stakes'],
    );
    expect(foldersOf("import x from 'settline/units';")).toEqual(['units']);
  });
});
