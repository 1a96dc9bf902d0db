export {
  structuralNumber,
  type StructuralLayer,
  type StructuralLayerInput,
  type StructuralNumber,
} from './structural-number.js';
export { structuralThickness, type StructuralThickness } from './structural-thickness.js';
export {
  requiredStructuralNumber,
  type RequiredStructuralNumber,
} from './required-structural-number.js';
export { allowableEsals, type AllowableEsals } from './allowable-esals.js';
export { requiredModulus, type RequiredModulus } from './required-modulus.js';
export type {
  BeyondChart,
  EquationOptions,
  EquationResult,
  ReliabilityOptions,
} from './flexible-equation.js';
export { dailyEsals, type AxleCountInput, type DailyEsals } from './daily-esals.js';
export { designEsals, type DesignEsals } from './design-esals.js';
export { serviceLife, type ServiceLife } from './service-life.js';
export { modulusFromCbr, type ModulusFromCbr } from './modulus-from-cbr.js';
export { layerCoefficient, type LayerCoefficient } from './layer-coefficient.js';
