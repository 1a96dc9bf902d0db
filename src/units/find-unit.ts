import { fault } from '../errors.js';
import { unitsOf, type Dimension } from './catalogue.js';
import { unitEntry, type UnitEntry } from './engine.js';

/** Finds a unit and makes sure that it is of the dimension. */
export function entryOf(dimension: Dimension, unit: unknown): UnitEntry {
  const entry = typeof unit === 'string' ? unitEntry(unit) : undefined;
  if (entry === undefined) throw unknownUnit(dimension, unit);
  if (entry.dimension !== dimension) {
    throw fault(
      'DIMENSION_MISMATCH',
      `${entry.symbol} is a unit of ${entry.dimension}, not of ${dimension}`,
      { expected: dimension, got: entry.dimension, unit: entry.symbol },
    );
  }
  return entry;
}

function unknownUnit(dimension: Dimension, unit: unknown) {
  const text = typeof unit === 'string' ? JSON.stringify(unit) : typeof unit;
  const choices = unitsOf(dimension).join(', ');
  if (typeof unit === 'string' && /^tons?$/i.test(unit)) {
    return fault('UNIT_AMBIGUOUS', 'which ton? write t (tonne), ton-us or ton-uk', { unit });
  }
  return fault('UNIT_UNKNOWN', `${text} is no unit of ${dimension}; use one of ${choices}`, {
    unit: text,
    choices,
  });
}
