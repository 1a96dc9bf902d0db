import { fault, type SettlineError } from '../errors.js';
import { unitsOf, type Dimension } from './catalogue.js';
import { unitEntry, type UnitEntry } from './engine.js';
import { shownText } from '../shown-text.js';
import { shown } from './shown.js';

/** Finds a unit of a dimension. Internal. */
export function entryOf(dimension: Dimension, unit: unknown): UnitEntry {
  const entry = typeof unit === 'string' ? unitEntry(unit) : undefined;
  if (entry === undefined) throw unknownUnit(unit, dimension);
  if (entry.dimension !== dimension) {
    throw fault(
      'DIMENSION_MISMATCH',
      `${entry.symbol} is a unit of ${entry.dimension}, not of ${dimension}`,
      { expected: dimension, got: entry.dimension, unit: entry.symbol },
    );
  }
  return entry;
}

/** Finds a unit of any dimension. Internal. */
export function anyEntryOf(unit: unknown): UnitEntry {
  const entry = typeof unit === 'string' ? unitEntry(unit) : undefined;
  if (entry === undefined) throw unknownUnit(unit);
  return entry;
}

function unknownUnit(unit: unknown, dimension?: Dimension): SettlineError {
  const text = typeof unit === 'string' ? shownText(unit) : typeof unit;
  if (typeof unit === 'string' && /^tons?$/i.test(unit)) {
    return fault(
      'UNIT_AMBIGUOUS',
      'a ton could be three units. Write t (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)',
      {
        unit,
      },
    );
  }
  if (dimension === undefined) {
    return fault('UNIT_UNKNOWN', `${shown(unit)} is not a unit this library knows`, { unit: text });
  }
  const choices = unitsOf(dimension).join(', ');
  const message = `${shown(unit)} is not a unit of ${dimension}. Use one of ${choices}`;
  return fault('UNIT_UNKNOWN', message, { unit: text, choices });
}
