export { attempt, type Outcome } from '../attempt.js';
export {
  ERROR_CODES,
  isSettlineError,
  pathText,
  SettlineError,
  type ErrorCode,
  type FieldPath,
  type Issue,
} from '../errors.js';
