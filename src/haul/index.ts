export { spoilLoads, type SpoilLoads, type SpoilLoadsOptions } from './spoil-loads.js';
export { spoilPile, type SpoilPile, type SpoilPileOptions } from './spoil-pile.js';
export {
  axleGroupLimit,
  type AxleGroupLimit,
  type AxleGroupLimitOptions,
} from './axle-group-limit.js';
export {
  checkAxleGroups,
  type AxleGroup,
  type AxleGroups,
  type AxleInput,
  type AxleLimiter,
  type CheckAxleGroupsOptions,
} from './check-axle-groups.js';
export type { AxleCapsInput } from './axle-caps.js';
export { machineTime, type MachineTime, type MachineTimeOptions } from './machine-time.js';
export {
  haulBalance,
  type Fleet,
  type HaulBalance,
  type HaulBalanceOptions,
} from './haul-balance.js';
export { plateTime, type PlateTime, type PlateTimeOptions } from './plate-time.js';
export {
  wheelStressScreen,
  type WheelStressScreen,
  type WheelStressScreenOptions,
} from './wheel-stress-screen.js';
export {
  cuttingEdge,
  type CuttingEdge,
  type CuttingEdgeOptions,
  type EdgeWear,
  type LoadedRadii,
} from './cutting-edge.js';
