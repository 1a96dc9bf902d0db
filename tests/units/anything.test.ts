// No function of the folder throws anything but a SettlineError, whatever it gets.
import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import * as units from 'settline/units';
import { faultsOf } from '../faults.js';

const { area, length, max, min, sum } = units;
const MARK = Symbol.for('settline.quantity');

/** Objects that look like a quantity and are none. */
const forged: readonly object[] = [
  { [MARK]: true },
  { [MARK]: true, dimension: 'length' },
  { [MARK]: true, dimension: 'length', toJSON: 'no' },
  { [MARK]: true, dimension: 'length', toJSON: () => null },
  { [MARK]: true, dimension: 'length', toJSON: () => ({}) },
  { [MARK]: true, dimension: 'length', toJSON: () => ({ value: 1, unit: 'm' }) },
  { [MARK]: true, dimension: 'length', toJSON: () => ({ value: '1', unit: 'kg' }) },
  { [MARK]: true, dimension: 'length', toJSON: () => ({ value: 'x', unit: 'm' }) },
  {
    [MARK]: true,
    dimension: 'length',
    toJSON() {
      throw new TypeError('no');
    },
  },
  { [MARK]: true, dimension: 'breadth', toJSON: () => ({ value: '1', unit: 'm' }) },
  { [MARK]: true, dimension: 'constructor', toJSON: () => ({ value: '1', unit: 'm' }) },
  {
    [MARK]: true,
    get dimension() {
      throw new TypeError('no');
    },
  },
  { dimension: 'length', si: 1 },
  { toStringTag: '[object Decimal]' },
  { toStringTag: '[object Decimal]', s: 1, e: 0, d: ['x'] },
  {
    toStringTag: '[object Decimal]',
    toString: () => {
      throw new TypeError('no');
    },
  },
];
const cyclic: Record<string, unknown> = {};
cyclic['self'] = cyclic;

const garbage: readonly unknown[] = [
  undefined,
  null,
  true,
  0,
  -0,
  5,
  -1.5,
  1e308,
  5e-324,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  7n,
  Symbol('five'),
  () => 5,
  '',
  ' ',
  '5',
  '5 ft',
  '2%',
  'm',
  'ton',
  'length',
  'constructor',
  '__proto__',
  '1/0',
  '1e-999',
  '1e-999 m',
  '\u0000',
  '\ud800',
  'x'.repeat(100_000),
  '9'.repeat(100_000),
  {},
  [],
  // arrays with holes, the second one far too long to walk through
  [length('5 ft'), , length('6 ft')],
  new Array(4_000_000_000),
  ['5 ft'],
  [5],
  [length('5 ft'), area('5 ft2')],
  [[[]]],
  Object.create(null),
  new Date(0),
  new Map(),
  new Float64Array(3),
  /x/,
  cyclic,
  new Decimal(5),
  new Decimal(Number.NaN),
  new Decimal('1e-5000'),
  new Decimal('1e5000'),
  { value: 5, unit: 'ft' },
  { value: Symbol('five'), unit: 'ft' },
  { value: '1e-999', unit: 'm' },
  { value: [], unit: {} },
  { as: 'ft' },
  { as: Symbol('ft') },
  { as: 'ft', nearest: Symbol('in') },
  { as: 'ft', nearest: '' },
  { as: 'ft', nearest: length('1 in') },
  { as: 'ft', rounding: 'sideways' },
  { as: 'm', places: 1e9 },
  { decimalComma: 1 },
  length('5 ft'),
  length('1/3 in'),
  area('5 ft2'),
  ...forged,
];

const valid: Readonly<Record<string, readonly unknown[]>> = {
  convert: [1, 'in', 'mm'],
  parseLength: ['5 ft', {}],
  readLengthText: ['5 ft', {}],
  parseMeasure: ['area', '5 ft2', {}],
  parseSlope: ['2%', {}],
  formatLength: [length('5 ft'), { as: 'in' }],
  formatQuantity: [area('5 ft2'), { as: 'm2' }],
  roundTo: [length('5 ft'), length('1 in'), 'up'],
  fromNumber: [5, 'ft'],
  compareQuantities: [length('5 ft'), length('6 ft')],
};

type AnyFunction = (...given: readonly unknown[]) => unknown;

const functions = Object.entries<unknown>({ ...units }).filter(
  (entry): entry is [string, AnyFunction] => typeof entry[1] === 'function',
);

/** Runs a call; returns its answer, or undefined if it was refused as it should be. */
function answerOf(run: () => unknown, what: string): unknown {
  try {
    return run();
  } catch (error) {
    if (!isSettlineError(error)) expect.fail(`${what} throws ${String(error)}`);
    for (const { message } of error.issues) expect(message.length, what).toBeLessThan(400);
    // no more than twenty faults stand in the message of the error
    expect(error.message.length, what).toBeLessThan(20 * 400);
    return undefined;
  }
}

/** An answer is never a number that is none. */
function expectSound(answer: unknown, what: string): void {
  if (typeof answer === 'number') expect(Number.isFinite(answer), what).toBe(true);
  if (Decimal.isDecimal(answer)) expect(answer.isFinite(), what).toBe(true);
  if (typeof answer === 'string') expect(answer, what).not.toMatch(/NaN|Infinity|undefined/);
  if (units.isQuantity(answer)) {
    expect(answer.si.isFinite(), what).toBe(true);
    expect(units.fromJSON(answer.toJSON()).equals(answer as never), what).toBe(true);
  }
}

