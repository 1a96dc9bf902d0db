// string-line uses build-up: lifts are those of a layer of the build-up
import type { BuildUp } from '../build-up/build-up.js';
import { inLifts, MOST_LIFTS, type Lifts } from '../build-up/lifts.js';
import { compactedPerLoose } from '../input/compaction-ratio.js';
import { list, object, quantity, text } from '../input/field.js';
import { THICKNESS } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Values } from '../input/shape.js';
import { shownText } from '../shown-text.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { belowString } from './below-string.js';

/** How a layer is placed in lifts. */
export interface LiftsInput {
  /** Name of a layer of the build-up. Each layer once. */
  readonly layer: string;
  /** Thickest compacted lift the machine can compact [length], more than 0 and at most 5 m. */
  readonly maxLift: LengthInput;
  /** Compacted over loose thickness, 0.5 to 1. Measure it on a trial strip. */
  readonly compactedPerLoose: number | string;
}

const LIFTS = shapeOf<LiftsInput>()({
  layer: text(),
  maxLift: quantity(THICKNESS),
  compactedPerLoose,
});

/** Which layers are placed in lifts. Internal. */
export const liftsOfLayers = list(object(LIFTS), {
  of: 'layers',
  least: 0,
  most: 100,
  unique: 'layer',
});

/** A surface and its depth below the string. */
export interface SurfaceBelowString {
  /** Such as `finished grade`, `base top`, `base lift 1 loose`, `subgrade`. */
  readonly surface: string;
  /** `loose` for a lift as spread, `ground` for the subgrade, else `compacted`. */
  readonly state: 'compacted' | 'loose' | 'ground';
  /** Distance below the straight line between the ties [length]. */
  readonly below: Length;
}

/** Refuses lifts of a layer that the build-up does not have, and lifts beyond counting. Internal. */
export function requireLayers(
  reader: Reader,
  read: readonly Values<typeof LIFTS>[],
  { layers }: BuildUp,
): void {
  read.forEach(({ layer, maxLift }, index) => {
    const thickness = layers.find(({ name }) => name === layer)?.thickness;
    if (thickness === undefined) {
      const message = `no layer has this name. Use ${namesOf(layers)}`;
      reader.fail('UNKNOWN_ID', ['lifts', index, 'layer'], message, { id: shownText(layer) });
    } else if (thickness.dividedBy(maxLift).gt(MOST_LIFTS)) {
      const message = `makes more than ${MOST_LIFTS} lifts. Check the digits and the unit`;
      reader.fail('OUT_OF_RANGE', ['lifts', index, 'maxLift'], message, { most: MOST_LIFTS });
    }
  });
}

/** Maximum number of names in a message. */
const MOST_NAMES = 7;

function namesOf(layers: BuildUp['layers']): string {
  const names = layers.slice(0, MOST_NAMES).map(({ name }) => shownText(name));
  const last = layers.length > MOST_NAMES ? 'another layer' : names.pop();
  return names.length === 0 ? `${last}` : `${names.join(', ')} or ${last}`;
}

/** Layers in lifts, by the name of the layer. Internal. */
export type LiftsOfLayers = readonly { readonly layer: string; readonly lifts: Lifts }[];

/** Splits layers into their lifts. Internal. */
export function splitLayers(
  read: readonly Values<typeof LIFTS>[],
  { layers }: BuildUp,
): LiftsOfLayers {
  return read.flatMap(({ layer, ...how }) => {
    const thickness = layers.find(({ name }) => name === layer)?.thickness;
    return thickness === undefined ? [] : [{ layer, lifts: inLifts({ thickness, ...how }) }];
  });
}

/** Every surface from finished grade down, lifts included. Internal. */
export function surfacesBelow(
  buildUp: BuildUp,
  stringHeight: Length,
  inLifts: LiftsOfLayers,
): SurfaceBelowString[] {
  const at = (
    surface: string,
    depth: Length,
    state: SurfaceBelowString['state'] = 'compacted',
  ) => ({
    surface,
    state,
    below: belowString(stringHeight, depth),
  });
  const surfaces = buildUp.layers.flatMap(({ name, top, bottom }, k) => {
    const above = at(k === 0 ? 'finished grade' : `${name} top`, top);
    const found = inLifts.find(({ layer }) => layer === name)?.lifts;
    if (found === undefined) return [above];
    const { count, compacted, loose } = found;
    const rising = Array.from({ length: count }, (_, lift) => {
      const foot = bottom.minus(compacted.times(lift));
      const spread = at(`${name} lift ${lift + 1} loose`, foot.minus(loose), 'loose');
      const isLast = lift === count - 1;
      const rolled = at(`${name} lift ${lift + 1} top`, foot.minus(compacted));
      return isLast ? [spread] : [spread, rolled];
    });
    // the top lift is spread higher than its compacted top
    const [last = [], ...lower] = rising.reverse();
    return [...last, above, ...lower.flat()];
  });
  return [...surfaces, at('subgrade', buildUp.total, 'ground')];
}
