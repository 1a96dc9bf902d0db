import type { PavementPlan } from '../../plan/plan.js';
import { entry, paragraph, subheading, table, type SheetLine } from '../layout/sheet-lines.js';
import type { Sheet } from '../layout/sheet-context.js';
import { someShare } from '../words/in-words.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

/** Lines, trees and rules near a dig; nothing where the job names none. Internal. */
export function nearbySection(plan: PavementPlan, earlier: readonly PavementPlan[], sheet: Sheet) {
  const { units } = sheet;
  return [
    ...lineSection(plan, units),
    ...treeSection(plan, units),
    ...gateSection(plan, earlier, { units }),
  ];
}

function lineSection({ nearby }: PavementPlan, units: SheetUnits): SheetLine[] {
  const { utilities, handDig } = nearby;
  if (handDig === null) return [];
  const inDig = utilities.filter(({ handDigArea }) => !handDigArea.isZero());
  const rows = utilities.map(({ id, handDigArea, cover }) => {
    if (handDigArea.isZero()) return [id, 'clear of the dig', ''];
    const left = cover === null ? 'cover not known' : `cover ${units.depthWithUnit(cover.cover)}`;
    return [id, units.area(handDigArea), left];
  });
  return [
    ...subheading('Marked lines: hand dig in their zones'),
    ...table(rows),
    ...(handDig.area.isZero()
      ? []
      : [
          ...entry('hand dig, all zones', units.area(handDig.area)),
          ...entry('hand dig, bank, no more than', units.volume(handDig.volume)),
          ...paragraph('(the zones at the deepest dig)', '    '),
        ]),
    ...inDig.flatMap(({ id, cover }) =>
      cover === null || cover.verdict === 'pass'
        ? []
        : paragraph(`${id}: ${units.isUs ? cover.note.us : cover.note.metric}`, '  > ', '    '),
    ),
  ];
}

function treeSection({ nearby }: PavementPlan, units: SheetUnits): SheetLine[] {
  const { trees } = nearby;
  if (trees.length === 0) return [];
  const rows = trees.map(({ id, zone }) => [
    id,
    `zone ${units.long(zone.radius)}`,
    zone.cut === null || zone.cut.area.isZero() ? 'clear' : `cut ${someShare(zone.cut.share)}`,
  ]);
  const actions = trees
    .filter(({ zone }) => zone.cut !== null && !zone.cut.area.isZero())
    .flatMap(({ id, zone }) => paragraph(`${id}: ${zone.note}`, '  > ', '    '));
  return [...subheading('Trees: radius of the root zone'), ...table(rows), ...actions];
}

function gateSection(
  { nearby }: PavementPlan,
  earlier: readonly PavementPlan[],
  { units }: Pick<Sheet, 'units'>,
): SheetLine[] {
  const { gates } = nearby;
  if (gates === null) return [];
  const rules = rulesOf(gates, units);
  const same = earlier.find(
    (one) => one.nearby.gates !== null && rulesOf(one.nearby.gates, units).join() === rules.join(),
  );
  return [
    ...subheading('Excavation rules that apply'),
    ...(same === undefined
      ? [
          ...rules.slice(0, -1).flatMap((text) => paragraph(text, '  - ', '    ')),
          ...paragraph(gates.whoDecides, '  '),
        ]
      : paragraph(`the same as for ${same.name}: read them there`, '  ')),
    ...(gates.daylightOffset === null || gates.daylightOffset.isZero()
      ? []
      : entry('if sides are sloped: top set back', units.depthWithUnit(gates.daylightOffset))),
  ];
}

const rulesOf = (
  { gates, whoDecides }: NonNullable<PavementPlan['nearby']['gates']>,
  { isUs }: SheetUnits,
): readonly string[] => [...gates.map(({ text }) => (isUs ? text.us : text.metric)), whoDecides];
