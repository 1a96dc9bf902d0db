export { soilPhases, type SoilPhases, type SoilPhasesOptions } from './soil/soil-phases.js';
export {
  relativeDensity,
  type RelativeDensity,
  type RelativeDensityOptions,
} from './soil/relative-density.js';
export {
  liftWater,
  type LiftWater,
  type LiftWaterOptions,
  type WaterAction,
} from './soil/lift-water.js';
export {
  sandBulkingAt,
  type SandBulkingAt,
  type SandBulkingAtOptions,
} from './soil/sand-bulking-at.js';
export type { PlantInput } from './compaction/plant.js';
export {
  compactionMethod,
  type CompactionMethod,
  type CompactionMethodOptions,
  type MethodLift,
} from './compaction/compaction-method.js';
export {
  checkLifts,
  type CheckedLift,
  type CheckLiftsOptions,
  type LiftsCheck,
  type PlacedLiftInput,
} from './compaction/check-lifts.js';
export {
  controlStrip,
  type ControlStrip,
  type ControlStripOptions,
  type StripReadingInput,
} from './compaction/control-strip.js';
export type {
  Conductivity,
  ConductivityInput,
  DegreeDays,
  DegreeDaysInput,
  HeatCapacity,
  HeatCapacityInput,
  TemperatureInput,
  VolumeHeat,
  VolumeHeatInput,
} from './frost/thermal-units.js';
export {
  freezingIndex,
  FREEZING_INDEX_DEFINITIONS,
  type FreezingIndex,
  type FreezingIndexDefinition,
  type FreezingIndexOptions,
} from './frost/freezing-index.js';
export {
  designFreezingIndex,
  type DesignFreezingIndex,
  type DesignFreezingIndexOptions,
} from './frost/design-freezing-index.js';
export { soilHeat, type SoilHeat, type SoilHeatOptions } from './frost/soil-heat.js';
export type { FrostLayerInput, FrozenLayer } from './frost/frost-layers.js';
export type { SurfaceIndexOptions } from './frost/surface-index.js';
export {
  stefanDepth,
  stefanIndex,
  type StefanDepth,
  type StefanDepthOptions,
  type StefanIndex,
  type StefanIndexOptions,
} from './frost/stefan-depth.js';
export {
  berggrenDepth,
  type BerggrenDepth,
  type BerggrenDepthOptions,
} from './frost/berggren-depth.js';
export {
  frostSusceptibility,
  type FrostSusceptibility,
  type FrostSusceptibilityOptions,
  type Susceptibility,
} from './frost/frost-susceptibility.js';
export { frostBase, type FrostBase, type FrostBaseOptions } from './frost/frost-base.js';
export {
  frostSupport,
  type FrostSupport,
  type FrostSupportOptions,
} from './frost/frost-support.js';
export {
  foundationThickness,
  type FoundationThickness,
  type FoundationThicknessOptions,
} from './frost/foundation-thickness.js';
export type { WaterRateInput } from './water/rain-rate.js';
export {
  reservoirDepth,
  type ReservoirDepth,
  type ReservoirDepthOptions,
} from './water/reservoir-depth.js';
export { drainTime, type DrainTime, type DrainTimeOptions } from './water/drain-time.js';
export {
  peakRunoff,
  type PeakRunoff,
  type PeakRunoffOptions,
  type RunoffAreaInput,
} from './water/peak-runoff.js';
export { inletArea, type InletArea, type InletAreaOptions } from './water/inlet-area.js';
export { stormInDig, type StormInDigOptions } from './water/storm-in-dig.js';
export {
  checkRoute,
  type CheckedSegment,
  type CheckRouteOptions,
  type RouteCheck,
  type RouteFault,
  type RouteSegmentInput,
} from './routes/check-route.js';
