// string-line stands on build-up: lifts are those of a layer of the build-up
import type { BuildUp } from '../build-up/build-up.js';
import { lifts, MOST_LIFTS, type Lifts } from '../build-up/lifts.js';
import { THICKNESS } from '../input/ranges.js';
import { readCompactedPerLoose } from '../input/compaction-ratio.js';
import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Length } from '../units/quantity.js';

/** How a layer is placed in lifts. */
export interface LiftsInput {
  /** Name of the layer. */
  readonly layer: string;
  /** Thickest compacted lift. */
  readonly maxLift: LengthInput;
  readonly compactedPerLoose: number | string;
}

/** A surface below the string. */
export interface SurfaceBelowString {
  /** Such as `finished grade`, `base top`, `base lift 1 loose`, `subgrade`. */
  readonly surface: string;
  /** `loose` for a lift as it is spread, else `compacted`; the ground for the subgrade. */
  readonly state: 'compacted' | 'loose' | 'ground';
  /** From the straight from tie to tie down to it. */
  readonly below: Length;
}

/** Layers in lifts, by the name of the layer. Internal. */
export type LiftsOfLayers = readonly { readonly layer: string; readonly lifts: Lifts }[];

/** Reads which layers are placed in lifts. Internal. */
export function readLifts(reader: Reader, value: unknown, buildUp: BuildUp): LiftsOfLayers {
  const seen = new Set<string>();
  return reader.list(value, ['lifts']).flatMap((item, index) => {
    const path = ['lifts', index];
    const fields = reader.object(item, path);
    const layer = reader.text(fields['layer'], [...path, 'layer']);
    const at = [...path, 'maxLift'];
    const maxLift = reader.quantity('length', fields['maxLift'], at, THICKNESS);
    const ratioAt = [...path, 'compactedPerLoose'];
    const ratio = readCompactedPerLoose(reader, fields['compactedPerLoose'], ratioAt);
    if (seen.has(layer)) {
      reader.fail('DUPLICATE_LAYER', [...path, 'layer'], `${layer} has its lifts twice`);
    }
    seen.add(layer);
    const thickness = buildUp.layers.find(({ name }) => name === layer)?.thickness;
    if (thickness === undefined) {
      const names = buildUp.layers.map(({ name }) => name).join(', ');
      reader.fail('UNKNOWN_ID', [...path, 'layer'], `no such layer: there is ${names}`);
      return [];
    }
    if (maxLift.isZero() || ratio.isZero()) return [];
    const count = wholeNumberUp(thickness, maxLift);
    if (count > MOST_LIFTS) {
      reader.fail('OUT_OF_RANGE', at, `makes ${count} lifts: a slip of a digit or of a unit?`);
      return [];
    }
    const compactedPerLoose = ratio.toString();
    return [{ layer, lifts: lifts({ thickness, maxLift, compactedPerLoose }) }];
  });
}

/** Every surface from finished grade down, with the lifts as they go up. Internal. */
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
    below: stringHeight.plus(depth),
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
    // the last lift is spread higher than it ends
    const [last = [], ...lower] = rising.reverse();
    return [...last, above, ...lower.flat()];
  });
  return [...surfaces, at('subgrade', buildUp.total, 'ground')];
}
