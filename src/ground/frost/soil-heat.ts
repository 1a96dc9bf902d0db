import { fault } from '../../errors.js';
import { choice, number, quantity } from '../../input/field.js';
import { DENSITY, FRACTION } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import {
  CONDUCTIVITY,
  CONDUCTIVITY_RANGE,
  SOIL_HEAT,
  THERMAL_SOILS,
  type ThermalSoil,
} from '../../sources/frost-figures.js';
import { referenceQuantity } from '../../reference-quantity.js';
import type { DensityInput } from '../../units/construct.js';
import type { Density } from '../../units/quantity.js';
import { formulaStep, given, withWorking, type Step, type Worked } from '../../working.js';
import {
  asConductivity,
  asHeatCapacity,
  asVolumeHeat,
  BTU_CONDUCTIVITY,
  BTU_PER_POUND,
  type Conductivity,
  type HeatCapacity,
  type VolumeHeat,
} from './thermal-units.js';

/** A soil or a base, its dry density and its moisture. */
export interface SoilHeatOptions {
  /** `sandy` for sand, gravel and crushed stone; `silt-clay` for fine-grained soil. */
  readonly soil: ThermalSoil;
  /** Dry density [density], more than 0 and at most 5 t/m3. */
  readonly dryDensity: DensityInput;
  /** Water over dry mass, a fraction 0 to 1. */
  readonly moisture: number | string;
}

const OPTIONS = shapeOf<SoilHeatOptions>()({
  soil: choice(THERMAL_SOILS),
  dryDensity: quantity(DENSITY),
  moisture: number(FRACTION),
});

/** How a soil conducts and holds heat. */
export interface SoilHeat extends Worked {
  /** Conductivity when frozen. */
  readonly frozen: Conductivity;
  /** Conductivity when not frozen. */
  readonly unfrozen: Conductivity;
  /** Mean of the two: what `frostDepth` takes. */
  readonly conductivity: Conductivity;
  /** Latent heat of the water in it; 0 for dry soil. */
  readonly latentHeat: VolumeHeat;
  /** Heat capacity, mean of frozen and unfrozen. */
  readonly heatCapacity: HeatCapacity;
  /** True if density or moisture is beyond what the equations were compared with. */
  readonly extrapolated: boolean;
}

/**
 * Conductivity, latent heat and heat capacity of soil by dry density g [lb/ft3] and moisture w
 * [percent]. Sandy soil: frozen `0.076 10^(0.013 g) + 0.032 10^(0.0146 g) w`, unfrozen
 * `(0.7 log w + 0.4) 10^(0.01 g)`; silt and clay: frozen `0.01 10^(0.022 g) + 0.085 10^(0.008 g) w`,
 * unfrozen `(0.9 log w - 0.2) 10^(0.01 g)`, in Btu in / (h ft2 F). Latent heat `144 g w`, heat
 * capacity `g (0.17 + 0.75 w)`, w a fraction. The equations are from memory. They hold from 1% of
 * moisture in sand and 7% in silt and clay, from 120 to 130 and from 90 to 120 lb/ft3; beyond,
 * `extrapolated` is true. Real soils are often off by a quarter.
 *
 * @param options - see {@link SoilHeatOptions}
 * @returns conductivities, latent heat and heat capacity in SI units
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` (also if so dry that the equation
 *   gives no conductivity), `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source conductivity-equations
 * @source latent-heat
 * @source frost-depth-coefficient
 * @example
 * const silt = soilHeat({ soil: 'silt-clay', dryDensity: '100 lb/ft3', moisture: '0.20' });
 * silt.frozen.value.toFixed(1) //=> '1.8'
 * silt.unfrozen.value.toFixed(1) //=> '1.4'
 * Math.round(silt.latentHeat.value / 1000) //=> 107
 */
export function soilHeat(options: SoilHeatOptions): SoilHeat {
  const read = readOptions(options, OPTIONS);
  const pounds = read.dryDensity.toNumber('lb/ft3');
  const moisture = read.moisture.toNumber();
  const frozen = conductivityOf(read.soil, 'frozen', { pounds, percent: 100 * moisture });
  const unfrozen = conductivityOf(read.soil, 'unfrozen', { pounds, percent: 100 * moisture });
  if (!(unfrozen > 0) || !(frozen > 0)) {
    const message = 'too dry for the equation of conductivity. Give the conductivity yourself';
    throw fault('OUT_OF_RANGE', message, {}, ['moisture']);
  }
  const found = {
    frozen: asConductivity(frozen),
    unfrozen: asConductivity(unfrozen),
    conductivity: asConductivity((frozen + unfrozen) / 2),
    latentHeat: asVolumeHeat(latentHeatOf(read.dryDensity, moisture)),
    heatCapacity: asHeatCapacity(heatCapacityOf(read.dryDensity, moisture)),
    extrapolated: isBeyond(read),
  };
  return withWorking(found, () => heatSteps(read, found));
}

