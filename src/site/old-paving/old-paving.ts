import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import type { SourceId } from '../../sources/catalogue.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { OLD_PAVING_WEIGHTS, type OldPaving } from '../../sources/material-weights.js';
import { sum } from '../../units/aggregate.js';
import {
  density,
  type AreaInput,
  type DensityInput,
  type LengthInput,
} from '../../units/construct.js';
import type { Area, Density, Length, Mass, Volume } from '../../units/quantity.js';
// broken-out paving is a loose volume, and loads are counted from state volumes
import { DENSITY } from '../../volumes/limits.js';
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { given, withWorking, type Step, type Worked } from '../../working.js';
import { AREA, DEPTH } from '../limits.js';
import { readSawCuts, type SawCuts, type SawCutsInput } from './saw-cuts.js';

/** One layer of old paving; the topmost first. */
export interface OldPavingLayerInput {
  /** `asphalt` and `concrete` have published weights; any other material brings its own. */
  readonly material: string;
  readonly area: AreaInput;
  readonly thickness: LengthInput;
  readonly inPlaceDensity?: DensityInput;
  readonly looseDensity?: DensityInput;
}

/** One layer of old paving, measured. */
export interface OldPavingLayer {
  readonly material: string;
  readonly area: Area;
  readonly thickness: Length;
  readonly inPlaceDensity: Density;
  readonly looseDensity: Density;
  /** Where the densities come from: null where the caller gave them. */
  readonly sources: readonly SourceId[];
  readonly inPlace: Volume;
  readonly mass: Mass;
  /** Broken out, in the bin. */
  readonly loose: StateVolume<'loose'>;
}

/** Old paving to take out. */
export interface RemovedPaving extends Worked {
  readonly layers: readonly OldPavingLayer[];
  /** All layers together, in place. */
  readonly inPlace: Volume;
  readonly mass: Mass;
  readonly loose: StateVolume<'loose'>;
  /** Thickness that the saw has to go through: the layers together. */
  readonly thickness: Length;
  readonly saw: SawCuts | null;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Mass and broken-out volume of old paving, one layer or several (asphalt over concrete), and the
 * length of saw cuts: `M = A t d`, `loose = M / loose density`. Layers of different materials are
 * different streams: they are listed apart, and each goes in a load of its own.
 *
 * @param options.layers - from the top down, 1 to 10: `material`, plan `area` [area], `thickness`
 *   [length], and for a material other than `asphalt` and `concrete` `inPlaceDensity` and
 *   `looseDensity` [density]; given densities replace the published ones
 * @param options.sawCuts - `runs` to cut round the edge [lengths], and a `grid` over a rectangle:
 *   `along`, `across` and `mostPiece`, the longest side of a piece [length]
 * @returns each layer and all together: volume in place, mass, loose volume; saw cuts; cautions
 * @throws `EMPTY_LIST`, `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED` and the
 *   reading codes
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
export function oldPaving(options: {
  readonly layers: readonly OldPavingLayerInput[];
  readonly sawCuts?: SawCutsInput;
}): RemovedPaving {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const list = reader.list(fields['layers'], ['layers']);
  if (list.length > 10) reader.fail('CAPACITY_EXCEEDED', ['layers'], 'more than ten layers');
  const inputs = list.map((item, index) => readLayer(reader, item, ['layers', index]));
  const cuts = readSawCuts(reader, fields['sawCuts'], ['sawCuts']);
  reader.finish();

  const layers = inputs.map(measureLayer);
  const thickness = sum(layers.map((layer) => layer.thickness));
  const found = {
    layers,
    inPlace: sum(layers.map((layer) => layer.inPlace)),
    mass: sum(layers.map((layer) => layer.mass)),
    loose: inState(sum(layers.map((layer) => layer.loose.volume)), 'loose'),
    thickness,
    saw: cuts?.(thickness) ?? null,
    notes: notesFor(layers),
    cautions: cautionsFor('dust', 'utilities', 'loads'),
  };
  return withWorking(found, () => [...layers.flatMap(layerSteps), ...sawSteps(found.saw)]);
}

type ReadLayer = Omit<OldPavingLayer, 'inPlace' | 'mass' | 'loose'>;

function readLayer(reader: Reader, item: unknown, path: FieldPath): ReadLayer {
  const fields = reader.object(item, path);
  const material = reader.text(fields['material'], [...path, 'material']);
  const known = Object.hasOwn(OLD_PAVING_WEIGHTS, material)
    ? OLD_PAVING_WEIGHTS[material as OldPaving]
    : undefined;
  const sources = new Set<SourceId>();
  const weight = (name: 'inPlaceDensity' | 'looseDensity', row: 'inPlace' | 'loose') => {
    if (fields[name] === undefined && known !== undefined) {
      sources.add(known[row].source);
      return density(known[row].value, 'lb/yd3');
    }
    return reader.quantity('density', fields[name], [...path, name], DENSITY);
  };
  return {
    material,
    area: reader.quantity('area', fields['area'], [...path, 'area'], AREA),
    thickness: reader.quantity('length', fields['thickness'], [...path, 'thickness'], DEPTH),
    inPlaceDensity: weight('inPlaceDensity', 'inPlace'),
    looseDensity: weight('looseDensity', 'loose'),
    sources: [...sources],
  };
}

function measureLayer(layer: ReadLayer): OldPavingLayer {
  const inPlace = layer.area.times(layer.thickness);
  const mass = inPlace.times(layer.inPlaceDensity);
  return { ...layer, inPlace, mass, loose: inState(mass.dividedBy(layer.looseDensity), 'loose') };
}

function notesFor(layers: readonly OldPavingLayer[]): string[] {
  const materials = new Set(layers.map(({ material }) => material));
  const notes = ['Reinforced slabs weigh and saw differently: look for steel at the first cut.'];
  if (materials.size > 1) {
    notes.push(`Keep ${[...materials].join(' and ')} apart: mixed loads may be refused.`);
  }
  return notes;
}

function layerSteps(layer: OldPavingLayer): Step[] {
  const source = layer.sources[0] ?? 'derived';
  return [
    {
      title: `Old ${layer.material} to take out`,
      formula: 'M = A o d',
      given: [
        given('A', 'area', layer.area),
        given('o', 'thickness', layer.thickness),
        given('d', 'density in place', layer.inPlaceDensity),
      ],
      result: given('M', 'mass', layer.mass),
      source,
    },
    {
      title: `Old ${layer.material}, broken out`,
      formula: 'L = M / d',
      given: [given('M', 'mass', layer.mass), given('d', 'loose density', layer.looseDensity)],
      result: given('L', 'loose volume', layer.loose.volume),
      source: layer.sources.at(-1) ?? 'derived',
    },
  ];
}

function sawSteps(saw: SawCuts | null): Step[] {
  if (saw === null) return [];
  return [
    {
      title: 'Saw cuts',
      formula: 'C = runs + across (n - 1) + along (m - 1)',
      given: [
        given('runs', 'cuts round the edge', saw.runs),
        given('n m', 'pieces of the grid', saw.pieces),
        given('grid', 'cuts of the grid', saw.grid),
      ],
      result: given('C', 'length to saw', saw.length),
      source: 'derived',
    },
  ];
}
