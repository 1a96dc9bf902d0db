import { fault } from '../../errors.js';
import { quantity } from '../../input/field.js';
import { DEPTH } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { entry, lastOf } from '../../invariant.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { length, type LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import {
  formulaStep,
  given,
  procedureStep,
  withWorking,
  type Step,
  type Worked,
} from '../../working.js';
import {
  checkThicknesses,
  frostLayers,
  frozenLayers,
  heatLayers,
  isBelowLayers,
  partsTo,
  sumsTo,
  type FrostLayerInput,
  type FrozenLayer,
  type HeatLayer,
} from './frost-layers.js';
import { solveDepth } from './solve-depth.js';
import {
  checkSurface,
  SURFACE_INDEX_FIELDS,
  surfaceIndex,
  type SurfaceIndexOptions,
} from './surface-index.js';
import { asDegreeDays, type DegreeDays } from './thermal-units.js';

/** A winter and the layers that frost goes through. */
export interface StefanDepthOptions extends SurfaceIndexOptions {
  /** Layers from the top down; the last one goes down without end. */
  readonly layers: readonly FrostLayerInput[];
}

const OPTIONS = shapeOf<StefanDepthOptions>()({
  ...SURFACE_INDEX_FIELDS,
  layers: frostLayers(false),
});

/** Refuses a surface given twice or not at all, and layers without a thickness. Internal. */
export const checkDepthFields: Check<typeof OPTIONS> = (reader, { layers }, path, raw) => {
  checkSurface(reader, raw, path);
  checkThicknesses(reader, layers, path);
};

/** How deep frost goes by Stefan's equation. */
export interface StefanDepth extends Cautioned, Worked {
  /** Depth of frost; 0 for no frost. */
  readonly depth: Length;
  /** Freezing index of the surface. */
  readonly surfaceIndex: DegreeDays;
  /** How much of each layer freezes. */
  readonly layers: readonly FrozenLayer[];
  /** True if a layer is beyond the equations of conductivity, or frost goes below the layers given. */
  readonly extrapolated: boolean;
}

/**
 * Depth of frost by Stefan's equation, which counts the latent heat alone:
 * `X = sqrt(172.8 k F / L)` in metres, k in W/(m K), F in C-days, L in kJ/m3; through layers, each
 * takes `F = L d (R + d / (2 k)) / 86.4`, R being the resistance of those above. It goes deeper than
 * {@link berggrenDepth}. In floats; the depth is solved to the last float.
 *
 * @param options - see {@link StefanDepthOptions}
 * @returns depth of frost [length], index of the surface, what freezes of each layer, cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `TOO_MANY`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE` (also for ground too dry for the method), `UNKNOWN_CHOICE`, `WRONG_TYPE` and the
 *   reading codes
 * @source derived
 * @source surface-factors
 * @example
 * const clay = {
 *   name: 'clay',
 *   conductivity: { value: 2, unit: 'W/(m K)' },
 *   latentHeat: { value: 86400, unit: 'kJ/m3' },
 * } as const;
 * const winter = { airIndex: { value: 250, unit: 'C-days' }, surfaceFactor: 1 } as const;
 * stefanDepth({ ...winter, layers: [clay] }).depth.to('m').toFixed(6) //=> '1.000000'
 */
export function stefanDepth(options: StefanDepthOptions): StefanDepth {
  const read = readOptions(options, OPTIONS, checkDepthFields);
  const { index, step } = surfaceIndex(read);
  const layers = heatLayers(read.layers);
  refuseDry(layers);
  const depth = solveDepth((to) => sumsTo(layers, to).index, index);
  const found = {
    depth: length(depth, 'm'),
    surfaceIndex: asDegreeDays(index),
    layers: frozenLayers(layers, depth),
    extrapolated: layers.some((one) => one.extrapolated) || isBelowLayers(layers, depth),
    cautions: cautionsFor('ground'),
  };
  return withWorking(found, () => [
    step,
    ...depthSteps(layers, { index, depth, coefficient: null, procedure: 'stefanDepth' }),
  ]);
}

/** The last layer must have water: frost has no bottom in dry ground. Internal. */
export function refuseDry(layers: readonly HeatLayer[]): void {
  if (lastOf(layers).latent > 0) return;
  const message =
    'dry ground has no latent heat, so the method gives no depth. Give the last layer its moisture';
  throw fault('OUT_OF_RANGE', message, {}, ['layers', layers.length - 1]);
}

