import { formatFor } from '../../../units/format-for.js';
import { formatQuantity } from '../../../units/format-quantity.js';
import { printLength } from '../../../units/print-length.js';
import type { AnyQuantity, Flow, Length, Mass, Volume } from '../../../units/quantity.js';
import { inWords } from '../words/in-words.js';
import { lengthsOfSheet, type SheetLengths, type SheetSystem } from './lengths-of-sheet.js';
import { tapeOfSheet, type SheetTape } from './tape-of-sheet.js';

/** How a sheet writes its measures. Internal. */
export interface SheetUnits extends SheetLengths, SheetTape {
  readonly title: string;
  /** An elevation: 100.25 ft, 30.556 m. */
  readonly elevation: (length: Length) => string;
  /** Name of the unit of levels. */
  readonly levelUnit: string;
  /** The step they are rounded to. */
  readonly levelStep: string;
  readonly volume: (volume: Volume) => string;
  /** Name of the unit of those. */
  readonly volumeUnit: string;
  readonly mass: (mass: Mass) => string;
  /** Water to sprinkle: 95 gallons, 360 l. */
  readonly water: (water: Volume) => string;
  /** A flow of water: 22 gallons a minute, 83 l/min. */
  readonly flow: (flow: Flow) => string;
  /** The unit that stone is ordered by. */
  readonly orderVolume: 'yd3' | 'm3';
}

const US: SheetUnits = {
  ...lengthsOfSheet('us'),
  ...tapeOfSheet('us'),
  title: 'Feet and inches',
  elevation: (length) => printLength(length, { as: 'ft' }),
  levelUnit: 'ft',
  levelStep: '0.01 ft',
  volume: (volume) => inWords(formatQuantity(volume, { as: 'yd3' })),
  volumeUnit: 'cu yd',
  mass: (mass) => formatFor(mass, 'us'),
  water: (water) => inWords(formatQuantity(water, { as: 'gal-us', places: 0 })),
  flow: (flow) => inWords(formatFor(flow, 'us')),
  orderVolume: 'yd3',
};

const METRIC: SheetUnits = {
  ...lengthsOfSheet('metric'),
  ...tapeOfSheet('metric'),
  title: 'Metres and millimetres',
  elevation: (length) => printLength(length, { as: 'm' }),
  levelUnit: 'm',
  levelStep: '0.001 m',
  volume: (volume) => formatQuantity(volume, { as: 'm3' }),
  volumeUnit: 'm3',
  mass: (mass) => formatFor(mass, 'metric'),
  water: (water) => formatQuantity(water, { as: 'l', places: 0 }),
  flow: (flow) => formatFor(flow, 'metric'),
  orderVolume: 'm3',
};

/** The units of a system. Internal. */
export const unitsOfSheet = (system: SheetSystem): SheetUnits => (system === 'us' ? US : METRIC);

/** A quantity of any dimension in the marks of a sheet. Internal. */
export const measureText = (value: AnyQuantity, system: SheetSystem): string =>
  inWords(formatFor(value, system));
