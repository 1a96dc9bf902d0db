// Units: ours beside general-purpose packages and a bare decimal multiply.
import { convert as convertPeer } from 'convert';
import { Decimal } from 'decimal.js';
import Qty from 'js-quantities';
import { all, create } from 'mathjs';
import unitmath from 'unitmath';
import {
  convert,
  formatLength,
  length,
  parseLength,
  parseMeasure,
  parseSlope,
  volume,
} from 'settline/units';
import { compare, printTable } from './report.mjs';

const math = create(all);
const mathBig = create(all, { number: 'BigNumber', precision: 40 });
const swift = Qty.swiftConverter('ft', 'm');
const Decimal40 = Decimal.clone({ precision: 40 });
const factor = new Decimal40('0.3048');
const text = String;

/** Relative error against the exact value, as a power of ten or `exact`. */
function error(got, exact) {
  const off = new Decimal40(got.toString()).minus(exact).div(exact).abs();
  return off.isZero() ? 'exact' : off.toExponential(0);
}

function accuracy() {
  const exact = new Decimal(1).div(1);
  const rows = [['relative error', 'settline', 'mathjs', 'js-quantities', 'unitmath', 'convert']];
  const cases = [
    ['1 in to mm', '25.4', 'in', 'mm', 'in', 'mm'],
    ['5.5 ft to m', '1.6764', 'ft', 'm', 'ft', 'm', 5.5],
    ['27 ft3 to yd3', '1', 'ft3', 'yd3', 'cuft', 'cuyd', 27],
    ['1 lb to kg', '0.45359237', 'lb', 'kg', 'lb', 'kg'],
    ['1 psi to Pa', '6894.757293168361336722673445346890693781', 'psi', 'Pa', 'psi', 'Pa'],
    ['1 m to ft', '3.280839895013123359580052493438320209974', 'm', 'ft', 'm', 'ft'],
  ];
  for (const [name, want, from, to, mathFrom, mathTo, value = 1] of cases) {
    const attempt = (run) => {
      try {
        return error(run(), new Decimal40(want).times(exact));
      } catch {
        return '-';
      }
    };
    rows.push([
      name,
      attempt(() => convert(value, from, to)),
      attempt(() => math.unit(value, mathFrom).toNumber(mathTo)),
      attempt(() => Qty(value, from).to(to).scalar),
      attempt(() => unitmath(value, mathFrom).to(mathTo).value),
      attempt(() => convertPeer(value, from.replace('in', 'inches')).to(to)),
    ]);
  }
  printTable('Digits', rows);
}

/** Many texts of one form, so that nothing is read twice in a row. */
const MANY = 64;
const many = (textAt) => Array.from({ length: MANY }, (_, k) => textAt(k));
const FEET = many((k) => `${k + 1}.${(k * 7) % 10} ft`);
const VALUES = many((k) => k + 1.25);
const SIXTEENTHS = many((k) => 2 * (k % 8) + 1);
const MARKS = many((k) => `${k + 1}' ${k % 12} ${SIXTEENTHS[k]}/16"`);
const TYPOGRAPHIC = many((k) => `${k + 1}′ ${k % 12}${'⅛⅜⅝⅞'[k % 4]}″`);
const DRAWN = many((k) => `${k + 1}'-${k % 12} ${SIXTEENTHS[k]}/16"`);
const SUMS = many((k) => `${k + 1} ft + ${(k % 12) + SIXTEENTHS[k] / 16} in`);
const SLOPES = many(
  (k) => [`${k}.5%`, `1:${k + 9}`, `${(k % 7) + 1}/8 in per ft`, `${k} mm/m`][k % 4],
);
const DENSITIES = many((k) => `${3000 + k} lb/yd3`);
/** The one of many that a call works on. */
const at = (list, k) => list[k % MANY];

