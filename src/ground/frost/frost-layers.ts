import { choice, list, number, object, optional, quantity, text } from '../../input/field.js';
import { DENSITY, FRACTION, THICKNESS } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Check, type Values } from '../../input/shape.js';
import type { FieldPath } from '../../errors.js';
import { THERMAL_SOILS, type ThermalSoil } from '../../sources/frost-figures.js';
import type { DensityInput, LengthInput } from '../../units/construct.js';
import { length } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { soilHeat } from './soil-heat.js';
import {
  conductivity,
  heatCapacity,
  volumeHeat,
  type ConductivityInput,
  type HeatCapacityInput,
  type VolumeHeatInput,
} from './thermal-units.js';

/** A layer that frost goes through: a soil with density and moisture, or its heat figures. */
export interface FrostLayerInput {
  /** What the crew calls it. */
  readonly name: string;
  /**
   * Thickness [length], more than 0 and at most 5 m. Only the last layer may leave it out; it then
   * goes down without end.
   */
  readonly thickness?: LengthInput;
  /** `sandy` or `silt-clay`, with dry density and moisture; see {@link soilHeat}. */
  readonly soil?: ThermalSoil;
  /** Dry density [density], more than 0 and at most 5 t/m3; with `soil`. */
  readonly dryDensity?: DensityInput;
  /** Water over dry mass, a fraction 0 to 1; with `soil`. */
  readonly moisture?: number | string;
  /** Conductivity, mean of frozen and unfrozen, in place of `soil`. */
  readonly conductivity?: ConductivityInput;
  /** Latent heat of its water, in place of `soil`; 0 for a dry layer. */
  readonly latentHeat?: VolumeHeatInput;
  /** Heat capacity, in place of `soil`; `berggrenDepth` needs it. */
  readonly heatCapacity?: HeatCapacityInput;
}

const LAYER = shapeOf<FrostLayerInput>()({
  name: text(),
  thickness: optional(quantity(THICKNESS)),
  soil: optional(choice(THERMAL_SOILS)),
  dryDensity: optional(quantity(DENSITY)),
  moisture: optional(number(FRACTION)),
  conductivity: optional(conductivity),
  latentHeat: optional(volumeHeat),
  heatCapacity: optional(heatCapacity),
});

const BY_SOIL = ['dryDensity', 'moisture'] as const;
const BY_HEAT = ['conductivity', 'latentHeat', 'heatCapacity'] as const;

const checkLayer =
  (needsCapacity: boolean): Check<typeof LAYER> =>
  (reader, _, path, raw) => {
    const isSoil = raw['soil'] !== undefined;
    const needed = isSoil ? BY_SOIL : BY_HEAT.slice(0, needsCapacity ? 3 : 2);
    const barred = isSoil ? BY_HEAT : BY_SOIL;
    for (const field of needed) {
      if (raw[field] !== undefined) continue;
      reader.fail(
        'REQUIRED',
        [...path, field],
        'missing. Give soil, dryDensity and moisture, or the heat figures',
      );
    }
    for (const field of barred) {
      if (raw[field] === undefined) continue;
      reader.fail(
        'CONFLICTING_FIELDS',
        [...path, field],
        'give the soil or the heat figures, not both',
      );
    }
  };

/** The layers, with or without heat capacities. Internal. */
export const frostLayers = (needsCapacity: boolean) =>
  list(object(LAYER, checkLayer(needsCapacity)), { of: 'layers', most: 100 });

type ReadLayer = Values<typeof LAYER>;

/** Every layer but the last needs its thickness. Internal. */
export function checkThicknesses(
  reader: Reader,
  layers: readonly ReadLayer[] | undefined,
  path: FieldPath,
): void {
  layers?.slice(0, -1).forEach(({ thickness }, index) => {
    if (thickness !== undefined) return;
    const message = 'missing. Only the last layer may go down without end';
    reader.fail('REQUIRED', [...path, 'layers', index, 'thickness'], message);
  });
}

