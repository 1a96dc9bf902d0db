import { fault } from '../../errors.js';
import { number, optional, quantity } from '../../input/field.js';
import {
  POROSITY,
  SOIL_MOISTURE,
  SPECIFIC_GRAVITY,
  VOID_RATIO,
  WATER_DENSITY,
} from '../../input/ground-ranges.js';
import { DENSITY, SHARE_OR_NONE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import type { DensityInput } from '../../units/construct.js';
import { Decimal40, type Decimal } from '../../units/decimal.js';
import type { Density } from '../../units/quantity.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';
import {
  followRelations,
  RELATIONS,
  type Known,
  type PhaseName,
  type Phases,
  type Used,
} from './phase-relations.js';
import { WATER } from './water-density.js';

/** Figures of one soil: three that do not follow from each other, or more that agree. */
export interface SoilPhasesOptions {
  /** Density in place, water included [density], more than 0 and at most 5 t/m3. */
  readonly wetDensity?: DensityInput;
  /** Density in place without its water [density], more than 0 and at most 5 t/m3. */
  readonly dryDensity?: DensityInput;
  /** Water over dry mass, a fraction 0 to 10. */
  readonly moisture?: number | string;
  /** Density of the solids over that of water, 1 to 5; 2.65 is usual for sand (from memory). */
  readonly specificGravity?: number | string;
  /** Volume of voids over that of solids, 0 to 20. */
  readonly voidRatio?: number | string;
  /** Volume of voids over the whole, a fraction 0 to 0.95. */
  readonly porosity?: number | string;
  /** Volume of water over that of voids, a fraction 0 to 1. */
  readonly saturation?: number | string;
  /** Density of water [density], more than 0 and at most 1300 kg/m3. Default: 1000 kg/m3. */
  readonly waterDensity?: DensityInput;
}

const OPTIONS = shapeOf<SoilPhasesOptions>()({
  wetDensity: optional(quantity(DENSITY)),
  dryDensity: optional(quantity(DENSITY)),
  moisture: optional(number(SOIL_MOISTURE)),
  specificGravity: optional(number(SPECIFIC_GRAVITY)),
  voidRatio: optional(number(VOID_RATIO)),
  porosity: optional(number(POROSITY)),
  saturation: optional(number(SHARE_OR_NONE)),
  waterDensity: optional(quantity(WATER_DENSITY), WATER),
});

/** Solids, water and air of a soil. */
export interface SoilPhases extends Worked {
  /** Density, water included. */
  readonly wetDensity: Density;
  /** Density without the water. */
  readonly dryDensity: Density;
  /** Density with all voids full of water. */
  readonly saturatedDensity: Density;
  /** Water over dry mass. */
  readonly moisture: number;
  /** Water over dry mass with all voids full. */
  readonly saturatedMoisture: number;
  /** Density of the solids over that of water. */
  readonly specificGravity: number;
  /** Volume of voids over that of solids. */
  readonly voidRatio: number;
  /** Volume of voids over the whole. */
  readonly porosity: number;
  /** Volume of water over that of voids; 0 for dry soil. */
  readonly saturation: number;
  /** Air voids over the whole volume. */
  readonly airVoids: number;
  /** Water that fills the voids, per volume. */
  readonly waterToSaturate: Density;
}

const NAMES: readonly PhaseName[] = [
  'wetDensity',
  'dryDensity',
  'moisture',
  'specificGravity',
  'voidRatio',
  'porosity',
  'saturation',
];

/** How far a figure that follows from others may be off the one given, as a share. */
const AGREES = '0.01';

/**
 * All figures of a soil from any that are enough: with d dry and m wet density over that of water,
 * `m = d (1 + w)`, `d = G / (1 + e)`, `n = e / (1 + e)`, `S e = w G`. Three figures that do not follow
 * from each other are enough, such as wet density, moisture and specific gravity. Moisture is water
 * over **dry** mass. More figures than needed must agree within 1 %. Counted to 40 digits; the
 * results are the nearest floats, and a saturation within 1e-12 of 1 is 1.
 *
 * @param options - see {@link SoilPhasesOptions}
 * @returns densities [density], moisture, specific gravity, void ratio, porosity, saturation, air voids,
 * water to saturate [density]
 * @throws `REQUIRED` if they are not enough, `CONFLICTING_FIELDS` if they contradict each other,
 *   `OUT_OF_RANGE` (more water than voids, or denser than solids, too), `NOT_POSITIVE`, `NEGATIVE`,
 *   `WRONG_TYPE` and the reading codes
 * @source derived
 * @example
 * const soil = soilPhases({ wetDensity: '1960 kg/m3', moisture: '0.12', specificGravity: '2.65' });
 * soil.dryDensity.to('kg/m3').toString() //=> '1750'
 * soil.voidRatio.toFixed(3) //=> '0.514'
 * soil.saturation.toFixed(3) //=> '0.618'
 */
export function soilPhases(options: SoilPhasesOptions): SoilPhases {
  const read = readOptions(options, OPTIONS);
  const water = read.waterDensity;
  const givenFigures = figuresOf(read);
  const { known, used } = followRelations(givenFigures);
  const phases = whenFull(requireAll(known, givenFigures));
  requireAgreement(phases, givenFigures);
  requirePossible(phases, givenFigures);
  const { specificGravity: solids, voidRatio: voids, saturation, porosity } = phases;
  const bulk = (value: Decimal): Density => water.times(value);
  const saturated = solids.plus(voids).dividedBy(voids.plus(1));
  const found = {
    wetDensity: read.wetDensity ?? bulk(phases.wetDensity),
    dryDensity: read.dryDensity ?? bulk(phases.dryDensity),
    saturatedDensity: bulk(saturated),
    moisture: phases.moisture.toNumber(),
    saturatedMoisture: voids.dividedBy(solids).toNumber(),
    specificGravity: solids.toNumber(),
    voidRatio: voids.toNumber(),
    porosity: porosity.toNumber(),
    saturation: saturation.toNumber(),
    airVoids: porosity.times(new Decimal40(1).minus(saturation)).toNumber(),
    waterToSaturate: bulk(saturated.minus(phases.wetDensity)),
  };
  return withWorking(found, () => used.map((one) => phaseStep(one, phases)));
}

/** The figures given, densities over that of water. */
function figuresOf(read: Values<typeof OPTIONS>): Known {
  const water = read.waterDensity;
  const known: Known = {};
  for (const name of NAMES) {
    const value = read[name];
    if (value === undefined) continue;
    known[name] = new Decimal40('dimension' in value ? value.dividedBy(water) : value);
  }
  return known;
}

function requireAll(known: Known, figures: Known): Phases {
  const missing = NAMES.filter((name) => known[name] === undefined);
  const [first] = missing;
  if (first === undefined) return known as Phases;
  const count = Object.keys(figures).length;
  const message = `${count === 0 ? 'no figures' : 'these figures'} are not enough. Give three that do not follow from each other, such as wet density, moisture and specific gravity`;
  throw fault('REQUIRED', message, { missing: missing.join(', ') }, [first]);
}

/** Saturation that is 1 but for the last digits of the figures given counts as 1. */
const whenFull = (phases: Phases): Phases =>
  phases.saturation.minus(1).abs().lt('1e-12') ? { ...phases, saturation: FULL } : phases;

const FULL = new Decimal40(1);

/** A figure given that follows from the others must be the one that follows. */
function requireAgreement(phases: Phases, figures: Known): void {
  for (const name of NAMES) {
    if (figures[name] === undefined) continue;
    for (const { gives, from, solve } of RELATIONS) {
      if (gives !== name) continue;
      const value = from.every((one) => phases[one].isFinite()) ? solve(phases) : null;
      if (value !== null) requireClose(name, phases[name], value);
    }
  }
}

function requireClose(name: PhaseName, isGiven: Decimal, follows: Decimal): void {
  const off = isGiven.minus(follows).abs();
  const size = follows.abs().plus(isGiven.abs()).dividedBy(2);
  if (off.lte(size.times(AGREES)) || off.lt('1e-30')) return;
  const shown = follows.toSignificantDigits(4).toString();
  const what =
    name === 'wetDensity' || name === 'dryDensity' ? `${shown} times that of water` : shown;
  const message = `does not agree with the other figures, which make it ${what}. Leave one of them out`;
  throw fault('CONFLICTING_FIELDS', message, { follows: shown }, [name]);
}

/** Refuses soil that cannot be: more water than voids, solids lighter than the soil. */
function requirePossible(phases: Phases, figures: Known): void {
  const at = (...names: readonly PhaseName[]): readonly PhaseName[] => {
    const [first = 'moisture'] = [...names, ...NAMES].filter((name) => figures[name] !== undefined);
    return [first];
  };
  if (phases.voidRatio.isNegative() && !phases.voidRatio.abs().lt('1e-30')) {
    const message =
      'the soil is denser than its solids. Check the density and the specific gravity';
    throw fault('OUT_OF_RANGE', message, {}, at('dryDensity', 'wetDensity'));
  }
  if (phases.moisture.isNegative()) {
    const message = 'the wet density is below the dry density. Check which is which';
    throw fault('OUT_OF_RANGE', message, {}, at('wetDensity'));
  }
  if (phases.saturation.gt(1)) {
    const percent = phases.saturation.times(100).toFixed(1);
    const message = `there is more water than the voids hold: saturation is ${percent}%. Check moisture, density and specific gravity`;
    throw fault('OUT_OF_RANGE', message, { percent }, at('moisture', 'wetDensity'));
  }
  if (phases.specificGravity.lt(1) || phases.specificGravity.gt(5)) {
    const shown = phases.specificGravity.toSignificantDigits(4).toString();
    const message = `these figures make the specific gravity of the solids ${shown}; soil has 1 to 5. Check the digits and the units`;
    throw fault('OUT_OF_RANGE', message, { got: shown }, at('dryDensity', 'wetDensity'));
  }
}

const SYMBOLS: Readonly<Record<PhaseName, readonly [symbol: string, name: string]>> = {
  wetDensity: ['m', 'wet density over that of water'],
  dryDensity: ['d', 'dry density over that of water'],
  moisture: ['w', 'moisture of dry mass'],
  specificGravity: ['G', 'specific gravity of the solids'],
  voidRatio: ['e', 'void ratio'],
  porosity: ['n', 'porosity'],
  saturation: ['S', 'saturation'],
};

function phaseStep({ relation, value }: Used, phases: Phases): Step {
  const input = (name: PhaseName, of: Decimal) => given(...SYMBOLS[name], of);
  return formulaStep({
    title: `From ${relation.from.map((name) => SYMBOLS[name][1]).join(', ')}`,
    formula: relation.formula,
    given: relation.from.map((name) => input(name, phases[name])),
    result: input(relation.gives, value),
    source: 'derived',
  });
}
