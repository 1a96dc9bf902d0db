export { buildUp, type BuildUp, type Layer, type LayerInput } from './build-up.js';
export { excavationDepth, type ExcavationDepth } from './excavation-depth.js';
export { baseExtension, type BaseExtension } from './base-extension.js';
export { lifts, type Lifts } from './lifts.js';
export { minimumBuildUp, type BaseAdjustment, type MinimumBuildUp } from './minimum-build-up.js';
