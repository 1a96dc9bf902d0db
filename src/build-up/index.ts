export {
  buildUp,
  type BuildUp,
  type BuildUpOptions,
  type Layer,
  type LayerInput,
} from './build-up.js';
export {
  excavationDepth,
  type ExcavationDepth,
  type ExcavationDepthOptions,
} from './excavation-depth.js';
export { baseExtension, type BaseExtension, type BaseExtensionOptions } from './base-extension.js';
export { lifts, type Lifts, type LiftsOptions } from './lifts.js';
export {
  minimumBuildUp,
  type BaseAdjustment,
  type MinimumBuildUp,
  type MinimumBuildUpOptions,
} from './minimum-build-up.js';
