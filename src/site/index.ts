export {
  oldPaving,
  type OldPavingLayer,
  type OldPavingLayerInput,
  type OldPavingOptions,
  type RemovedPaving,
} from './old-paving/old-paving.js';
export type { SawCuts, SawCutsInput, SawGridInput } from './old-paving/saw-cuts.js';
export {
  handDig,
  type HandDigOptions,
  type WithOutline,
  type WithoutOutline,
} from './utilities/hand-dig.js';
export type { HandDig, HandDigZone } from './utilities/across-straight-dig.js';
export type { HandDigTotals } from './utilities/hand-dig-totals.js';
export type { DrawnHandDig, LineZone } from './utilities/across-drawn-dig.js';
export type { MarkedLineInput } from './utilities/marked-line.js';
export type { PlaceInput } from './drawn-dig.js';
export {
  utilityCover,
  type CoverCode,
  type UtilityCover,
  type UtilityCoverOptions,
} from './utilities/utility-cover.js';
export {
  locateWindow,
  type LocateWindow,
  type LocateWindowOptions,
} from './utilities/locate-window.js';
export type { LocateRule, MarkValidity } from './utilities/locate-rule.js';
export type { Weekday } from './utilities/calendar.js';
export {
  rootZone,
  type RootZone,
  type RootZoneOptions,
  type RootZoneRuleInput,
} from './trees/root-zone.js';
export type { RootCut, RootCutMark } from './trees/root-cut.js';
export type {
  DigAtTreeInput,
  DigPastTreeInput,
  DrawnDigAtTreeInput,
} from './trees/read-dig-at-tree.js';
export {
  excavationGates,
  type ExcavationGates,
  type ExcavationGatesOptions,
  type FootingInput,
  type ReachedGate,
} from './excavation/excavation-gates.js';
export {
  waterInDig,
  type DrainingAreaInput,
  type WaterInDig,
  type WaterInDigOptions,
} from './excavation/water-in-dig.js';
export {
  closableArea,
  type ClosableArea,
  type ClosableAreaOptions,
  type ClosingCrewInput,
} from './excavation/closable-area.js';
export { softSpot, type SoftSpot, type SoftSpotOptions } from './excavation/soft-spot.js';
export {
  baseTaper,
  type BaseTaper,
  type BaseTaperOptions,
  type TaperStation,
} from './excavation/base-taper.js';