interface State {
  readonly pounds: number;
  readonly percent: number;
}

/** W/(m K) from the equation in Btu in / (h ft2 F). */
function conductivityOf(
  soil: ThermalSoil,
  state: 'frozen' | 'unfrozen',
  { pounds, percent }: State,
): number {
  const figures = CONDUCTIVITY[soil][state];
  const [a, b, c, d] = [figures.a, figures.b, figures.c, figures.d].map(({ value }) =>
    Number(value),
  );
  const inches =
    state === 'frozen'
      ? times(a, tenTo(times(b, pounds))) + times(c, tenTo(times(d, pounds))) * percent
      : (times(a, Math.log10(percent)) + Number(b)) * tenTo(times(c, pounds));
  return (inches / 12) * BTU_CONDUCTIVITY;
}

const times = (a = 0, b: number): number => a * b;
const tenTo = (power: number): number => Math.exp(power * Math.LN10);

/** Latent heat of the water in soil, in kJ/m3. */
const latentHeatOf = (dryDensity: Density, moisture: number): number =>
  Number(SOIL_HEAT.latentPerPound.value) * BTU_PER_POUND * dryDensity.toNumber('kg/m3') * moisture;

/** Heat capacity of soil, in kJ/(m3 K): Btu/(lb F) is 4.1868 kJ/(kg K). */
const heatCapacityOf = (dryDensity: Density, moisture: number): number =>
  (Number(SOIL_HEAT.drySoil.value) + Number(SOIL_HEAT.ofWater.value) * moisture) *
  BTU_PER_POUND *
  (9 / 5) *
  dryDensity.toNumber('kg/m3');

function isBeyond({ soil, dryDensity, moisture }: Values<typeof OPTIONS>): boolean {
  const range = CONDUCTIVITY_RANGE[soil];
  return (
    moisture.lt(range.moisture.value) ||
    dryDensity.lessThan(referenceQuantity('density', range.minimumDryDensity)) ||
    dryDensity.greaterThan(referenceQuantity('density', range.maximumDryDensity))
  );
}

const signed = (value: string): string =>
  value.startsWith('-') ? `- ${value.slice(1)}` : `+ ${value}`;

function heatSteps(
  { soil, dryDensity, moisture }: Values<typeof OPTIONS>,
  { frozen, unfrozen, conductivity, latentHeat, heatCapacity }: Omit<SoilHeat, 'working'>,
): Step[] {
  const { frozen: f, unfrozen: u } = CONDUCTIVITY[soil];
  const inputs = [
    given('g', 'dry density, in lb/ft3', dryDensity.to('lb/ft3')),
    given('w', 'moisture of dry mass, in percent', moisture.times(100)),
  ];
  const state = (title: string, formula: string, result: number): Step =>
    formulaStep({
      title,
      formula,
      given: [...inputs, given('q', 'W/(m K) in a Btu in / (h ft2 F)', BTU_CONDUCTIVITY / 12)],
      result: given('k', 'conductivity, in W/(m K)', result),
      source: 'conductivity-equations',
    });
  const parts = [
    given('d', 'dry density, in kg/m3', dryDensity.to('kg/m3')),
    given('w', 'moisture of dry mass', moisture),
  ];
  return [
    state(
      'Conductivity when frozen',
      `k = q * (${f.a.value} * 10^(${f.b.value} * g) + ${f.c.value} * 10^(${f.d.value} * g) * w)`,
      frozen.value,
    ),
    state(
      'Conductivity when not frozen',
      `k = q * (${u.a.value} * log10(w) ${signed(u.b.value)}) * 10^(${u.c.value} * g)`,
      unfrozen.value,
    ),
    formulaStep({
      title: 'Mean conductivity',
      formula: 'k = (kf + ku) / 2',
      given: [given('kf', 'frozen', frozen.value), given('ku', 'unfrozen', unfrozen.value)],
      result: given('k', 'conductivity, in W/(m K)', conductivity.value),
      source: 'derived',
    }),
    formulaStep({
      title: 'Latent heat of the water in the soil',
      formula: 'L = h * d * w',
      given: [
        given(
          'h',
          'latent heat of water, in kJ/kg',
          Number(SOIL_HEAT.latentPerPound.value) * BTU_PER_POUND,
        ),
        ...parts,
      ],
      result: given('L', 'latent heat, in kJ/m3', latentHeat.value),
      source: 'latent-heat',
    }),
    formulaStep({
      title: 'Heat capacity of the soil',
      formula: `C = c * d * (${SOIL_HEAT.drySoil.value} + ${SOIL_HEAT.ofWater.value} * w)`,
      given: [
        given('c', 'heat capacity of water, in kJ/(kg K)', (BTU_PER_POUND * 9) / 5),
        ...parts,
      ],
      result: given('C', 'heat capacity, in kJ/(m3 K)', heatCapacity.value),
      source: 'frost-depth-coefficient',
    }),
  ];
}
