export {
  soilFactors,
  stateVolume,
  toState,
  type SoilFactors,
  type SoilState,
  type StateVolume,
  type TabulatedSoilFactors,
} from './state-volume.js';
export { layerVolume } from './layer-volume.js';
export {
  baseOrder,
  type BaseOrder,
  type BaseOrderOptions,
  type BasePart,
  type BasePartInput,
} from './base-order.js';
export type { DryDensityInput, WithDensity } from './dry-density.js';
export { loads, type Loads } from './loads.js';
export { wholePacks, type WholePacks } from './whole-packs.js';
export {
  surfaceVolumes,
  type Depth,
  type DesignCorners,
  type DesignPlane,
  type SurfaceVolumes,
} from './surface-volumes.js';
export { siteVolumes, type SiteDepth, type SiteVolumes } from './site-volumes.js';
export type { SiteDesignInput, SitePlaneInput } from './read-site-design.js';
export type { SpotHeight, SpotsInput } from './read-spots.js';
export { averageEndArea } from './average-end-area.js';
export { prismoidal } from './prismoidal.js';
export {
  endAreaVolumes,
  type EndAreaInterval,
  type EndAreaVolumes,
  type EndRule,
  type SectionInput,
} from './end-area-volumes.js';
export { taperedLayer, type TaperedLayer } from './tapered-layer.js';
export { batteredDig, type BatteredDig } from './battered-dig.js';
export { soilBalance, type SoilBalance } from './soil-balance.js';
export { gridVolumes, type GridDepth, type GridVolumes } from './grid-volumes.js';
export type { GridInput } from './read-depth-grid.js';
