export {
  stringDepths,
  type DepthsBelowString,
  type DigAction,
  type LayerBelowString,
  type StakeDepths,
  type StringDepths,
  type StringDepthsOptions,
  type StringStakeInput,
} from './string-depths.js';
export {
  depthTable,
  type DepthRow,
  type DepthTable,
  type DepthTableOptions,
} from './depth-table.js';
export type { LiftsInput, SurfaceBelowString } from './lift-surfaces.js';
export { stringSag, type SagAt, type StringSag, type StringSagOptions } from './string-sag.js';
export type { StringInput } from './hanging-line.js';
export type { TieInput } from './ties.js';
export {
  stringAtStake,
  type OffsetStringInput,
  type OffsetTie,
  type StringAtStake,
  type StringAtStakeOptions,
} from './string-at-stake.js';
export {
  stringsAlongEdge,
  type BreakWithoutStake,
  type EdgeStake,
  type EdgeStakeInput,
  type StringsAlongEdge,
  type StringsAlongEdgeOptions,
  type StringSpan,
} from './strings-along-edge.js';
export {
  depthBetweenStrings,
  type DepthBetweenStrings,
  type DepthBetweenStringsOptions,
} from './depth-between-strings.js';
export {
  meanDepthAlong,
  type MeanDepthAlong,
  type MeanDepthAlongOptions,
  type MeanDepthOfString,
  type ReadStakeInput,
  type ReadStringInput,
  type UnreadStake,
} from './mean-depth-along.js';
