import type { FieldPath } from '../errors.js';
import type { Reader } from '../input.js';
import { length } from '../units/construct.js';
import { isQuantity } from '../units/quantity.js';
import { stackLayers, type BuildUp } from './build-up.js';

/** Checks that a field is a build-up as `buildUp` makes it. Internal. */
export function requireBuildUp(reader: Reader, value: unknown, path: FieldPath): BuildUp {
  if (isBuildUp(value)) return value;
  const code = value === undefined ? 'REQUIRED' : 'WRONG_TYPE';
  reader.fail(code, path, 'expected what buildUp({ layers }) returns');
  return stackLayers([{ name: 'stand-in', thickness: length(1, 'm') }]);
}

function isBuildUp(value: unknown): value is BuildUp {
  if (typeof value !== 'object' || value === null) return false;
  const { layers, total } = value as Partial<BuildUp>;
  return (
    isQuantity(total) &&
    Array.isArray(layers) &&
    layers.every((layer: Partial<BuildUp['layers'][number]> | null) => {
      return isQuantity(layer?.thickness) && isQuantity(layer.top) && isQuantity(layer.bottom);
    })
  );
}
