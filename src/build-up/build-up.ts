import { makeReader, type Reader } from '../input.js';
import type { FieldPath } from '../errors.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { sum } from '../units/aggregate.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { THICKNESS } from './limits.js';

/** A layer as the caller gives it: compacted thickness, from the top down. */
export interface LayerInput {
  readonly name: string;
  readonly thickness: LengthInput;
  readonly material?: string;
}

/** A layer in its place: `top` and `bottom` are depths below finished grade, positive down. */
export interface Layer {
  readonly name: string;
  readonly thickness: Length;
  readonly top: Length;
  readonly bottom: Length;
  readonly material?: string;
}

/** Layers from finished grade down to the subgrade. */
export interface BuildUp extends Worked {
  readonly layers: readonly Layer[];
  /** Depth of the subgrade below finished grade. */
  readonly total: Length;
}

/**
 * Stacks compacted layers from finished grade down: `top(k) = sum of thicknesses above`,
 * `total = sum of all`.
 *
 * @param options.layers - top down; each `name` once, `thickness` [length] compacted, more than 0 and
 *   at most 5 m, `material` if wanted. A geotextile has no thickness: leave it out.
 * @returns each layer with the depths of its top and bottom below finished grade [length], and the
 *   total [length]
 * @throws `EMPTY_LIST`, `NOT_POSITIVE`, `DUPLICATE_LAYER`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const drive = buildUp({
 *   layers: [
 *     { name: 'paver', thickness: '2 3/8 in' },
 *     { name: 'bedding', thickness: '1 in' },
 *     { name: 'base', thickness: '10 in' },
 *   ],
 * });
 * drive.total.to('in').toString() //=> '13.375'
 */
export function buildUp(options: { readonly layers: readonly LayerInput[] }): BuildUp {
  const reader = makeReader();
  const layers = readLayers(reader, reader.object(options, []), []);
  reader.finish();
  return stackLayers(layers);
}

/** Stacks layers that have been read. Internal. */
export function stackLayers(read: readonly ReadLayer[]): BuildUp {
  const layers: Layer[] = [];
  for (const { name, thickness, material } of read) {
    const top = layers.at(-1)?.bottom ?? thickness.minus(thickness);
    const layer = { name, thickness, top, bottom: top.plus(thickness) };
    layers.push(material === undefined ? layer : { ...layer, material });
  }
  const total = sum(layers.map((layer) => layer.thickness));
  return withWorking({ layers, total }, () => showWorking(layers, total));
}

/** A layer that has been read. Internal. */
export interface ReadLayer {
  readonly name: string;
  readonly thickness: Length;
  readonly material?: string;
}

function readLayers(
  reader: Reader,
  options: Readonly<Record<string, unknown>>,
  path: FieldPath,
): ReadLayer[] {
  const names = new Set<string>();
  const list = [...path, 'layers'];
  return reader.list(options['layers'], list).map((value, index) => {
    const at = [...list, index];
    const fields = reader.object(value, at);
    const name = reader.text(fields['name'], [...at, 'name']);
    if (name !== '' && names.has(name)) {
      reader.fail(
        'DUPLICATE_LAYER',
        [...at, 'name'],
        `the layer ${JSON.stringify(name)} stands twice`,
      );
    }
    names.add(name);
    const thickness = reader.quantity(
      'length',
      fields['thickness'],
      [...at, 'thickness'],
      THICKNESS,
    );
    if (fields['material'] === undefined) return { name, thickness };
    return { name, thickness, material: reader.text(fields['material'], [...at, 'material']) };
  });
}

function showWorking(layers: readonly Layer[], total: Length): Step[] {
  return [
    {
      title: 'Depth of the subgrade below finished grade',
      formula: `D = ${layers.map((_, index) => `t${index + 1}`).join(' + ')}`,
      given: layers.map((layer, index) => given(`t${index + 1}`, layer.name, layer.thickness)),
      result: given('D', 'total build-up', total),
      source: 'derived',
    },
  ];
}
