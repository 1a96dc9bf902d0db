export { spoilLoads, type SpoilLoads } from './spoil-loads.js';
export { spoilPile, type SpoilPile } from './spoil-pile.js';
export { axleGroupLimit, type AxleGroupLimit } from './axle-group-limit.js';
export {
  checkAxleGroups,
  type AxleGroup,
  type AxleGroups,
  type AxleInput,
  type AxleLimiter,
} from './check-axle-groups.js';
export type { AxleCapsInput } from './axle-caps.js';
export { machineTime, type MachineTime } from './machine-time.js';
export { haulBalance, type Fleet, type HaulBalance } from './haul-balance.js';
export { plateTime, type PlateTime } from './plate-time.js';
export { wheelStressScreen, type WheelStressScreen } from './wheel-stress-screen.js';
export { cuttingEdge, type CuttingEdge, type LoadedRadii } from './cutting-edge.js';
