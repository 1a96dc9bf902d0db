// Every word for a unit, which words are refused, and what is told of them.
import { describe, expect, test } from 'vitest';
import {
  DIMENSIONS,
  fromNumber,
  parseLength,
  parseMeasure,
  parseSlope,
  unitsOf,
  type MeasureDimension,
  type Unit,
} from 'settline/units';
import { expectFault, expectReason } from '../faults.js';

/** The words of each unit of a dimension, besides its symbol. */
const WORDS: Readonly<Record<MeasureDimension, Partial<Record<Unit, readonly string[]>>>> = {
  area: {
    mm2: ['sq mm', 'mm²'],
    cm2: ['sq cm', 'cm²'],
    m2: ['sq m', 'square metre', 'square metres', 'square meter', 'square meters'],
    ha: ['hectare', 'hectares'],
    in2: ['sq in', 'square inch', 'square inches', 'sq in.'],
    ft2: ['sq ft', 'sqft', 'square foot', 'square feet', 'SQ FT', 'FT2', 'ft²', 'sq  ft'],
    yd2: ['sq yd', 'square yard', 'square yards'],
    acre: ['acres', 'Acres', 'ACRE'],
  },
  volume: {
    l: ['L', 'litre', 'litres', 'liter', 'liters'],
    m3: ['cu m', 'cubic metre', 'cubic metres', 'cubic meter', 'cubic meters', 'm³'],
    in3: ['cu in', 'cubic inch', 'cubic inches'],
    ft3: ['cu ft', 'cubic foot', 'cubic feet'],
    yd3: ['cu yd', 'cubic yard', 'cubic yards', 'YD3', 'cu yd.'],
    'gal-us': ['us gal', 'us gallon', 'us gallons', 'US GAL', 'GAL-US'],
  },
  mass: {
    g: ['gram', 'grams'],
    kg: ['kilogram', 'kilograms'],
    t: ['tonne', 'tonnes', 'metric ton', 'metric tons'],
    oz: ['ounce', 'ounces', 'OZ'],
    lb: ['lbs', 'pound', 'pounds', 'Lb', 'lb.'],
    'ton-us': ['us ton', 'us tons', 'short ton', 'short tons', 'TON-US'],
    'ton-uk': ['long ton', 'long tons'],
  },
  density: {
    'kg/m3': ['kg per m3', 'kg/m³'],
    't/m3': ['t per m3'],
    'lb/ft3': ['pcf', 'lb/cu ft', 'lb per ft3', 'lb per cubic foot', 'pounds per cubic foot'],
    'lb/yd3': ['lb/cu yd', 'lb per yd3', 'lb per cubic yard', 'pounds per cubic yard', 'LB/YD3'],
    'ton-us/yd3': ['short tons/yd3', 'short tons per yd3', 'short tons per cubic yard'],
  },
  force: { N: ['newton', 'newtons'], kip: ['kips', 'KIP'] },
  'line-weight': {
    'N/m': ['N per m'],
    'g/m': ['g per m'],
    'kg/m': ['kg per m'],
    'lb/ft': ['lb per ft', 'plf', 'LB/FT'],
    'lbf/ft': ['lbf per ft'],
  },
  pressure: { psi: ['lbf/in2', 'PSI'], 'lbf/ft2': ['psf'], MPa: ['N/mm2', 'N/mm²'] },
  angle: { deg: ['°', 'degree', 'degrees'], rad: ['radian', 'radians'] },
  time: {
    s: ['sec', 'secs', 'second', 'seconds'],
    min: ['mins', 'minute', 'minutes'],
    h: ['hr', 'hrs', 'hour', 'hours'],
  },
  speed: {
    'm/min': ['m per min', 'metres per minute', 'meters per minute'],
    'km/h': ['km per h'],
    'ft/min': ['ft per min', 'feet per minute', 'fpm', 'FT/MIN'],
    mph: ['miles per hour', 'MPH'],
  },
  flow: {
    'm3/h': ['m3 per h', 'm3 per hour', 'cubic metres per hour', 'cubic meters per hour'],
    'l/min': ['litres per minute', 'liters per minute', 'l per min'],
    'ft3/h': ['cu ft/h'],
    'yd3/h': ['cu yd/h', 'yd3 per hour', 'cubic yards per hour'],
    'gal-us/min': ['gpm', 'us gal/min'],
  },
};

const measures = DIMENSIONS.filter((one) => one !== 'length' && one !== 'slope');