test('there are the functions that are listed', () => {
  expect(functions.length).toBeGreaterThan(30);
  expect(Object.keys(valid).filter((name) => !functions.some(([own]) => own === name))).toEqual([]);
});

describe.each(functions)('%s', (name, run) => {
  const arity = valid[name]?.length ?? 2;

  test('answers or refuses whatever it gets, in any place', () => {
    for (let place = 0; place < arity; place += 1) {
      garbage.forEach((value, index) => {
        const given = [...(valid[name] ?? [])];
        given[place] = value;
        const what = `${name}, garbage ${index} as argument ${place}`;
        expectSound(
          answerOf(() => run(...given), what),
          what,
        );
      });
    }
  });
});

describe('the methods of a quantity', () => {
  const foot = length('1 ft');
  const methods = ['to', 'toNumber', 'plus', 'minus', 'times', 'dividedBy', 'compare', 'equals'];

  test.each(methods)('%s', (name) => {
    const run = foot[name as 'plus'].bind(foot) as (value: unknown) => unknown;
    garbage.forEach((value, index) => {
      const what = `${name} of garbage ${index}`;
      expectSound(
        answerOf(() => run(value), what),
        what,
      );
    });
  });
});

describe('lists of quantities', () => {
  test.each([
    [['5 ft'], 'WRONG_TYPE', [0]],
    [[5], 'WRONG_TYPE', [0]],
    [[length('5 ft'), null], 'WRONG_TYPE', [1]],
    [[length('5 ft'), undefined], 'REQUIRED', [1]],
    [[length('5 ft'), area('1 ft2')], 'DIMENSION_MISMATCH', [1]],
    [[], 'EMPTY_LIST', []],
    ['5 ft', 'WRONG_TYPE', []],
    [undefined, 'WRONG_TYPE', []],
  ] as const)('%j is refused: %s', (list, code, path) => {
    for (const of of [sum, min, max]) {
      expect(faultsOf(() => of(list as never))).toMatchObject([{ code, path }]);
    }
  });
});

describe('options', () => {
  test.each([
    [
      () => units.formatLength(length('5 ft'), { as: 'ft', nearst: '1 in' } as never),
      'nearst',
      'nearest',
    ],
    [
      () => units.formatLength(length('5 ft'), { as: 'ft', decimalcomma: true } as never),
      'decimalcomma',
      'decimalComma',
    ],
    [() => units.formatQuantity(area('5 ft2'), { as: 'm2', place: 3 } as never), 'place', 'places'],
    [() => units.parseLength('5 ft', { surveyfoot: true } as never), 'surveyfoot', 'surveyFoot'],
    [
      () => units.readLengthText('5 ft', { decimlComma: true } as never),
      'decimlComma',
      'decimalComma',
    ],
    [
      () => units.parseMeasure('mass', '5 t', { decimalComa: true } as never),
      'decimalComa',
      'decimalComma',
    ],
    [
      () => units.parseSlope('2%', { decimalCommas: true } as never),
      'decimalCommas',
      'decimalComma',
    ],
  ] as const)('%s: %s is refused, %s was meant', (run, key, meant) => {
    expect(faultsOf(run)).toMatchObject([
      { code: 'UNKNOWN_FIELD', path: [key], params: { meant } },
    ]);
  });

  test('all faults come at once, each at its option', () => {
    const wrong = { as: 'ft', rounding: 'sideways', marks: 'fancy', decimalComma: 'yes' };
    const faults = faultsOf(() => units.formatLength(length('5 ft'), wrong as never));
    expect(faults.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
      'UNKNOWN_CHOICE rounding',
      'UNKNOWN_CHOICE marks',
      'WRONG_TYPE decimalComma',
    ]);
  });

  test('a step that cannot be read is told of at `nearest`', () => {
    const run = () => units.formatLength(length('5 ft'), { as: 'ft', nearest: 'wide' });
    expect(faultsOf(run)).toMatchObject([{ path: ['nearest'] }]);
  });
});

describe('magnitudes', () => {
  test.each(['1e-999', '-1e-61', '1e-400/3', '1e999', '1e61', '1/1e70'])('%s m', (value) => {
    expect(faultsOf(() => length(value, 'm'))).toMatchObject([{ code: 'OUT_OF_RANGE' }]);
  });

  test('what is just small is taken', () => {
    expect(length('1e-60', 'm').to('m').toExponential()).toBe('1e-60');
  });
});

test('messages carry no more than forty characters of what was given', () => {
  const long = 'ab1!'.repeat(250_000);
  for (const run of [
    () => units.parseLength(long),
    () => length(long),
    () => length(long, 'm'),
    () => length(1, long as never),
    () => units.convert(1, long as never, 'm' as never),
    () => units.parseMeasure('area', `5 ${'furlongs'.repeat(14)}`),
    () => units.parseSlope(`5 ${'steepness'.repeat(12)}`),
    () => units.formatLength(length('5 ft'), { [long]: 1 }),
    () => units.fromJSON({ value: long, unit: 'm' }),
    () => units.unitsOf(long as never),
  ]) {
    const [issue] = faultsOf(run);
    expect(issue?.message).not.toContain(long.slice(0, 41));
    expect(issue?.message.length).toBeLessThan(400);
    for (const value of Object.values(issue?.params ?? {})) {
      if (typeof value === 'string') expect(value.length).toBeLessThan(400);
    }
  }
});
