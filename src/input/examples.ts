import type { Dimension } from '../units/catalogue.js';

/** What to write for a quantity whose range has no example. Internal. */
export const EXAMPLES: Readonly<Record<Dimension, string>> = Object.freeze({
  length: 'a length, such as "6 in" or { "value": 150, "unit": "mm" }',
  area: 'an area, such as "320 ft2" or { "value": 30, "unit": "m2" }',
  volume: 'a volume, such as "10 yd3" or { "value": 8, "unit": "m3" }',
  mass: 'a mass, such as "13 t" or { "value": 26000, "unit": "lb" }',
  density: 'a density, such as "3700 lb/yd3" or { "value": 2200, "unit": "kg/m3" }',
  force: 'a force, such as "13 lbf" or { "value": 60, "unit": "N" }',
  'line-weight': 'a weight per length, such as "1.2 g/m" or { "value": 0.012, "unit": "N/m" }',
  pressure: 'a pressure, such as "35 psi" or { "value": 240, "unit": "kPa" }',
  slope: 'a slope, such as "2%", "1:48" or "1/4 in per ft"',
  angle: 'an angle, such as "45 deg"',
  time: 'a time, such as "22 s" or { "value": 1.5, "unit": "h" }',
  speed: 'a speed, such as "20 m/min" or { "value": 3, "unit": "mph" }',
  flow: 'a flow, such as "120 l/min" or { "value": 0.35, "unit": "m3/h" }',
});
