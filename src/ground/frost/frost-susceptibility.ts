import { exactlyOne } from '../../input/exactly-one.js';
import { choice, flag, number, optional } from '../../input/field.js';
import { PERCENT_FINER, PLASTICITY } from '../../input/ground-ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import {
  FROST_FINES,
  FROST_GROUP_LIMITS,
  FROST_SOILS,
  type FrostGroup,
  type FrostSoil,
} from '../../sources/frost-figures.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { Decimal40, type Decimal } from '../../units/decimal.js';
import { formulaStep, given, procedureStep, withWorking, type Worked } from '../../working.js';

/** A soil and its fines. */
export interface FrostSusceptibilityOptions {
  /** Kind of soil. */
  readonly soil: FrostSoil;
  /** Percent by mass finer than 0.02 mm, 0 to 100. Give this or `fines`. */
  readonly finer?: number | string;
  /** Percent by mass passing 0.075 mm (no. 200), 0 to 100; of gravel only. Give this or `finer`. */
  readonly fines?: number | string;
  /** True for sand of one grain size; of sand only. Default: false. */
  readonly isUniform?: boolean;
  /** Plasticity index; of clay only. */
  readonly plasticityIndex?: number | string;
}

const OPTIONS = shapeOf<FrostSusceptibilityOptions>()({
  soil: choice(FROST_SOILS),
  finer: optional(number(PERCENT_FINER)),
  fines: optional(number(PERCENT_FINER)),
  isUniform: optional(flag, false),
  plasticityIndex: optional(number(PLASTICITY)),
});

/** Whether frost heaves a soil. */
export type Susceptibility = 'not-susceptible' | 'possible' | 'susceptible';

/** How a soil takes frost. */
export interface FrostSusceptibility extends Cautioned, Worked {
  /** By the percent finer than 0.02 mm. */
  readonly susceptibility: Susceptibility;
  /** Frost group, from memory; null for clay without a plasticity index. */
  readonly group: FrostGroup | null;
  /** Percent finer than 0.02 mm that was used. */
  readonly finer: number;
  /** True if `finer` was estimated from fines past the 18% up to which the rule holds. */
  readonly extrapolated: boolean;
  /** What that means, in words. */
  readonly note: string;
}

/**
 * Whether frost heaves a soil, by the percent finer than 0.02 mm: from 3 it does, from 1.5 it may;
 * uniform sand only above 10. Frost heaves ground only if it has water and cold too. In gravel, about
 * half of what passes 0.075 mm is finer than 0.02 mm, while less than 18% passes. The frost group is
 * from memory.
 *
 * @param options - see {@link FrostSusceptibilityOptions}
 * @returns susceptibility, frost group, percent finer, cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `NEGATIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE`
 *   and the reading codes
 * @source frost-susceptibility
 * @source frost-fines
 * @source frost-groups
 * @example
 * frostSusceptibility({ soil: 'silt', finer: 40 }).group //=> 'F4'
 * const base = frostSusceptibility({ soil: 'gravel', fines: 5 });
 * base.finer //=> 2.5
 * base.susceptibility //=> 'possible'
 */
export function frostSusceptibility(options: FrostSusceptibilityOptions): FrostSusceptibility {
  const read = readOptions(options, OPTIONS, checkFields);
  const { soil, fines, isUniform } = read;
  const finer = read.finer ?? (fines ?? new Decimal40(0)).times(FROST_FINES.finerPerFines.value);
  const susceptibility = susceptibilityOf(finer, soil === 'sand' && isUniform);
  const found = {
    susceptibility,
    group: groupOf(read, finer),
    finer: finer.toNumber(),
    extrapolated: fines?.gte(FROST_FINES.maximumFines.value) ?? false,
    note: NOTES[susceptibility],
    cautions: cautionsFor('ground'),
  };
  return withWorking(found, () => [
    ...(fines === undefined
      ? []
      : [
          formulaStep({
            title: 'Share finer than 0.02 mm',
            formula: `f = ${FROST_FINES.finerPerFines.value} * p`,
            given: [given('p', 'percent passing 0.075 mm', fines)],
            result: given('f', 'percent finer than 0.02 mm', finer),
            source: 'frost-fines' as const,
          }),
        ]),
    procedureStep({
      title: 'Frost susceptibility',
      procedure: 'frostSusceptibility',
      method: 'finds the class in the list of percents finer than 0.02 mm',
      given: [given('f', 'percent finer than 0.02 mm', finer)],
      result: given('s', 'susceptibility', susceptibility),
      source: 'frost-susceptibility',
    }),
  ]);
}

const NOTES: Readonly<Record<Susceptibility, string>> = Object.freeze({
  'not-susceptible': 'Frost does not heave this soil. Keep fines out of it.',
  possible: 'Frost may heave this soil. Have it tested in a laboratory.',
  susceptible:
    'Frost heaves this soil where it finds water, and the thaw leaves it soft. Drain it, and keep traffic off while it thaws.',
});

function susceptibilityOf(finer: Decimal, isUniformSand: boolean): Susceptibility {
  if (isUniformSand)
    return finer.gt(FROST_FINES.uniformSand.value) ? 'susceptible' : 'not-susceptible';
  if (finer.gte(FROST_FINES.susceptible.value)) return 'susceptible';
  return finer.gte(FROST_FINES.possible.value) ? 'possible' : 'not-susceptible';
}

function groupOf(
  { soil, plasticityIndex }: Values<typeof OPTIONS>,
  finer: Decimal,
): FrostGroup | null {
  if (soil === 'silt' || soil === 'varved-clay') return 'F4';
  if (soil === 'clay') {
    if (plasticityIndex === undefined) return null;
    return plasticityIndex.gt(FROST_GROUP_LIMITS.clayIndex.value) ? 'F3' : 'F4';
  }
  const limits = FROST_GROUP_LIMITS[soil];
  return limits.find(({ upTo }) => upTo === null || finer.lte(upTo.value))?.group ?? null;
}

const checkFields: Check<typeof OPTIONS> = (reader, { soil, isUniform }, path, raw) => {
  exactlyOne(reader, raw, ['finer', 'fines'], [...path, 'finer']);
  if (soil !== undefined && soil !== 'gravel' && raw['fines'] !== undefined) {
    const message = 'the rule from fines is for gravel alone. Give finer';
    reader.fail('CONFLICTING_FIELDS', [...path, 'fines'], message);
  }
  if (soil !== undefined && soil !== 'clay' && raw['plasticityIndex'] !== undefined) {
    reader.fail('CONFLICTING_FIELDS', [...path, 'plasticityIndex'], 'only clay has one here');
  }
  if (soil !== undefined && soil !== 'sand' && isUniform === true) {
    const message = 'the rule for uniform grains is for sand alone. Leave it out';
    reader.fail('CONFLICTING_FIELDS', [...path, 'isUniform'], message);
  }
};
