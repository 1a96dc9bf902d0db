export {
  stringDepths,
  type DigAction,
  type LayerBelowString,
  type StakeDepths,
  type StringDepths,
  type StringStakeInput,
} from './string-depths.js';
export { depthTable, type DepthRow, type DepthTable, type TieInput } from './depth-table.js';
export type { LiftsInput, SurfaceBelowString } from './lift-surfaces.js';
export { stringSag, type StringSag } from './string-sag.js';
export type { StringInput } from './hanging-line.js';
export { stringAtStake, type SetOffInput, type StringAtStake } from './string-at-stake.js';
export {
  stringsAlongEdge,
  type EdgeStake,
  type EdgeStakeInput,
  type StringsAlongEdge,
  type StringSpan,
  type UnstakedBreak,
} from './strings-along-edge.js';
export { depthBetweenStrings, type DepthBetweenStrings } from './depth-between-strings.js';
