import { list, object, optional, quantity, text } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { sum } from '../units/aggregate.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** A layer to build, from the top down. A geotextile has no thickness: leave it out. */
export interface LayerInput {
  /** What the crew calls it. Each name once in a build-up. */
  readonly name: string;
  /** Compacted thickness [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** What it is made of. Optional. */
  readonly material?: string;
}

/** The layers of a pavement. */
export interface BuildUpOptions {
  /** Layers from the top down, 1 to 100. */
  readonly layers: readonly LayerInput[];
}

const LAYER = shapeOf<LayerInput>()({
  name: text(),
  thickness: quantity(THICKNESS),
  material: optional(text()),
});

/** Maximum number of layers. Internal. */
export const MOST_LAYERS = 100;

const OPTIONS = shapeOf<BuildUpOptions>()({
  layers: list(object(LAYER), { of: 'layers', most: MOST_LAYERS, unique: 'name' }),
});

/** A layer with its depths. */
export interface Layer {
  /** What the crew calls it. */
  readonly name: string;
  /** Compacted thickness. */
  readonly thickness: Length;
  /** Depth of its top below finished grade, positive down. */
  readonly top: Length;
  /** Depth of its bottom below finished grade, positive down. */
  readonly bottom: Length;
  /** What it is made of; null if that was not given. */
  readonly material: string | null;
}

/** Layers from finished grade down to the subgrade. */
export interface BuildUp extends Worked {
  /** From the top down. */
  readonly layers: readonly Layer[];
  /** Depth of the subgrade below finished grade. */
  readonly total: Length;
}

/**
 * Stacks compacted layers from finished grade down: `top(k) = sum of thicknesses above`,
 * `total = sum of all`.
 *
 * @param options - see {@link BuildUpOptions}
 * @returns each layer with the depths of its top and bottom below finished grade [length], and the
 *   total [length]
 * @throws `EMPTY_LIST`, `NOT_POSITIVE`, `DUPLICATE_ID`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const drive = buildUp({
 *   layers: [
 *     { name: 'paver', thickness: '3 1/4 in' },
 *     { name: 'bedding', thickness: '1 in' },
 *     { name: 'base', thickness: '8 in' },
 *   ],
 * });
 * drive.total.to('in').toString() //=> '12.25'
 */
export function buildUp(options: BuildUpOptions): BuildUp {
  return stackLayers(readOptions(options, OPTIONS).layers);
}

/** Stacks layers that have been read. Internal. */
export function stackLayers(read: readonly Values<typeof LAYER>[]): BuildUp {
  const layers: Layer[] = [];
  for (const { name, thickness, material } of read) {
    const top = layers.at(-1)?.bottom ?? thickness.minus(thickness);
    layers.push({ name, thickness, top, bottom: top.plus(thickness), material: material ?? null });
  }
  const total = sum(layers.map((layer) => layer.thickness));
  return withWorking({ layers, total }, () => showWorking(layers, total));
}

function showWorking(layers: readonly Layer[], total: Length): Step[] {
  return [
    derivedStep({
      title: 'Depth of the subgrade below finished grade',
      formula: 'D = sum(t)',
      given: [
        given(
          't',
          `thickness of ${layers.map(({ name }) => name).join(', ')}`,
          layers.map(({ thickness }) => thickness),
        ),
      ],
      result: given('D', 'total build-up', total),
    }),
  ];
}
