import type { PlanWarning, WarningCode } from '../plan/plan.js';

/** Makes a warning. Internal. */
export const warning = (
  code: WarningCode,
  subject: string,
  values: PlanWarning['values'] = {},
): PlanWarning => ({ code, subject, values });
