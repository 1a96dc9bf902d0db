import { describe, expect, test } from 'vitest';
import type { FormulaStep, StepInput } from 'settline';
import { formulaTeX, readFormula } from 'settline/formulas';
import { renderWorking } from 'settline/sheet';
import { fromNumber } from 'settline/units';
import { expectFault } from '../faults.js';

describe('formulas in TeX', () => {
  test.each([
    // symbols
    ['A = 2 * pi * r', String.raw`A = 2 \, \pi \, r`],
    ['t1 = DD', String.raw`t_{1} = \mathrm{DD}`],
    ['Vc = DDF', String.raw`V_{\mathrm{c}} = \mathrm{DDF}`],
    ['w = ABc', String.raw`w = \mathrm{AB}_{\mathrm{c}}`],
    ['a = b2', String.raw`a = b_{2}`],
    ['a = t[2] + t[k + 1]', String.raw`a = {t}_{[2]} + {t}_{[k + 1]}`],
    // numbers and words
    ['a = 2 * 3.5', String.raw`a = 2 \times 3.5`],
    ['a = 2 * x', String.raw`a = 2 \, x`],
    ['v = "pass"', String.raw`v = \text{pass}`],
    // functions
    ['a = sqrt(x + y)', String.raw`a = \sqrt{x + y}`],
    ['a = abs(x - y)', String.raw`a = \left|x - y\right|`],
    ['n = ceil(x)', String.raw`n = \left\lceil x\right\rceil`],
    ['n = floor(x)', String.raw`n = \left\lfloor x\right\rfloor`],
    ['a = exp(x)', String.raw`a = e^{x}`],
    ['a = sum(t)', String.raw`a = \sum \left(t\right)`],
    ['a = asin(x)', String.raw`a = \arcsin\left(x\right)`],
    ['a = log(x)', String.raw`a = \ln\left(x\right)`],
    ['a = log10(x)', String.raw`a = \log_{10}\left(x\right)`],
    ['a = max(x, y)', String.raw`a = \operatorname{max}\left(x,\ y\right)`],
    // signs before
    ['a = -x', 'a = -x'],
    ['a = -(x + y)', String.raw`a = -\left(x + y\right)`],
    ['a = -(x * y)', String.raw`a = -x \, y`],
    ['a = x - -y', String.raw`a = x - \left(-y\right)`],
    ['a = (-x)^2', String.raw`a = \left(-x\right)^{2}`],
    ['a = not x < y', String.raw`a = \text{not }x < y`],
    ['a = not (x and y)', String.raw`a = \text{not }\left(x \text{ and } y\right)`],
    ['a = not x and y', String.raw`a = \text{not }x \text{ and } y`],
    ['a = (not x) < y', String.raw`a = \left(\text{not }x\right) < y`],
    // signs between
    ['a = x <= y or x >= z', String.raw`a = x \le y \text{ or } x \ge z`],
    ['a = x == y or x != z', String.raw`a = x = y \text{ or } x \ne z`],
    ['a = x > y', 'a = x > y'],
    ['a = x - (y - z)', String.raw`a = x - \left(y - z\right)`],
    ['a = x - y - z', 'a = x - y - z'],
    ['a = (x + y) * z', String.raw`a = \left(x + y\right) \, z`],
    ['a = (x + y) / (2 * z)', String.raw`a = \frac{x + y}{2 \, z}`],
    ['a = x * (y / z)', String.raw`a = x \, \frac{y}{z}`],
    ['a = (x / y)^2', String.raw`a = \left(\frac{x}{y}\right)^{2}`],
    ['a = x^y^2', String.raw`a = x^{y^{2}}`],
    // conditions
    [
      'a = x > 0 ? x : -x',
      String.raw`a = \begin{cases}x & \text{if } x > 0\\ -x & \text{otherwise}\end{cases}`,
    ],
    [
      'a = (x ? y : z) * 2',
      String.raw`a = \left(\begin{cases}y & \text{if } x\\ z & \text{otherwise}\end{cases}\right) \, 2`,
    ],
  ])('%s', (formula, tex) => {
    expect(formulaTeX(formula)).toBe(tex);
  });
});

