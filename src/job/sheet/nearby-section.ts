import type { PavementPlan } from '../plan/plan.js';
import { entry, table, wrap } from './layout.js';
import { percentText, type SheetUnits } from './units-of-sheet.js';

/** Lines, trees and rules near a dig; nothing where the job names none. Internal. */
export function nearbySection(plan: PavementPlan, units: SheetUnits, width: number): string[] {
  return [
    ...lineSection(plan, units, width),
    ...treeSection(plan, units, width),
    ...gateSection(plan, units, width),
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
    'Marked lines: dig by hand in their zones',
    ...table(rows, width),
    ...entry('by hand, all zones', units.area(handDig.area), width),
    ...entry('by hand, in the bank', units.volume(handDig.volume), width),
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

function gateSection({ nearby }: PavementPlan, units: SheetUnits, width: number): string[] {
  const { gates } = nearby;
  if (gates === null) return [];
  return [
    '',
    'Rules that this open dig comes under',
    ...gates.gates.flatMap(({ text }) => wrap(text, width, '  - ', '    ')),
    ...wrap(gates.whoDecides, width, '  '),
    ...(gates.daylightOffset === null || gates.daylightOffset.isZero()
      ? []
      : entry('sloped sides: top edge out', units.depthWithUnit(gates.daylightOffset), width)),
  ];
}
