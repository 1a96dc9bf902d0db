export {
  oldPaving,
  type OldPavingLayer,
  type OldPavingLayerInput,
  type RemovedPaving,
} from './old-paving.js';
export type { SawCuts, SawCutsInput } from './saw-cuts.js';
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
export { handDig, type HandDig, type HandDigZone, type MarkedLineInput } from './hand-dig.js';
export {
  handDigInOutline,
  type DrawnHandDig,
  type DrawnLineInput,
  type LineZone,
} from './hand-dig-in-outline.js';
export { utilityCover, type CoverVerdict, type UtilityCover } from './utility-cover.js';
export { locateWindow, type LocateRule, type LocateWindow } from './locate-window.js';
export type { Weekday } from './calendar.js';
export { rootZone, type RootZone, type RootZoneRuleInput } from './root-zone.js';
export type { DigPastTree, RootCut, RootCutMark } from './root-cut.js';
export type { DrawnDigAtTree } from './root-cut-in-outline.js';
export { excavationGates, type ExcavationGates, type ReachedGate } from './excavation-gates.js';
export { waterInDig, type WaterInDig } from './water-in-dig.js';
export { closableArea, type ClosableArea } from './closable-area.js';
export { softSpot, type SoftSpot } from './soft-spot.js';
export { baseTaper, type BaseTaper, type TaperStation } from './base-taper.js';
export { wheelStressScreen, type WheelStressScreen } from './wheel-stress-screen.js';
export { cuttingEdge, type CuttingEdge, type LoadedRadii } from './cutting-edge.js';
