export {
  checkStakeLine,
  type StakeLine,
  type StakeMove,
  type StakeOffset,
} from './check-stake-line.js';
export { fitCircle, type CircleFit } from './fit-circle.js';
export type { BulkPoints } from './flat-points.js';
export { fitLine, type LineFit } from './fit-line.js';
export type { PlanStakeInput } from './read-stakes.js';
export type { PlanPoint } from '../units/vector.js';
