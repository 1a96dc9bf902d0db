import type { FieldPath } from '../errors.js';
import { custom } from '../input/field.js';
import type { Reader } from '../input/reader.js';
import type { Field } from '../input/shape.js';
import { length } from '../units/construct.js';
import { isLength } from '../units/is-length.js';
import { MOST_LAYERS, stackLayers, type BuildUp, type Layer } from './build-up.js';

/** Refuses a field that is not a result of `buildUp`. */
function requireBuildUp(reader: Reader, value: unknown, path: FieldPath): BuildUp {
  if (isBuildUp(value)) return value;
  const code = value === undefined ? 'REQUIRED' : 'WRONG_TYPE';
  reader.fail(code, path, 'pass the result of buildUp()');
  return stackLayers([{ name: 'stand-in', thickness: length(1, 'm'), material: undefined }]);
}

/** A result of `buildUp`. Internal. */
export const builtUp: Field<BuildUp> = custom(requireBuildUp);

function isBuildUp(value: unknown): value is BuildUp {
  if (typeof value !== 'object' || value === null) return false;
  const { layers, total } = value as Partial<BuildUp>;
  return isLength(total) && isStack(layers);
}

const isStack = (layers: unknown): boolean =>
  Array.isArray(layers) &&
  layers.length > 0 &&
  layers.length <= MOST_LAYERS &&
  // a gap is not a layer
  Array.from<Partial<Layer> | null | undefined>(layers).every(isLayer);

function isLayer(layer: Partial<Layer> | null | undefined): boolean {
  return (
    typeof layer?.name === 'string' &&
    isLength(layer.thickness) &&
    isLength(layer.top) &&
    isLength(layer.bottom)
  );
}
