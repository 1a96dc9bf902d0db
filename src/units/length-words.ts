import { capital } from '../capital.js';
import type { LengthUnit } from './catalogue.js';

/** Words and abbreviations of units, any case. */
const WORDS: Readonly<Record<string, LengthUnit>> = Object.freeze({
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  in: 'in',
  inch: 'in',
  inches: 'in',
  yd: 'yd',
  yds: 'yd',
  yard: 'yd',
  yards: 'yd',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  kilometre: 'km',
  kilometres: 'km',
  kilometer: 'km',
  kilometers: 'km',
  mi: 'mi',
  mile: 'mi',
  miles: 'mi',
  usft: 'ft-us',
  'us-ft': 'ft-us',
  'us ft': 'ft-us',
  'ft-us': 'ft-us',
});

/** SI symbols, whose case matters. */
const SYMBOLS: Readonly<Record<string, LengthUnit>> = Object.freeze({
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  km: 'km',
});

type Found = LengthUnit | 'wrong-case' | undefined;

/** The usual forms of a word: lower case, capitalised, upper case. */
const USUAL: ReadonlyMap<string, LengthUnit> = new Map([
  ...Object.entries(WORDS).flatMap(([word, unit]) =>
    [word, capital(word), word.toUpperCase()].map((form) => [form, unit] as const),
  ),
  ...Object.entries(SYMBOLS),
]);

/**
 * The unit that a word means; `'wrong-case'` for `MM` or `M`; undefined for no unit of length.
 * Internal.
 */
export function lengthWord(word: string): Found {
  return USUAL.get(word) ?? lookUp(word);
}

function lookUp(word: string): Found {
  const lower = word.toLowerCase();
  if (Object.hasOwn(SYMBOLS, lower)) return 'wrong-case';
  return Object.hasOwn(WORDS, lower) ? WORDS[lower] : undefined;
}
