import { known } from '../../../invariant.js';
import type { PavementPlan } from '../../plan/plan.js';
import { cornerLines } from './corner-lines.js';
import { digLineLines } from './dig-line.js';
import { digLines, earthLines } from './dig-lines.js';
import { gradeLines } from './grade-lines.js';
import { groundLines } from './ground-lines.js';
import { heading, paragraph, type SheetLine } from '../layout/sheet-lines.js';
import { nearbySection } from './nearby-section.js';
import { quantityLines } from './quantity-lines.js';
import type { Sheet } from '../layout/sheet-context.js';

/** What a pavement is planned for. Internal. */
export const USE_WORDS: Readonly<Record<PavementPlan['use'], string>> = {
  pedestrian: 'Foot traffic',
  'residential-driveway': 'Residential driveway',
  'parking-or-residential-street': 'Parking or residential street',
};

/** What a pavement is built on. Internal. */
export const SUBGRADE_WORDS: Readonly<Record<PavementPlan['subgrade'], string>> = {
  'well-drained': 'well-drained subgrade',
  clay: 'subgrade of clay',
  'wet-or-weak': 'wet or weak subgrade',
};

const NO_SETTLEMENT =
  'The job does not say how far the bedding settles under the plate, so this sheet has no heights for screed rails. Find it on a trial strip.';

/** The part of the sheet about one pavement; rules that stand with an earlier one are not told again. Internal. */
export function pavementSection(
  plan: PavementPlan,
  earlier: readonly PavementPlan[],
  sheet: Sheet,
): SheetLine[] {
  const { job } = sheet;
  const { outline } = known(
    job.pavements.find(({ id }) => id === plan.id),
    'pavement',
  );
  const frost = plan.frost ? ', frost' : '';
  return [
    ...heading(plan.name.toUpperCase()),
    ...paragraph(`${USE_WORDS[plan.use]}, ${SUBGRADE_WORDS[plan.subgrade]}${frost}`),
    ...gradeLines(plan.grade, sheet),
    ...cornerLines(plan.id, outline, sheet),
    ...digLineLines(plan, outline, sheet),
    ...digLines(plan, sheet),
    ...earthLines(plan, sheet),
    ...groundLines(plan.ground, sheet),
    ...nearbySection(plan, earlier, sheet),
    ...quantityLines(plan, sheet),
    ...(plan.settlement === null ? paragraph(NO_SETTLEMENT) : []),
  ];
}