/** The working of a depth through one layer, or through many. Internal. */
export function depthSteps(
  layers: readonly HeatLayer[],
  of: {
    readonly index: number;
    readonly depth: number;
    /** Null for Stefan, who has none. */
    readonly coefficient: number | null;
    readonly procedure: 'stefanDepth' | 'berggrenDepth';
  },
): Step[] {
  const { index, depth, coefficient, procedure } = of;
  const [only, others] = [entry(layers, 0), layers.slice(1)];
  const lambda = coefficient === null ? [] : [given('l', 'coefficient', coefficient)];
  const fields = {
    title: 'Depth of frost',
    result: given('X', 'depth of frost, in m', depth),
    source: coefficient === null ? 'derived' : 'frost-depth-formula',
  } as const;
  const cold = given('F', 'freezing index of the surface, in C-days', index);
  if (others.length === 0) {
    const root = 'sqrt(172.8 * k * F / L)';
    return [
      formulaStep({
        ...fields,
        formula: coefficient === null ? `X = ${root}` : `X = l * ${root}`,
        given: [
          ...lambda,
          given('k', 'conductivity, in W/(m K)', only.k),
          cold,
          given('L', 'latent heat, in kJ/m3', only.latent),
        ],
      }),
    ];
  }
  return [
    procedureStep({
      ...fields,
      procedure,
      method: 'goes down until the layers have used up the index of the surface',
      given: [...lambda, cold],
    }),
    indexStep(layers, depth),
  ];
}

/** The index that the layers use up down to a depth. */
function indexStep(layers: readonly HeatLayer[], depth: number): Step {
  const parts = partsTo(layers, depth);
  return formulaStep({
    title: 'Index that the layers use up by their latent heat',
    formula: 'S = sum(L[i] * d[i] * (R[i] + d[i] / (2 * k[i]))) / 86.4',
    given: [
      given(
        'L',
        'latent heats, in kJ/m3',
        parts.map(({ layer }) => layer.latent),
      ),
      given(
        'd',
        'thicknesses that freeze, in m',
        parts.map(({ part }) => part),
      ),
      given(
        'R',
        'resistances above, in m2 K/W',
        parts.map(({ resistance }) => resistance),
      ),
      given(
        'k',
        'conductivities, in W/(m K)',
        parts.map(({ layer }) => layer.k),
      ),
    ],
    result: given('S', 'index used up, in C-days', sumsTo(layers, depth).index),
    source: 'derived',
  });
}

/** The layers, and a depth of frost or thaw. */
export interface StefanIndexOptions {
  /** Layers from the top down; the last one goes down without end. */
  readonly layers: readonly FrostLayerInput[];
  /** Depth to reach [length], more than 0 and at most 50 m. */
  readonly depth: LengthInput;
}

const INDEX_OPTIONS = shapeOf<StefanIndexOptions>()({
  layers: frostLayers(false),
  depth: quantity(DEPTH),
});

/** The index that takes frost or thaw to a depth. */
export interface StefanIndex extends Cautioned, Worked {
  /** Index of the surface. */
  readonly index: DegreeDays;
  /** True if a layer is beyond the equations of conductivity, or the depth is below the layers given. */
  readonly extrapolated: boolean;
}

/**
 * Index of the surface that takes frost to a depth, or thaw, by Stefan's equation: the inverse of
 * {@link stefanDepth}. For thaw give the conductivity of unfrozen soil.
 *
 * @param options - see {@link StefanIndexOptions}
 * @returns index of the surface in C-days, cautions
 * @throws `REQUIRED`, `CONFLICTING_FIELDS`, `EMPTY_LIST`, `TOO_MANY`, `NOT_POSITIVE`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @example
 * const soil = {
 *   name: 'sand',
 *   conductivity: { value: '2.6', unit: 'W/(m K)' },
 *   latentHeat: { value: 77000, unit: 'kJ/m3' },
 * } as const;
 * stefanIndex({ layers: [soil], depth: '0.6 m' }).index.value.toFixed(0) //=> '62'
 */
export function stefanIndex(options: StefanIndexOptions): StefanIndex {
  const read = readOptions(options, INDEX_OPTIONS, (reader, { layers: given }, path) => {
    checkThicknesses(reader, given, path);
  });
  const layers = heatLayers(read.layers);
  const depth = read.depth.toNumber('m');
  const { index } = sumsTo(layers, depth);
  const found = {
    index: asDegreeDays(index),
    extrapolated: layers.some((one) => one.extrapolated) || isBelowLayers(layers, depth),
    cautions: cautionsFor('ground'),
  };
  return withWorking(found, () => [indexStep(layers, depth)]);
}
