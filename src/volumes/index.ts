export {
  soilFactors,
  stateVolume,
  toState,
  type SoilFactors,
  type SoilState,
  type StateVolume,
  type TabulatedSoilFactors,
} from './state-volume.js';
export { layerVolume, type LayerVolumeOptions } from './layer-volume.js';
export {
  baseOrder,
  type BaseOrder,
  type BaseOrderOptions,
  type BasePart,
  type BasePartInput,
} from './base-order.js';
export type { DryDensityInput, WithDensity } from './dry-density.js';
export { loads, type Load, type Loads, type LoadsOptions } from './loads.js';
export {
  siteVolumes,
  type SiteDepth,
  type SiteVolumes,
  type SiteVolumesOptions,
} from './site-volumes.js';
export type {
  SiteCornersInput,
  SiteDesignInput,
  SitePlaneAtZeroInput,
  SitePlaneByPointInput,
  SitePlaneInput,
} from './read-site-design.js';
export type { SpotHeight, SpotsInput } from './read-spots.js';
export { averageEndArea, type AverageEndAreaOptions } from './average-end-area.js';
export { prismoidal, type PrismoidalOptions } from './prismoidal.js';
export {
  endAreaVolumes,
  type EndAreaInterval,
  type EndAreaVolumes,
  type EndAreaVolumesOptions,
  type EndRule,
  type SectionInput,
} from './end-area-volumes.js';
export { taperedLayer, type TaperedLayer, type TaperedLayerOptions } from './tapered-layer.js';
export { batteredDig, type BatteredDig, type BatteredDigOptions } from './battered-dig.js';
export { soilBalance, type SoilBalance, type SoilBalanceOptions } from './soil-balance.js';
export {
  gridVolumes,
  type GridDepth,
  type GridPointInput,
  type GridVolumes,
  type GridVolumesOptions,
} from './grid-volumes.js';
export type { GridInput } from './read-depth-grid.js';