describe('measures', () => {
  test.each(measures)('every word and symbol of %s', (dimension) => {
    for (const unit of unitsOf(dimension)) {
      for (const word of [unit, ...(WORDS[dimension][unit] ?? [])]) {
        const read = parseMeasure(dimension, `7 ${word}`);
        expect(read.equals(fromNumber(7, unit) as never), word).toBe(true);
        expect(read.toString(), word).toBe(
          dimension === 'angle' ? fromNumber(7, unit).toString() : `7 ${unit}`,
        );
      }
    }
  });

  test.each([
    ['mass', '5 ton', 't (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)'],
    ['mass', '5 Tons', 't (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)'],
    ['density', '5 ton/yd3', 'ton-us/yd3 or t/m3'],
    ['density', '5 tons/yd³', 'ton-us/yd3 or t/m3'],
    ['density', '5 ton/m3', 't/m3'],
    ['density', '5 tons/m3', 't/m3'],
    ['volume', '5 gal', 'gal-us or l'],
    ['volume', '5 gallon', 'gal-us or l'],
    ['volume', '5 gallons', 'gal-us or l'],
    ['flow', '5 gal/min', 'gal-us/min or l/min'],
  ] as const)('of %s, %s may be several', (dimension, text, choices) => {
    const issue = expectFault(() => parseMeasure(dimension, text), 'UNIT_AMBIGUOUS');
    expect(issue.message).toBe(`"${text.slice(2)}" could be several units. Write ${choices}`);
    expect(issue.params).toEqual({ text, position: 2 });
  });

  test.each([
    ['mass', '5 KG'],
    ['mass', '5 T'],
    ['area', '5 M2'],
    ['force', '5 n'],
    ['force', '5 KN'],
    ['pressure', '5 kpa'],
    ['pressure', '5 BAR'],
    ['time', '5 H'],
    ['speed', '5 KM/H'],
    ['density', '5 T/M3'],
  ] as const)('of %s, %s is a symbol in the wrong case', (dimension, text) => {
    const issue = expectReason(() => parseMeasure(dimension, text), 'CASE');
    expect(issue.params['position']).toBe(text.search(/\S+$/));
  });

  test.each([
    ['area', '5 sq', 'mm2, cm2, m2, ha, in2, ft2, yd2, acre'],
    ['area', '5 ft', 'mm2, cm2, m2, ha, in2, ft2, yd2, acre'],
    ['area', '5 square feet or so', 'mm2, cm2, m2, ha, in2, ft2, yd2, acre'],
    ['area', '5 ft2..', 'mm2, cm2, m2, ha, in2, ft2, yd2, acre'],
    ['area', '5 .ft2', 'mm2, cm2, m2, ha, in2, ft2, yd2, acre'],
    ['mass', '5 toString', 'g, kg, t, oz, lb, ton-us, ton-uk'],
    ['time', '5 constructor', 's, min, h'],
  ] as const)('of %s, %s is none', (dimension, text, choices) => {
    const issue = expectFault(() => parseMeasure(dimension, text), 'UNIT_UNKNOWN');
    expect(issue.params).toEqual({ unit: text.slice(2), choices, position: 2 });
  });

  test('a number alone has no unit', () => {
    const issue = expectFault(() => parseMeasure('time', '5 '), 'UNIT_MISSING');
    expect(issue.params).toEqual({ choices: 's, min, h', position: 2 });
    expect(issue.message).toBe('"5 " has no unit. Write it with one of s, min, h');
  });

  test.each(['length', 'slope', 'breadth', 5])('%s is not read as a measure', (dimension) => {
    const issue = expectFault(() => parseMeasure(dimension as 'area', '5 m'), 'UNKNOWN_CHOICE');
    expect(issue.params['choices']).toBe(measures.join(', '));
  });
});

/** The words of each unit of length. */
const LENGTHS = {
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'MILLIMETRES'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'Centimetres'],
  m: ['m', 'metre', 'metres', 'meter', 'meters', 'mEtErS'],
  km: ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers'],
  in: ['in', 'inch', 'inches', 'In', 'iN', 'INCHES', '"', '″', '”', '“', 'ʺ', "''", '′′', '’’'],
  ft: ['ft', 'foot', 'feet', 'Ft', 'fT', 'FEET', "'", '′', '’', '‘', '´', 'ʹ'],
  yd: ['yd', 'yds', 'yard', 'yards', 'YD', 'yD'],
  mi: ['mi', 'mile', 'miles', 'MI', 'mI'],
  'ft-us': ['usft', 'us-ft', 'us ft', 'ft-us', 'US-FT', 'Us Ft', 'uSfT'],
} as const;

