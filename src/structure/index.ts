export {
  structuralNumber,
  type StructuralLayer,
  type StructuralLayerInput,
  type StructuralNumber,
  type StructuralNumberOptions,
} from './structural-number.js';
export {
  structuralThickness,
  type StructuralThickness,
  type StructuralThicknessOptions,
} from './structural-thickness.js';
export {
  requiredStructuralNumber,
  type RequiredStructuralNumber,
  type RequiredStructuralNumberOptions,
} from './required-structural-number.js';
export {
  allowableEsals,
  type AllowableEsals,
  type AllowableEsalsOptions,
} from './allowable-esals.js';
export {
  requiredModulus,
  type RequiredModulus,
  type RequiredModulusOptions,
} from './required-modulus.js';
export type { BeyondChart, EquationResult, ReliabilityOptions } from './flexible-equation.js';
export { designEsals, type DesignEsals, type DesignEsalsOptions } from './design-esals.js';
export type { AxleCountInput, AxleEsals } from './axle-esals.js';
export { serviceLife, type ServiceLife, type ServiceLifeOptions } from './service-life.js';
export {
  modulusFromCbr,
  type ModulusFromCbr,
  type ModulusFromCbrOptions,
} from './modulus-from-cbr.js';
export {
  layerCoefficient,
  type LayerCoefficient,
  type LayerCoefficientOptions,
} from './layer-coefficient.js';
