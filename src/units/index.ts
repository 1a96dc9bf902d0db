export {
  DIMENSIONS,
  SI_UNIT,
  unitsOf,
  type AngleUnit,
  type AreaUnit,
  type DensityUnit,
  type Dimension,
  type DimensionOf,
  type FlowUnit,
  type ForceUnit,
  type LengthUnit,
  type LineWeightUnit,
  type MassUnit,
  type PressureUnit,
  type SlopeUnit,
  type SpeedUnit,
  type TimeUnit,
  type Unit,
  type UnitOf,
  type VolumeUnit,
} from './catalogue.js';
export type { Decimal } from './decimal.js';
export type { Divisor, Factor, Product, Quotient } from './dimension.js';
export { isQuantity } from './quantity-mark.js';
export type {
  Angle,
  AnyQuantity,
  Area,
  Density,
  Flow,
  Force,
  Length,
  LengthForm,
  LineWeight,
  Mass,
  NumberInput,
  Pressure,
  Quantity,
  QuantityClone,
  QuantityJSON,
  Slope,
  Speed,
  Time,
  Volume,
} from './quantity-types.js';
export {
  angle,
  area,
  density,
  flow,
  force,
  fromJSON,
  fromNumber,
  length,
  lineWeight,
  mass,
  pressure,
  slope,
  speed,
  time,
  volume,
  type AngleInput,
  type AreaInput,
  type DensityInput,
  type FlowInput,
  type ForceInput,
  type LengthInput,
  type LineWeightInput,
  type MassInput,
  type PressureInput,
  type QuantityInput,
  type SlopeInput,
  type SpeedInput,
  type TimeInput,
  type ValueAndUnit,
  type VolumeInput,
} from './construct.js';
export { convert } from './convert.js';
export {
  parseLength,
  readLengthText,
  type LengthReading,
  type ParseLengthOptions,
} from './parse-length.js';
export { parseMeasure, type MeasureDimension, type ParseMeasureOptions } from './parse-measure.js';
export { parseSlope } from './parse-slope.js';
export { READING_REASONS, type ReadingReason } from './reading-reasons.js';
export { formatFor, type UnitSystem } from './format-for.js';
export { formatLength, type FormatLengthOptions } from './format-length.js';
export { formatQuantity, type FormatQuantityOptions } from './format-quantity.js';
export { roundTo } from './rounding.js';
export type { Rounding } from './round-ratio.js';
export { angleOfSlope, slopeOfAngle } from './slope-angle.js';
export { compareQuantities, max, min, sum } from './aggregate.js';