export function run() {
  accuracy();
  const quantities = VALUES.map((value) => length(value, 'ft'));
  const decimals = VALUES.map((value) => new Decimal40(value));
  const bigs = VALUES.map((value) => mathBig.bignumber(value));
  compare('Convert feet to metres, 64 values in turn', [
    { name: 'settline convert', run: (k) => convert(at(VALUES, k), 'ft', 'm'), result: text },
    { name: 'settline Quantity.to', run: (k) => at(quantities, k).to('m'), result: text },
    {
      name: 'settline Quantity.toNumber',
      run: (k) => at(quantities, k).toNumber('m'),
      result: text,
    },
    { name: 'bare float multiply (floor)', run: (k) => at(VALUES, k) * 0.3048, result: text },
    { name: 'bare decimal multiply', run: (k) => at(decimals, k).times(factor), result: text },
    { name: 'mathjs', run: (k) => math.unit(at(VALUES, k), 'ft').toNumber('m'), result: text },
    {
      name: 'mathjs, BigNumber 40',
      run: (k) => mathBig.unit(at(bigs, k), 'ft').toNumeric('m'),
      result: text,
    },
    { name: 'js-quantities', run: (k) => Qty(at(VALUES, k), 'ft').to('m').scalar, result: text },
    { name: 'js-quantities, prebuilt', run: (k) => swift(at(VALUES, k)), result: text },
    { name: 'unitmath', run: (k) => unitmath(at(VALUES, k), 'ft').to('m').value, result: text },
    { name: 'convert', run: (k) => convertPeer(at(VALUES, k), 'ft').to('m'), result: text },
  ]);
  compare('Read "1.0 ft" and 63 others', [
    { name: 'settline', run: (k) => parseLength(at(FEET, k)), result: text },
    { name: 'walk over its characters (floor)', run: (k) => walk(at(FEET, k)) },
    { name: 'mathjs', run: (k) => math.unit(at(FEET, k)), result: text },
    { name: 'js-quantities', run: (k) => Qty.parse(at(FEET, k)), result: text },
    { name: 'unitmath', run: (k) => unitmath(at(FEET, k)), result: text },
  ]);
  compare(`Read 1' 0 1/16" and 63 others (the peers read it as a sum, or not at all)`, [
    { name: 'settline, plain marks', run: (k) => parseLength(at(MARKS, k)), result: text },
    { name: 'settline, typographic', run: (k) => parseLength(at(TYPOGRAPHIC, k)), result: text },
    { name: 'settline, drawing form', run: (k) => parseLength(at(DRAWN, k)), result: text },
    { name: 'walk over its characters (floor)', run: (k) => walk(at(MARKS, k)) },
    { name: 'mathjs evaluate', run: (k) => math.evaluate(at(SUMS, k)), result: text },
    {
      name: 'unitmath, two units',
      run: (k) => unitmath(at(FEET, k)).add(unitmath(at(FEET, k + 1))),
      result: text,
    },
  ]);
  compare('Read other measures, 64 texts in turn', [
    { name: 'settline parseSlope', run: (k) => parseSlope(at(SLOPES, k)), result: text },
    {
      name: 'settline parseMeasure, density',
      run: (k) => parseMeasure('density', at(DENSITIES, k)),
      result: text,
    },
  ]);
  const [mathUnits, qtys, unitmaths] = [
    VALUES.map((value) => math.unit(value, 'm')),
    VALUES.map((value) => Qty(value, 'm')),
    VALUES.map((value) => unitmath(value, 'm')),
  ];
  const metres = VALUES.map((value) => length(value, 'm'));
  compare('Print 1.25 m and 63 others', [
    {
      name: 'settline, feet and inches to 1/16',
      run: (k) => formatLength(at(metres, k), { as: 'ft-in' }),
      result: text,
    },
    {
      name: 'settline, metres',
      run: (k) => formatLength(at(metres, k), { as: 'm' }),
      result: text,
    },
    { name: 'toFixed of a float (floor)', run: (k) => (at(VALUES, k) / 0.0254).toFixed(3) },
    { name: 'mathjs, inches', run: (k) => at(mathUnits, k).to('in').format(FIXED), result: text },
    {
      name: 'js-quantities, inches',
      run: (k) => at(qtys, k).toPrec('0.01 in').to('in').toString(),
      result: text,
    },
    {
      name: 'unitmath, inches',
      run: (k) => at(unitmaths, k).to('in').toString({ precision: 5 }),
      result: text,
    },
  ]);
  const yards = VALUES.map((value) => volume(`${Math.ceil(value)}/324`, 'yd3'));
  compare('Add two lengths, 64 pairs in turn', [
    { name: 'settline', run: (k) => at(metres, k).plus(at(quantities, k + 1)), result: text },
    {
      name: 'bare decimal add',
      run: (k) => at(decimals, k).plus(at(decimals, k + 1)),
      result: text,
    },
    { name: 'mathjs', run: (k) => math.add(at(mathUnits, k), at(mathUnits, k + 1)), result: text },
    { name: 'js-quantities', run: (k) => at(qtys, k).add(at(qtys, k + 1)), result: text },
    { name: 'settline, thirds', run: (k) => at(yards, k).plus(at(yards, k + 1)), result: text },
  ]);
}

const FIXED = { notation: 'fixed', precision: 3 };

/** Looks at each character once, as any reader must. */
function walk(string) {
  let sum = 0;
  for (let i = 0; i < string.length; i += 1) sum += string.charCodeAt(i);
  return sum;
}
