import { fault } from '../../errors.js';
import { float } from '../../input/field.js';
import { SEASON_DAYS } from '../../input/ground-ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor } from '../../sources/cautions.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { formulaStep, given, withWorking, type Step } from '../../working.js';
import { closedCoefficient, twoZoneCoefficient } from './frost-coefficient.js';
import {
  frostLayers,
  frozenLayers,
  heatLayers,
  isBelowLayers,
  sumsTo,
  type HeatLayer,
} from './frost-layers.js';
import { solveDepth } from './solve-depth.js';
import {
  checkDepthFields,
  depthSteps,
  refuseDry,
  type StefanDepth,
  type StefanDepthOptions,
} from './stefan-depth.js';
import { SURFACE_INDEX_FIELDS, surfaceIndex } from './surface-index.js';
import { asDegreeDays, temperature, type TemperatureInput } from './thermal-units.js';

/** A winter, the mean of the year, and the layers that frost goes through. */
export interface BerggrenDepthOptions extends StefanDepthOptions {
  /** Length of the freezing season in days, more than 0 and at most 366. */
  readonly seasonDays: number | string;
  /** Mean temperature of the year, 0 to 60 degrees C: the ground has it before the frost. */
  readonly meanAnnual: TemperatureInput;
}

const OPTIONS = shapeOf<BerggrenDepthOptions>()({
  ...SURFACE_INDEX_FIELDS,
  layers: frostLayers(true),
  seasonDays: float(SEASON_DAYS),
  meanAnnual: temperature,
});

/** How deep frost goes by the modified Berggren equation. */
export interface BerggrenDepth extends StefanDepth {
  /** Depth of frost, with the coefficient in closed form; 0 for no frost. */
  readonly depth: Length;
  /** Coefficient in closed form, 1 or less: depth over that of Stefan. */
  readonly coefficient: number;
  /** Depth with the coefficient of heat conduction in both zones: less deep in mild climates. */
  readonly twoZoneDepth: Length;
  /** That coefficient. */
  readonly twoZoneCoefficient: number;
  /** Thermal ratio alpha: how far the ground is above freezing over how far the surface is below. */
  readonly thermalRatio: number;
  /** Fusion parameter mu: heat of cooling over latent heat, over the depth of frost. */
  readonly fusionParameter: number;
  /**
   * True if a layer is beyond the equations of conductivity, frost goes below the layers given, or
   * the closed form is more than 10% off the depth of two zones, as it is in mild climates.
   */
  readonly extrapolated: boolean;
}

/** The closed form is called extrapolated when it is this far off the depth of two zones. */
const TOO_FAR = 0.1;

/**
 * Depth of frost by the modified Berggren equation, `X = lambda sqrt(172.8 k F / L)` in metres. The
 * coefficient counts the heat of the soil: `lambda = 1 / sqrt(1 + mu (alpha + 0.5))`, with
 * `alpha = v0 / vs`, `mu = C vs / L`, `v0` the mean of the year above freezing and `vs = F / t` the
 * mean of the surface below it. Through layers, C and L are means over the depth. The closed form
 * suits cold climates and goes too deep in mild ones; `twoZoneDepth` has the coefficient of the
 * conduction of heat in frozen and unfrozen ground, which a chart draws. It tends to Stefan's depth
 * as the soil holds less heat. A year's mean below freezing is refused: that is permafrost.
 *
 * @param options - see {@link BerggrenDepthOptions}
 * @returns depths of frost [length], coefficients, alpha, mu, what freezes of each layer, cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `TOO_MANY`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE` (also for permafrost and for ground too dry for the method), `UNKNOWN_CHOICE`,
 *   `WRONG_TYPE` and the reading codes
 * @source frost-depth-formula
 * @source frost-depth-terms
 * @source frost-depth-coefficient
 * @example
 * const frost = berggrenDepth({
 *   airIndex: { value: 600, unit: 'C-days' },
 *   surface: 'concrete',
 *   seasonDays: 110,
 *   meanAnnual: { value: 6, unit: 'C' },
 *   layers: [{ name: 'silt', soil: 'silt-clay', dryDensity: '1600 kg/m3', moisture: '0.2' }],
 * });
 * frost.depth.to('m').toFixed(2) //=> '0.99'
 * frost.twoZoneDepth.lessThan(frost.depth) //=> true
 */
