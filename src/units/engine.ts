import configureMeasurements, { type Measure, type Unit as EngineUnit } from 'convert-units';
import { UNITS, SI_UNIT, DIMENSIONS, type Dimension, type Unit } from './catalogue.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  type Ratio,
} from './ratio.js';
import { readWritten } from './read-number.js';

/**
 * The conversion engine: `convert-units` with the exact pairs of the catalogue, in exact ratios of
 * whole numbers. Each measure is one system, so the engine never uses its own rounded ratios. It
 * derives each factor once; after that a conversion is one multiplication.
 */
type EngineValue = string | number | Ratio;

const toRatio = (value: EngineValue): Ratio =>
  typeof value === 'object' ? value : readWritten(value);

/** The arithmetic that the engine calculates with. */
const exactArithmetic = {
  create: toRatio,
  add: (a: EngineValue, b: EngineValue) => addRatios(toRatio(a), toRatio(b)),
  sub: (a: EngineValue, b: EngineValue) => addRatios(toRatio(a), negateRatio(toRatio(b))),
  mul: (a: EngineValue, b: EngineValue) => multiplyRatios(toRatio(a), toRatio(b)),
  div: (a: EngineValue, b: EngineValue) => divideRatios(toRatio(a), toRatio(b)),
  lt: (a: EngineValue, b: EngineValue) => compareRatios(toRatio(a), toRatio(b)) < 0,
  lte: (a: EngineValue, b: EngineValue) => compareRatios(toRatio(a), toRatio(b)) <= 0,
  gt: (a: EngineValue, b: EngineValue) => compareRatios(toRatio(a), toRatio(b)) > 0,
  gte: (a: EngineValue, b: EngineValue) => compareRatios(toRatio(a), toRatio(b)) >= 0,
};

type Engine = ReturnType<typeof buildEngine>;
let engine: Engine | undefined;

function buildEngine() {
  const measures = {} as Record<Dimension, Measure<'exact', Unit>>;
  for (const dimension of DIMENSIONS) {
    const units: Partial<Record<Unit, EngineUnit>> = {};
    for (const [symbol, { num, den, singular, plural }] of Object.entries(UNITS[dimension])) {
      units[symbol as Unit] = Object.freeze({
        name: { singular, plural },
        to_anchor: { numerator: num, denominator: den },
      });
    }
    measures[dimension] = { systems: { exact: Object.freeze(units) } };
  }
  return configureMeasurements<Dimension, 'exact', Unit, Ratio>(measures, exactArithmetic);
}

/** A unit: its dimension and its exact factor to SI. 1 unit is `exact` SI units. */
export interface UnitEntry {
  readonly symbol: Unit;
  readonly dimension: Dimension;
  readonly exact: Ratio;
}

const entries = new Map<string, UnitEntry>();

/** Looks up a unit symbol; undefined if the catalogue has no such unit. */
export function unitEntry(symbol: string): UnitEntry | undefined {
  return entries.get(symbol) ?? deriveEntry(symbol);
}

function deriveEntry(symbol: string): UnitEntry | undefined {
  const dimension = DIMENSIONS.find((candidate) => Object.hasOwn(UNITS[candidate], symbol));
  if (dimension === undefined) return undefined;
  engine ??= buildEngine();
  const exact = engine(1).from(symbol).to(SI_UNIT[dimension]);
  const entry = Object.freeze({ symbol: symbol as Unit, dimension, exact });
  entries.set(symbol, entry);
  return entry;
}
