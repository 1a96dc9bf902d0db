import type {
  GovernedThickness,
  PavementGroundPlan,
  ThicknessRule,
} from '../../plan/plan-of-ground.js';
import type { Sheet } from '../layout/sheet-context.js';
import { entry, subheading, type SheetLine } from '../layout/sheet-lines.js';

const RULE_WORDS: Readonly<Record<ThicknessRule['rule'], string>> = {
  published: 'published minimum',
  'poor-ground': 'on this ground',
  'frost-limited': 'limited frost',
  'frost-free': 'frost kept out',
  foundation: 'county table',
};

/** The ground of a pavement: rules for its base, frost, runoff; nothing if the job says nothing of it. Internal. */
export function groundLines(ground: PavementGroundPlan | null, { units }: Sheet): SheetLine[] {
  if (ground === null) return [];
  const { thicknesses, frost, thickestLift, runoff } = ground;
  return [
    ...subheading('Ground'),
    ...thicknesses.filter(({ part }) => part === 'base').flatMap((base) => baseLines(base)),
    ...(frost === null
      ? []
      : [
          ...entry('frost, below finished grade', units.depthWithUnit(frost.depth)),
          ...entry('frost in the subgrade', units.depthWithUnit(frost.intoSubgrade)),
        ]),
    ...(thickestLift === null
      ? []
      : entry('thickest lift of the machine', units.depthWithUnit(thickestLift))),
    ...(runoff === null ? [] : entry('runoff in the storm', units.flow(runoff))),
  ];

  function baseLines({ planned, governs, rules }: GovernedThickness): SheetLine[] {
    return [
      ...entry('base, planned', units.depthWithUnit(planned)),
      ...rules.flatMap(({ rule, thickness }) =>
        entry(
          `base, ${RULE_WORDS[rule]}`,
          `${units.depthWithUnit(thickness)}${rule === governs ? ' governs' : ''}`,
        ),
      ),
    ];
  }
}