describe('lengths', () => {
  test.each(Object.entries(LENGTHS))('every word of %s', (unit, words) => {
    for (const word of words) {
      for (const text of [`7 ${word}`, `7${word}`, `7 ${word} `]) {
        const read = parseLength(text, { surveyFoot: true });
        expect(read.equals(fromNumber(7, unit as 'm')), text).toBe(true);
      }
      const isWord = /[a-z]$/i.test(word);
      if (!isWord) continue;
      for (const text of [`7 ${word}.`, ...(word.includes(' ') ? [] : [`7-${word}`])])
        expect(parseLength(text, { surveyFoot: true }).equals(fromNumber(7, unit as 'm'))).toBe(
          true,
        );
    }
  });

  test.each(['MM', 'Mm', 'mM', 'CM', 'M', 'KM', 'Km'])('%s is in the wrong case', (word) => {
    for (const text of [`5 ${word}`, `5-${word}`])
      expect(expectReason(() => parseLength(text), 'CASE').params['position']).toBe(2);
    expectReason(() => parseSlope(`20 mm/${word}`), 'CASE');
  });

  test.each(['usft', 'us-ft', 'us ft', 'ft-us'])('%s is to be allowed', (word) => {
    for (const options of [undefined, {}, { surveyFoot: false }]) {
      const issue = expectReason(() => parseLength(`5 ${word}`, options), 'SURVEY_FOOT');
      expect(issue.params['position']).toBe(2);
    }
  });

  test.each([
    ['5 us', 'us', 2],
    ['5 us ftx', 'us', 2],
    ['5 us-yd', 'us', 2],
    ['5 usa-ft', 'usa', 2],
    ['5 hasOwnProperty', 'hasOwnProperty', 2],
    ['5 ft 3 us', 'us', 7],
    ['five', 'five', 0],
    ['5 ft and 3 in', 'and', 5],
  ])('%s: %s is no unit', (text, unit, position) => {
    const issue = expectFault(() => parseLength(text, { surveyFoot: true }), 'UNIT_UNKNOWN');
    expect(issue.params).toEqual({
      unit,
      position,
      choices: 'mm, cm, m, km, in, ft, yd, ft-us, mi',
    });
  });
});

describe('slopes', () => {
  test.each([
    ['7%', 'percent'],
    ['7 percent', 'percent'],
    ['7 Per  Cent', 'percent'],
    ['7 pct', 'percent'],
    ['7 ratio', 'ratio'],
    ['7 in/ft', 'in/ft'],
    ['7 mm/m', 'mm/m'],
  ] as const)('%s', (text, unit) => {
    expect(parseSlope(text).equals(fromNumber(7, unit))).toBe(true);
  });

  test.each(['7 deg', '7 degree', '7 degrees', '7°'])('%s', (text) => {
    expect(parseSlope(text).to('percent').toFixed(6)).toBe('12.278456');
  });

  test('an angle has its symbol in lower case', () => {
    expectReason(() => parseSlope('7 DEG'), 'CASE');
  });

  test.each(['7 degs', '7 adeg', '7 gon', '7 ratios', '7 toString'])('%s is no slope', (text) => {
    const issue = expectFault(() => parseSlope(text), 'UNIT_UNKNOWN');
    expect(issue.params).toEqual({ text, position: 2, choices: 'ratio, percent, in/ft, mm/m' });
    expect(issue.message).toContain(`"${text.slice(2).toLowerCase()}" is not a slope`);
  });
});

describe('three digits after a decimal comma', () => {
  /** Units that are measured to three decimals. */
  const fine = new Set<Unit>([
    ...(['m', 'km', 'mi', 'm2', 'ha', 'acre', 'm3', 't', 'ton-us', 'ton-uk', 't/m3'] as const),
    ...(['ton-us/yd3', 'kN', 'kip', 'MPa', 'bar', 'h', 'm/s', 'm3/s'] as const),
  ]);
  const read = (unit: Unit, dimension: (typeof DIMENSIONS)[number], digits: string) =>
    dimension === 'length'
      ? parseLength(`${digits} ${unit}`, { surveyFoot: true, decimalComma: true })
      : parseMeasure(dimension as 'area', `${digits} ${unit}`, { decimalComma: true });

  for (const dimension of DIMENSIONS.filter((one) => one !== 'slope'))
    test.each(unitsOf(dimension) as readonly Unit[])(`${dimension} in %s`, (unit) => {
      for (const digits of ['0,500', '1,5', '1,5000', '1000,500', '12,34']) {
        const value = Number(digits.replace(',', '.'));
        expect(read(unit, dimension, digits).equals(fromNumber(value, unit) as never)).toBe(true);
      }
      if (fine.has(unit)) {
        expect(read(unit, dimension, '1,500').equals(fromNumber(1.5, unit) as never)).toBe(true);
        return;
      }
      for (const [digits, fraction] of [
        ['1,500', '1,5'],
        ['12,345', '12,3450'],
        ['123,450', '123,45'],
        ['10,000', '10'],
      ] as const) {
        const issue = expectReason(() => read(unit, dimension, digits), 'GROUPING');
        expect(issue.message).toContain(
          `Write ${digits.replace(',', '')} ${unit}, or ${fraction} ${unit}`,
        );
        const plain = read(unit, dimension, fraction);
        expect(plain.equals(fromNumber(Number(fraction.replace(',', '.')), unit) as never)).toBe(
          true,
        );
        expect(issue.params['position']).toBe(0);
      }
    });
});
