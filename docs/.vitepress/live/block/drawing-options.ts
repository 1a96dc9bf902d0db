import type { DrawOptions } from 'settline/drawing';
import type { UnitSystem } from 'settline/units';
import type { JsonObject } from '../page/json-text.js';

const WIDE = 600;
const NARROWEST = 320;
const US_UNIT = /\d\s*(?:in|ft|yd|lb|gal)(?![a-z])|\d['"]/;

/** The system that somebody types in: US if any of their measures is. */
export const systemOf = (options: JsonObject): UnitSystem =>
  Object.values(options).some((value) => US_UNIT.test(JSON.stringify(value))) ? 'us' : 'metric';

/** How a drawing of the library is made for the room that there is. */
export const drawingOptions = (system: UnitSystem, width: number): DrawOptions => ({
  system,
  theme: 'screen',
  ...(width < WIDE ? { narrow: true, width: Math.max(width, NARROWEST) } : { width }),
});
