export {
  oldPaving,
  type OldPavingLayer,
  type OldPavingLayerInput,
  type RemovedPaving,
} from './old-paving/old-paving.js';
export type { SawCuts, SawCutsInput } from './old-paving/saw-cuts.js';
export {
  handDig,
  type HandDig,
  type HandDigZone,
  type MarkedLineInput,
} from './utilities/hand-dig.js';
export {
  handDigInOutline,
  type DrawnHandDig,
  type DrawnLineInput,
  type LineZone,
} from './utilities/hand-dig-in-outline.js';
export { utilityCover, type CoverVerdict, type UtilityCover } from './utilities/utility-cover.js';
export { locateWindow, type LocateRule, type LocateWindow } from './utilities/locate-window.js';
export type { Weekday } from './utilities/calendar.js';
export { rootZone, type RootZone, type RootZoneRuleInput } from './trees/root-zone.js';
export type { DigPastTree, RootCut, RootCutMark } from './trees/root-cut.js';
export type { DrawnDigAtTree } from './trees/root-cut-in-outline.js';
export {
  excavationGates,
  type ExcavationGates,
  type ReachedGate,
} from './excavation/excavation-gates.js';
export { waterInDig, type WaterInDig } from './excavation/water-in-dig.js';
export { closableArea, type ClosableArea } from './excavation/closable-area.js';
export { softSpot, type SoftSpot } from './excavation/soft-spot.js';
export { baseTaper, type BaseTaper, type TaperStation } from './excavation/base-taper.js';