export function berggrenDepth(options: BerggrenDepthOptions): BerggrenDepth {
  const read = readOptions(options, OPTIONS, checkDepthFields);
  if (read.meanAnnual < 0) {
    const message = 'below freezing all year: permafrost. This method is for ground that thaws';
    throw fault('OUT_OF_RANGE', message, {}, ['meanAnnual', 'value']);
  }
  const { index, step } = surfaceIndex(read);
  const layers = heatLayers(read.layers);
  refuseDry(layers);
  const winter = { index, vs: index / read.seasonDays, v0: read.meanAnnual };
  const closed = solveWith(layers, winter, closedCoefficient);
  const zones = solveWith(layers, winter, twoZoneCoefficient);
  const found = {
    depth: length(closed.depth, 'm'),
    coefficient: closed.coefficient,
    twoZoneDepth: length(zones.depth, 'm'),
    twoZoneCoefficient: zones.coefficient,
    thermalRatio: closed.alpha,
    fusionParameter: closed.mu,
    surfaceIndex: asDegreeDays(index),
    layers: frozenLayers(layers, closed.depth),
    extrapolated:
      layers.some((one) => one.extrapolated) ||
      isBelowLayers(layers, closed.depth) ||
      Math.abs(closed.depth - zones.depth) > TOO_FAR * zones.depth,
    cautions: cautionsFor('ground'),
  };
  return withWorking(found, () => [step, ...berggrenSteps(layers, winter, closed)]);
}

interface Winter {
  /** Index of the surface, in C-days. */
  readonly index: number;
  /** Mean of the surface below freezing, in degrees C. */
  readonly vs: number;
  /** Mean of the year above freezing, in degrees C. */
  readonly v0: number;
}

interface Solved {
  readonly depth: number;
  readonly coefficient: number;
  readonly alpha: number;
  readonly mu: number;
}

function solveWith(
  layers: readonly HeatLayer[],
  { index, vs, v0 }: Winter,
  coefficientOf: (mu: number, alpha: number) => number,
): Solved {
  if (index === 0) return { depth: 0, coefficient: 1, alpha: 0, mu: 0 };
  const alpha = v0 / vs;
  const muAt = (depth: number): number => {
    const { latent, capacity } = sumsTo(layers, depth);
    return latent === 0 ? 0 : (capacity * vs) / latent;
  };
  const needed = (depth: number): number => {
    const lambda = coefficientOf(muAt(depth), alpha);
    return sumsTo(layers, depth).index / (lambda * lambda);
  };
  const depth = solveDepth(needed, index);
  const mu = muAt(depth);
  return { depth, coefficient: coefficientOf(mu, alpha), alpha, mu };
}

function berggrenSteps(
  layers: readonly HeatLayer[],
  { index, vs, v0 }: Winter,
  { depth, coefficient, alpha, mu }: Solved,
): Step[] {
  if (index === 0) return [];
  const sums = sumsTo(layers, depth);
  return [
    formulaStep({
      title: 'Thermal ratio',
      formula: 'a = v0 / vs',
      given: [
        given('v0', 'mean of the year above freezing, in degrees C', v0),
        given('vs', 'mean of the surface below freezing, in degrees C', vs),
      ],
      result: given('a', 'thermal ratio', alpha),
      source: 'frost-depth-terms',
    }),
    formulaStep({
      title: 'Fusion parameter',
      formula: 'u = C * vs / L',
      given: [
        given('C', 'heat capacity, in kJ/(m3 K), mean over the depth', sums.capacity / depth),
        given('vs', 'mean of the surface below freezing, in degrees C', vs),
        given('L', 'latent heat, in kJ/m3, mean over the depth', sums.latent / depth),
      ],
      result: given('u', 'fusion parameter', mu),
      source: 'frost-depth-terms',
    }),
    formulaStep({
      title: 'Coefficient in closed form',
      formula: 'l = 1 / sqrt(1 + u * (a + 0.5))',
      given: [given('u', 'fusion parameter', mu), given('a', 'thermal ratio', alpha)],
      result: given('l', 'coefficient', coefficient),
      source: 'frost-depth-coefficient',
    }),
    ...depthSteps(layers, { index, depth, coefficient, procedure: 'berggrenDepth' }),
  ];
}
