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
  usft: 'ft-us',
  'us-ft': 'ft-us',
  'us ft': 'ft-us',
  'ft-us': 'ft-us',
});

/** SI symbols, in their one right case. */
const SYMBOLS: Readonly<Record<string, LengthUnit>> = Object.freeze({
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  km: 'km',
});

/** The unit a word stands for; `'wrong-case'` for `MM` or `M`; undefined for no unit of length. */
export function lengthWord(word: string): LengthUnit | 'wrong-case' | undefined {
  if (Object.hasOwn(SYMBOLS, word)) return SYMBOLS[word];
  const lower = word.toLowerCase();
  if (Object.hasOwn(SYMBOLS, lower)) return 'wrong-case';
  return Object.hasOwn(WORDS, lower) ? WORDS[lower] : undefined;
}
