import type { PavementPlan } from '../plan/plan.js';
import { entry, table, wrap } from './layout.js';
import type { Sheet } from './sheet-context.js';
import { percentText, type SheetUnits } from './units-of-sheet.js';

/** Lines, trees and rules near a dig; nothing where the job names none. Internal. */
export function nearbySection(plan: PavementPlan, earlier: readonly PavementPlan[], sheet: Sheet) {
  const { units, width } = sheet;
  return [
    ...lineSection(plan, units, width),
    ...treeSection(plan, units, width),
    ...gateSection(plan, earlier, { units, width }),
  ];
}

function lineSection({ nearby }: PavementPlan, units: SheetUnits, width: number): string[] {
  const { utilities, handDig } = nearby;
  if (handDig === null) return [];
  const inDig = utilities.filter(({ handDigArea }) => !handDigArea.isZero());
  const rows = utilities.map(({ id, handDigArea, cover }) => {
    if (handDigArea.isZero()) return [id, 'clear of the dig', ''];
    const left = cover === null ? 'cover not known' : `cover ${units.depthWithUnit(cover.cover)}`;
    return [id, units.area(handDigArea), left];
  });
  return [
    '',
    'Marked lines: hand dig in their zones',
    ...table(rows, width),
    ...(handDig.area.isZero()
      ? []
      : [
          ...entry('hand dig, all zones', units.area(handDig.area), width),
          ...entry('hand dig, bank', units.volume(handDig.volume), width),
        ]),
    ...inDig.flatMap(({ id, cover }) =>
      cover === null || cover.verdict === 'pass'
        ? []
        : wrap(`${id}: ${units.isUs ? cover.note.us : cover.note.metric}`, width, '  > ', '    '),
    ),
  ];
}

function treeSection({ nearby }: PavementPlan, units: SheetUnits, width: number): string[] {
  const { trees } = nearby;
  if (trees.length === 0) return [];
  const rows = trees.map(({ id, zone }) => [
    id,
    `zone ${units.long(zone.radius)}`,
    zone.cut === null || zone.cut.area.isZero() ? 'clear' : `cut ${percentText(zone.cut.share)}`,
  ]);
  const actions = trees
    .filter(({ zone }) => zone.cut !== null && !zone.cut.area.isZero())
    .flatMap(({ id, zone }) => wrap(`${id}: ${zone.note}`, width, '  > ', '    '));
  return ['', 'Trees: radius of the root zone', ...table(rows, width), ...actions];
}

function gateSection(
  { nearby }: PavementPlan,
  earlier: readonly PavementPlan[],
  { units, width }: Pick<Sheet, 'units' | 'width'>,
): string[] {
  const { gates } = nearby;
  if (gates === null) return [];
  const rules = rulesOf(gates);
  const same = earlier.find(
    (one) => one.nearby.gates !== null && rulesOf(one.nearby.gates) === rules,
  );
  return [
    '',
    'Excavation rules that apply',
    ...(same === undefined
      ? [
          ...gates.gates.flatMap(({ text }) => wrap(text, width, '  - ', '    ')),
          ...wrap(gates.whoDecides, width, '  '),
        ]
      : wrap(`the same as for ${same.name}: read them there`, width, '  ')),
    ...(gates.daylightOffset === null || gates.daylightOffset.isZero()
      ? []
      : entry(
          'if sides are sloped: top set back',
          units.depthWithUnit(gates.daylightOffset),
          width,
        )),
  ];
}

const rulesOf = ({ gates, whoDecides }: NonNullable<PavementPlan['nearby']['gates']>): string =>
  [...gates.map(({ text }) => text), whoDecides].join('\n');
