import type { Length } from '../units/quantity.js';
import { formulaStep, given, type Step } from '../working.js';

/** The working of a misclosure: computed less known. Internal. */
export const misclosureStep = ({
  closing,
  known,
  misclosure,
}: {
  readonly closing: Length;
  readonly known: Length;
  readonly misclosure: Length;
}): Step =>
  formulaStep({
    title: 'Misclosure',
    formula: 'm = z - z0',
    given: [given('z', 'closing level', closing), given('z0', 'known level', known)],
    result: given('m', 'misclosure', misclosure),
    source: 'level-booking',
  });
