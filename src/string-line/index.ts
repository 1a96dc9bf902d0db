export {
  stringDepths,
  type DigAction,
  type LayerBelowString,
  type StakeDepths,
  type StringDepths,
  type StringStakeInput,
} from './string-depths.js';