describe('formulas that the grammar does not know', () => {
  test.each([
    ['', '"", character 1: the formula ends there'],
    ['a', '"a", character 2: the formula ends there'],
    ['a =', '"a =", character 4: the formula ends there'],
    ['2 = a', '"2 = a", character 1: got "2"'],
    ['a + b', '"a + b", character 3: got "+"'],
    ['a = b c', '"a = b c", character 7: got "c"'],
    ['a = * b', '"a = * b", character 5: got "*"'],
    ['a = (b', '"a = (b", character 7: the formula ends there'],
    ['a = b ? c', '"a = b ? c", character 10: the formula ends there'],
    ['a = b & c', '"a = b & c", character 7: "&" has no meaning there'],
  ])('"%s"', (formula, message) => {
    expect(expectFault(() => readFormula(formula), 'FORMULA_INVALID').message).toBe(message);
  });

  test('what is deeper or longer than any formula', () => {
    const messageOf = (formula: string) =>
      expectFault(() => readFormula(formula), 'FORMULA_INVALID').message;
    expect(readFormula(`a = ${'('.repeat(60)}b${')'.repeat(60)}`).expression.kind).toBe('name');
    expect(messageOf(`a = ${'('.repeat(61)}b`)).toBe('more than 60 parts inside each other');
    expect(readFormula(`a = ${'b'.repeat(1996)}`).result).toBe('a');
    expect(messageOf(`a = ${'b'.repeat(1997)}`)).toBe('a formula of more than 2000 characters');
  });

  test('a function that it does not have', () => {
    const { message } = expectFault(() => formulaTeX('a = sine(b)'), 'FORMULA_INVALID');
    expect(message).toMatch(/^"a = sine\(b\)": no function "sine"; use sqrt, sin, /);
  });

  test('what is no text', () => {
    const { message } = expectFault(() => readFormula(5 as never), 'WRONG_TYPE');
    expect(message).toBe('expected a formula as text, got 5');
  });
});

const step = (formula: string, given: readonly StepInput[]): FormulaStep => ({
  kind: 'formula',
  title: 'A step',
  formula,
  result: { symbol: 'a', name: 'result', value: 1, text: '1', source: null },
  given,
  source: 'derived',
});

const value = (symbol: string, of: StepInput['value']): StepInput => ({
  symbol,
  name: `the ${symbol}`,
  value: of,
  text: String(of),
  source: null,
});

describe('formulas in the working', () => {
  const inputs = [value('x', 2), value('y', -3), value('h', fromNumber(2, 'm'))];
  test.each([
    ['a = -(x + z)', ['a = -(x + z)', 'a = -(2 + z)']],
    ['a = -x^2', ['a = -x^2', 'a = -2^2']],
    ['a = x - y', ['a = x - y', 'a = 2 - (-3)']],
    ['a = not (x and y)', ['a = not (x and y)', 'a = not (2 and -3)']],
    ['a = x < y', ['a = x < y', 'a = 2 < -3']],
    ['a = x > 0 ? x : -x', ['a = x where x > 0, else -x', 'a = 2 where 2 > 0, else -2']],
    [
      'a = x > 0 ? (y > 0 ? 1 : 2) : 3',
      [
        'a = (1 where y > 0, else 2) where x > 0, else 3',
        'a = (1 where -3 > 0, else 2) where 2 > 0, else 3',
      ],
    ],
    ['a = h * x', ['a = h × x', 'a = 2000 mm × 2']],
    ['a = h^x', ['a = h^x', 'a = (2000 mm)^2']],
  ])('%s', (formula, lines) => {
    const text = renderWorking([step(formula, inputs)], { system: 'metric' });
    expect(text.split('\n').slice(1, 1 + lines.length)).toEqual(lines.map((line) => `  ${line}`));
  });

  const list = value('t', [1, 2, 3]);
  test.each([
    ['a = sum(t)', 'a = sum(1, 2, 3)'],
    ['a = sum(t[k])', 'a = sum(1, 2, 3)'],
    ['a = t[2] + 1', 'a = 2 + 1'],
  ])('%s puts in the items of a list', (formula, line) => {
    const text = renderWorking([step(formula, [list])], { system: 'metric' });
    expect(text.split('\n')[2]).toBe(`  ${line}`);
  });

  test.each(['a = sum(t[k + 1])', 'a = t + 1', 'a = sum(t * 2)', 'a = -t', 'a = x ? t : 1'])(
    '%s takes a list in a way that one line does not show',
    (formula) => {
      const text = renderWorking([step(formula, [list])], { system: 'metric' });
      expect(text.split('\n')[2]).toBe('  a = 1 (result)');
    },
  );
});
