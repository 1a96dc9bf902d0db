import { UNITS, type Dimension, type Unit } from './catalogue.js';

/** Words for units besides the symbols of the catalogue, in lower case. */
const WORDS: Readonly<Record<Exclude<Dimension, 'length' | 'slope'>, Record<string, Unit>>> = {
  area: {
    'sq mm': 'mm2',
    'sq cm': 'cm2',
    'sq m': 'm2',
    'square metre': 'm2',
    'square metres': 'm2',
    'square meter': 'm2',
    'square meters': 'm2',
    hectare: 'ha',
    hectares: 'ha',
    'sq in': 'in2',
    'square inch': 'in2',
    'square inches': 'in2',
    'sq ft': 'ft2',
    sqft: 'ft2',
    'square foot': 'ft2',
    'square feet': 'ft2',
    'sq yd': 'yd2',
    'square yard': 'yd2',
    'square yards': 'yd2',
    acres: 'acre',
  },
  volume: {
    L: 'l',
    litre: 'l',
    litres: 'l',
    liter: 'l',
    liters: 'l',
    'cu m': 'm3',
    'cubic metre': 'm3',
    'cubic metres': 'm3',
    'cubic meter': 'm3',
    'cubic meters': 'm3',
    'cu in': 'in3',
    'cubic inch': 'in3',
    'cubic inches': 'in3',
    'cu ft': 'ft3',
    'cubic foot': 'ft3',
    'cubic feet': 'ft3',
    'cu yd': 'yd3',
    'cubic yard': 'yd3',
    'cubic yards': 'yd3',
    'us gal': 'gal-us',
    'us gallon': 'gal-us',
    'us gallons': 'gal-us',
  },
  mass: {
    gram: 'g',
    grams: 'g',
    kilogram: 'kg',
    kilograms: 'kg',
    tonne: 't',
    tonnes: 't',
    'metric ton': 't',
    'metric tons': 't',
    ounce: 'oz',
    ounces: 'oz',
    lbs: 'lb',
    pound: 'lb',
    pounds: 'lb',
    'us ton': 'ton-us',
    'us tons': 'ton-us',
    'short ton': 'ton-us',
    'short tons': 'ton-us',
    'long ton': 'ton-uk',
    'long tons': 'ton-uk',
  },
  density: {
    pcf: 'lb/ft3',
    'lb/cu ft': 'lb/ft3',
    'lb per ft3': 'lb/ft3',
    'lb per cubic foot': 'lb/ft3',
    'pounds per cubic foot': 'lb/ft3',
    'lb/cu yd': 'lb/yd3',
    'lb per yd3': 'lb/yd3',
    'lb per cubic yard': 'lb/yd3',
    'pounds per cubic yard': 'lb/yd3',
    'kg per m3': 'kg/m3',
    't per m3': 't/m3',
    'short tons/yd3': 'ton-us/yd3',
    'short tons per yd3': 'ton-us/yd3',
    'short tons per cubic yard': 'ton-us/yd3',
  },
  force: {
    newton: 'N',
    newtons: 'N',
    kips: 'kip',
  },
  'line-weight': {
    'g per m': 'g/m',
    'kg per m': 'kg/m',
    'lb per ft': 'lb/ft',
    plf: 'lb/ft',
    'lbf per ft': 'lbf/ft',
    'N per m': 'N/m',
  },
  pressure: {
    'lbf/in2': 'psi',
    psf: 'lbf/ft2',
    'N/mm2': 'MPa',
  },
  angle: {
    '°': 'deg',
    degree: 'deg',
    degrees: 'deg',
    radian: 'rad',
    radians: 'rad',
  },
  time: {
    sec: 's',
    secs: 's',
    second: 's',
    seconds: 's',
    mins: 'min',
    minute: 'min',
    minutes: 'min',
    hr: 'h',
    hrs: 'h',
    hour: 'h',
    hours: 'h',
  },
  speed: {
    'm per min': 'm/min',
    'metres per minute': 'm/min',
    'meters per minute': 'm/min',
    'km per h': 'km/h',
    'ft per min': 'ft/min',
    'feet per minute': 'ft/min',
    fpm: 'ft/min',
    'miles per hour': 'mph',
  },
  flow: {
    'm3 per h': 'm3/h',
    'm3 per hour': 'm3/h',
    'cubic metres per hour': 'm3/h',
    'cubic meters per hour': 'm3/h',
    'litres per minute': 'l/min',
    'liters per minute': 'l/min',
    'l per min': 'l/min',
    'cu ft/h': 'ft3/h',
    'cu yd/h': 'yd3/h',
    'yd3 per hour': 'yd3/h',
    'cubic yards per hour': 'yd3/h',
    gpm: 'gal-us/min',
    'us gal/min': 'gal-us/min',
  },
};

/** Names that mean more than one unit, and the choices to name instead. */
const AMBIGUOUS: Readonly<Record<string, string>> = {
  ton: 't (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)',
  tons: 't (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)',
  'ton/yd3': 'ton-us/yd3 or t/m3',
  'tons/yd3': 'ton-us/yd3 or t/m3',
  'ton/m3': 't/m3',
  'tons/m3': 't/m3',
  gal: 'gal-us or l',
  gallon: 'gal-us or l',
  gallons: 'gal-us or l',
  'gal/min': 'gal-us/min or l/min',
};

/** The meaning of a unit's text. */
export type MeasureWord =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'ambiguous'; readonly choices: string }
  | { readonly kind: 'wrong-case' }
  | { readonly kind: 'unknown' };

/** Finds the unit of a dimension that a piece of text names. */
export function measureWord(
  dimension: Exclude<Dimension, 'length' | 'slope'>,
  text: string,
): MeasureWord {
  const plain = text.replaceAll('²', '2').replaceAll('³', '3').replace(/\.$/, '');
  const lower = plain.toLowerCase();
  if (Object.hasOwn(UNITS[dimension], plain)) return { kind: 'unit', unit: plain as Unit };
  const words = WORDS[dimension];
  const unit = own(words, plain) ?? own(words, lower);
  if (unit !== undefined) return { kind: 'unit', unit };
  const choices = own(AMBIGUOUS, lower);
  if (choices !== undefined) return { kind: 'ambiguous', choices };
  const symbols = Object.keys(UNITS[dimension]);
  const isMiscased = symbols.some((symbol) => symbol.toLowerCase() === lower);
  return isMiscased ? miscased(dimension, lower) : { kind: 'unknown' };
}

/** Case does not matter in US customary symbols. It does in SI symbols (`mN` is not `MN`). */
function miscased(dimension: Dimension, lower: string): MeasureWord {
  return /(?:ft|in|yd|lb|oz|acre|ton|psi|kip|gal|mph)/.test(lower) &&
    Object.hasOwn(UNITS[dimension], lower)
    ? { kind: 'unit', unit: lower as Unit }
    : { kind: 'wrong-case' };
}

function own<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
