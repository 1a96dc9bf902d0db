// Units: ours beside general-purpose packages and a bare decimal multiply.
import { convert as convertPeer } from 'convert';
import { Decimal } from 'decimal.js';
import Qty from 'js-quantities';
import { all, create } from 'mathjs';
import unitmath from 'unitmath';
import { convert, formatLength, length, parseLength, volume } from 'settline/units';
import { compare, printTable } from './report.mjs';

const math = create(all);
const mathBig = create(all, { number: 'BigNumber', precision: 40 });
const swift = Qty.swiftConverter('ft', 'm');
const Decimal40 = Decimal.clone({ precision: 40 });
const factor = new Decimal40('0.3048');
const five = new Decimal40('5.5');
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

export async function run() {
  accuracy();
  await compare('Convert 5.5 ft to m', [
    { name: 'settline convert', run: () => convert(5.5, 'ft', 'm'), result: text },
    {
      name: 'settline Quantity.to',
      run: (
        (q) => () =>
          q.to('m')
      )(length('5.5 ft')),
      result: text,
    },
    {
      name: 'settline Quantity.toNumber',
      run: (
        (q) => () =>
          q.toNumber('m')
      )(length('5.5 ft')),
      result: text,
    },
    { name: 'bare decimal multiply', run: () => five.times(factor), result: text },
    { name: 'mathjs', run: () => math.unit(5.5, 'ft').toNumber('m'), result: text },
    {
      name: 'mathjs, BigNumber 40',
      run: (
        (v) => () =>
          mathBig.unit(v, 'ft').toNumeric('m')
      )(mathBig.bignumber('5.5')),
      result: text,
    },
    { name: 'js-quantities', run: () => Qty(5.5, 'ft').to('m').scalar, result: text },
    { name: 'js-quantities, prebuilt', run: () => swift(5.5), result: text },
    { name: 'unitmath', run: () => unitmath(5.5, 'ft').to('m').value, result: text },
    { name: 'convert', run: () => convertPeer(5.5, 'ft').to('m'), result: text },
  ]);
  await compare('Read "5.5 ft"', [
    { name: 'settline', run: () => parseLength('5.5 ft'), result: text },
    { name: 'mathjs', run: () => math.unit('5.5 ft'), result: text },
    { name: 'js-quantities', run: () => Qty.parse('5.5 ft'), result: text },
    { name: 'unitmath', run: () => unitmath('5.5 ft'), result: text },
  ]);
  await compare(`Read 7' 3 5/8" (the peers read it as a sum, or not at all)`, [
    { name: 'settline, plain marks', run: () => parseLength(`7' 3 5/8"`), result: text },
    { name: 'settline, typographic', run: () => parseLength('7′ 3⅝″'), result: text },
    { name: 'settline, drawing form', run: () => parseLength(`7'-3 5/8"`), result: text },
    { name: 'mathjs evaluate', run: () => math.evaluate('7 ft + 3.625 in'), result: text },
    {
      name: 'unitmath, two units',
      run: () => unitmath('7 ft').add(unitmath('3.625 in')),
      result: text,
    },
  ]);
  await compare('Print 1.234 m', [
    {
      name: 'settline, feet and inches to 1/16',
      run: (
        (q) => () =>
          formatLength(q, { as: 'ft-in' })
      )(length('1.234 m')),
      result: text,
    },
    {
      name: 'settline, metres',
      run: (
        (q) => () =>
          formatLength(q, { as: 'm' })
      )(length('1.234 m')),
      result: text,
    },
    {
      name: 'mathjs, inches',
      run: (
        (q) => () =>
          q.to('in').format({ notation: 'fixed', precision: 3 })
      )(math.unit(1.234, 'm')),
      result: text,
    },
    {
      name: 'js-quantities, inches',
      run: (
        (q) => () =>
          q.toPrec('0.01 in').to('in').toString()
      )(Qty(1.234, 'm')),
      result: text,
    },
    {
      name: 'unitmath, inches',
      run: (
        (q) => () =>
          q.to('in').toString({ precision: 5 })
      )(unitmath(1.234, 'm')),
      result: text,
    },
  ]);
  const [a, b] = [length('7 ft 3 5/8 in'), length('1.2 m')];
  const [da, db] = [new Decimal40('2.225675'), new Decimal40('1.2')];
  const yards = volume('5920/324', 'yd3');
  await compare('Add two lengths', [
    { name: 'settline', run: () => a.plus(b), result: text },
    { name: 'bare decimal add', run: () => da.plus(db), result: text },
    {
      name: 'mathjs',
      run: (
        (x, y) => () =>
          math.add(x, y)
      )(math.unit('87.625 in'), math.unit('1.2 m')),
      result: text,
    },
    {
      name: 'js-quantities',
      run: (
        (x, y) => () =>
          x.add(y)
      )(Qty('87.625 in'), Qty('1.2 m')),
      result: text,
    },
    { name: 'settline, thirds', run: () => yards.plus(yards), result: text },
  ]);
}