/** A layer in SI units: metres, W/(m K), kJ/m3, kJ/(m3 K). Internal. */
export interface HeatLayer {
  /** Infinite for the last layer. */
  readonly thickness: number;
  /** The thickness that was given, infinite for none. */
  readonly given: number;
  readonly as: Pick<FrozenLayer, 'name' | 'thickness' | 'soil'>;
  readonly k: number;
  readonly latent: number;
  readonly capacity: number;
  readonly extrapolated: boolean;
}

/** The figures of each layer; the last goes on below its thickness. Internal. */
export const heatLayers = (layers: readonly ReadLayer[]): readonly HeatLayer[] =>
  layers.map((layer, index) => {
    const own = layer.thickness?.toNumber('m') ?? Number.POSITIVE_INFINITY;
    const isLast = index === layers.length - 1;
    const { name, soil, dryDensity, moisture } = layer;
    const base = {
      thickness: isLast ? Number.POSITIVE_INFINITY : own,
      given: own,
      as: { name, thickness: layer.thickness ?? null, soil: soil ?? null },
    };
    if (soil === undefined || dryDensity === undefined || moisture === undefined) {
      const { conductivity: k = 1, latentHeat: latent = 0, heatCapacity: capacity = 0 } = layer;
      return { ...base, k, latent, capacity, extrapolated: false };
    }
    const heat = soilHeat({ soil, dryDensity, moisture: moisture.toString() });
    return {
      ...base,
      k: heat.conductivity.value,
      latent: heat.latentHeat.value,
      capacity: heat.heatCapacity.value,
      extrapolated: heat.extrapolated,
    };
  });

/** How much of each layer freezes. */
export interface FrozenLayer {
  /** What the crew calls it. */
  readonly name: string;
  /** Kind of soil; null if its heat figures were given. */
  readonly soil: ThermalSoil | null;
  /** Its thickness; null for a last layer that goes down without end. */
  readonly thickness: Length | null;
  /** Thickness of it that freezes; 0 for none. */
  readonly frozen: Length;
}

/** What frost makes of the layers down to a depth. Internal. */
export interface DepthSums {
  /** Index that Stefan's equation needs to reach the depth, in C-days. */
  readonly index: number;
  /** Latent heat times thickness. */
  readonly latent: number;
  /** Heat capacity times thickness. */
  readonly capacity: number;
}

/** kJ that one W gives in a day. */
const DAY = 86.4;

/** The part of a layer above a depth, and the resistance of the layers over it. Internal. */
export interface LayerPart {
  readonly layer: HeatLayer;
  readonly part: number;
  readonly resistance: number;
}

/** The parts of the layers down to a depth in metres. Internal. */
export function partsTo(layers: readonly HeatLayer[], depth: number): readonly LayerPart[] {
  const parts: LayerPart[] = [];
  let above = 0;
  let resistance = 0;
  for (const layer of layers) {
    const part = Math.min(layer.thickness, depth - above);
    if (part <= 0) break;
    parts.push({ layer, part, resistance });
    resistance += part / layer.k;
    above += part;
  }
  return parts;
}

/** Sums over the layers down to a depth in metres. Internal. */
export function sumsTo(layers: readonly HeatLayer[], depth: number): DepthSums {
  let index = 0;
  let latent = 0;
  let capacity = 0;
  for (const { layer, part, resistance } of partsTo(layers, depth)) {
    index += ((layer.latent * part) / DAY) * (resistance + part / layer.k / 2);
    latent += layer.latent * part;
    capacity += layer.capacity * part;
  }
  return { index, latent, capacity };
}

/** How the layers share a depth. Internal. */
export function frozenLayers(layers: readonly HeatLayer[], depth: number): readonly FrozenLayer[] {
  let above = 0;
  return layers.map(({ as, thickness }) => {
    const part = Math.max(0, Math.min(thickness, depth - above));
    above += part;
    return { ...as, frozen: length(part, 'm') };
  });
}

/** True if frost goes below all that is known of the ground. Internal. */
export const isBelowLayers = (layers: readonly HeatLayer[], depth: number): boolean =>
  layers.reduce((sum, { given }) => sum + given, 0) < depth;
