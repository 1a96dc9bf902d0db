import { known } from '../../invariant.js';
import { list, object, optional, quantity, text } from '../../input/field.js';
import { givenEntries } from '../../input/given-entries.js';
import { AREA, DENSITY, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import { referenceQuantity } from '../../reference-quantity.js';
import type { SourceId } from '../../sources/catalogue.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { OLD_PAVING_WEIGHTS, type OldPaving } from '../../sources/material-weights.js';
import { sum } from '../../units/aggregate.js';
import type { AreaInput, DensityInput, LengthInput } from '../../units/construct.js';
import type { Area, Density, Length, Mass, Volume } from '../../units/quantity.js';
// broken-out paving is a loose volume; loads take state volumes
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import {
  derivedStep,
  formulaStep,
  given,
  published,
  type Step,
  type StepInput,
  withWorking,
  type Worked,
} from '../../working.js';
import { measureCuts, sawCuts, type SawCuts, type SawCutsInput } from './saw-cuts.js';

/** One layer of old paving. */
export interface OldPavingLayerInput {
  /** `asphalt` and `concrete` have published weights; any other material needs both densities. */
  readonly material: string;
  /** Plan area [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Thickness [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Density in place [density], more than 0 and at most 5 t/m3. Default: the published one. */
  readonly inPlaceDensity?: DensityInput;
  /** Density broken out, in the bin [density], more than 0 and at most 5 t/m3. Default: the published one. */
  readonly looseDensity?: DensityInput;
}

/** Old paving to break out. */
export interface OldPavingOptions {
  /** Layers from the top down, 1 to 10. */
  readonly layers: readonly OldPavingLayerInput[];
  /** Saw cuts to make. Default: none. */
  readonly sawCuts?: SawCutsInput;
}

const WEIGHT = quantity(DENSITY);

const LAYER = shapeOf<OldPavingLayerInput>()({
  material: text(),
  area: quantity(AREA),
  thickness: quantity(THICKNESS),
  inPlaceDensity: optional(WEIGHT),
  looseDensity: optional(WEIGHT),
});

const MOST_LAYERS = 10;

const OPTIONS = shapeOf<OldPavingOptions>()({
  layers: list(object(LAYER), { of: 'layers', most: MOST_LAYERS }),
  sawCuts: optional(sawCuts),
});

/** One layer of old paving, with its mass and volumes. */
export interface OldPavingLayer {
  /** What it is made of. */
  readonly material: string;
  /** Plan area. */
  readonly area: Area;
  /** Thickness. */
  readonly thickness: Length;
  /** Density in place. */
  readonly inPlaceDensity: Density;
  /** Density broken out, in the bin. */
  readonly looseDensity: Density;
  /** Where the densities are printed; empty if you gave both. */
  readonly sources: readonly SourceId[];
  /** Volume in place. */
  readonly inPlace: Volume;
  /** Mass. */
  readonly mass: Mass;
  /** Volume broken out, in the bin. */
  readonly loose: StateVolume<'loose'>;
}

/** Old paving to break out, with its mass and volumes. */
export interface RemovedPaving extends Cautioned, Worked {
  /** From the top down. */
  readonly layers: readonly OldPavingLayer[];
  /** Volume in place, all layers together. */
  readonly inPlace: Volume;
  /** Mass, all layers together. */
  readonly mass: Mass;
  /** Volume broken out, in the bin, all layers together. */
  readonly loose: StateVolume<'loose'>;
  /** Thickness of all layers, which the saw has to cut. */
  readonly thickness: Length;
  /** Saw cuts; null if there are none. */
  readonly saw: SawCuts | null;
  /** What to check before you break it out. */
  readonly notes: readonly string[];
}

/**
 * Mass and broken-out volume of old paving, one layer or several (asphalt over concrete), and the
 * length of saw cuts: `M = A t d`, `loose = M / loose density`. Layers of different materials are
 * listed separately: each goes in its own load.
 *
 * @param options - see {@link OldPavingOptions}
 * @returns each layer and all together: volume in place, mass, loose volume; saw cuts; cautions
 * @throws `EMPTY_LIST`, `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `TOO_MANY`, `CAPACITY_EXCEEDED` and
 *   the reading codes
 * @source debris-training-sheet
 * @source state-debris-weights
 * @example
 * const old = oldPaving({
 *   layers: [{ material: 'asphalt', area: '81 ft2', thickness: '2 in' }],
 *   sawCuts: { runs: ['9 ft', '18 ft'] },
 * });
 * old.mass.to('lb').toString() //=> '2070'
 * old.saw?.length.to('ft').toString() //=> '27'
 */
export function oldPaving(options: OldPavingOptions): RemovedPaving {
  const read = readOptions(options, OPTIONS, checkWeights);
  const layers = read.layers.map(measureLayer);
  const thickness = sum(layers.map((layer) => layer.thickness));
  const found = {
    layers,
    inPlace: sum(layers.map((layer) => layer.inPlace)),
    mass: sum(layers.map((layer) => layer.mass)),
    loose: inState(sum(layers.map((layer) => layer.loose.volume)), 'loose'),
    thickness,
    saw: read.sawCuts === undefined ? null : measureCuts(read.sawCuts, thickness),
    notes: notesFor(layers),
    cautions: cautionsFor('dust', 'utilities', 'loads'),
  };
  return withWorking(found, () => [...layers.flatMap(layerSteps), ...sawSteps(found.saw)]);
}

const weightsOf = (material: unknown) =>
  typeof material === 'string' && Object.hasOwn(OLD_PAVING_WEIGHTS, material)
    ? OLD_PAVING_WEIGHTS[material as OldPaving]
    : undefined;

/** A material without published weights needs its own densities. */
const checkWeights: Check<typeof OPTIONS> = (reader, _, path, raw) => {
  givenEntries(raw['layers'], LAYER, MOST_LAYERS).forEach((layer, index) => {
    if (layer === null || weightsOf(layer['material']) !== undefined) return;
    for (const name of ['inPlaceDensity', 'looseDensity'] as const) {
      // reading the field already reports that it is missing
      if (layer[name] === undefined) {
        WEIGHT.read(reader, undefined, [...path, 'layers', index, name]);
      }
    }
  });
};

function measureLayer(layer: Values<typeof LAYER>): OldPavingLayer {
  const { material, area, thickness } = layer;
  const printed = weightsOf(material);
  const sources = new Set<SourceId>();
  const densityOf = (own: Density | undefined, row: 'inPlace' | 'loose'): Density => {
    if (own !== undefined) return own;
    const weight = known(printed, 'weights')[row];
    sources.add(weight.source);
    return referenceQuantity('density', weight);
  };
  const inPlaceDensity = densityOf(layer.inPlaceDensity, 'inPlace');
  const looseDensity = densityOf(layer.looseDensity, 'loose');
  const inPlace = area.times(thickness);
  const mass = inPlace.times(inPlaceDensity);
  return {
    material,
    area,
    thickness,
    inPlaceDensity,
    looseDensity,
    sources: [...sources],
    inPlace,
    mass,
    loose: inState(mass.dividedBy(looseDensity), 'loose'),
  };
}

function notesFor(layers: readonly OldPavingLayer[]): string[] {
  const materials = new Set(layers.map(({ material }) => material));
  const notes = [
    'Reinforced slabs are heavier and slower to saw. Look for steel at the first cut.',
  ];
  if (materials.size > 1) {
    notes.push(`Keep ${[...materials].join(' and ')} apart. Mixed loads may be refused.`);
  }
  return notes;
}

/** A density: given, or the published one. */
function weightInput(
  symbol: string,
  name: string,
  { material, sources }: OldPavingLayer,
  [value, row]: readonly [Density, 'inPlace' | 'loose'],
): StepInput {
  const weight = weightsOf(material)?.[row];
  const isPublished =
    weight !== undefined &&
    sources.includes(weight.source) &&
    referenceQuantity('density', weight).equals(value);
  return isPublished ? published(symbol, name, value, weight.source) : given(symbol, name, value);
}

/** The source of a step is that of its density. */
const sourceOf = (weight: StepInput): SourceId => weight.source ?? 'derived';

function layerSteps(layer: OldPavingLayer): Step[] {
  const { material, inPlace, mass } = layer;
  const inPlaceWeight = weightInput('d', `density of old ${material} in place`, layer, [
    layer.inPlaceDensity,
    'inPlace',
  ]);
  const looseWeight = weightInput('dl', `loose density of old ${material}`, layer, [
    layer.looseDensity,
    'loose',
  ]);
  return [
    derivedStep({
      title: `Old ${material} in place`,
      formula: 'V = A * o',
      given: [given('A', 'area', layer.area), given('o', 'thickness', layer.thickness)],
      result: given('V', `volume of old ${material} in place`, inPlace),
    }),
    formulaStep({
      title: `Old ${material} to strip`,
      formula: 'M = V * d',
      given: [given('V', `volume of old ${material} in place`, inPlace), inPlaceWeight],
      result: given('M', `mass of old ${material}`, mass),
      source: sourceOf(inPlaceWeight),
    }),
    formulaStep({
      title: `Old ${material}, broken out`,
      formula: 'L = M / dl',
      given: [given('M', `mass of old ${material}`, mass), looseWeight],
      result: given('L', 'loose volume', layer.loose.volume),
      source: sourceOf(looseWeight),
    }),
  ];
}

function sawSteps(saw: SawCuts | null): Step[] {
  if (saw === null) return [];
  return [
    derivedStep({
      title: 'Saw cuts',
      formula: 'C = r + g',
      given: [
        given('r', 'cuts along edges where old paving stays', saw.runs),
        given('g', `cuts of the grid, ${saw.pieces} pieces`, saw.grid),
      ],
      result: given('C', 'length to saw', saw.length),
    }),
  ];
}
