export {
  checkStakeLine,
  type PlanStakeInput,
  type StakeLine,
  type StakeMove,
  type StakeOffset,
} from './check-stake-line.js';
export { fitLine, type LineFit } from './fit-line.js';
export type { PlanPoint } from '../units/vector.js';
