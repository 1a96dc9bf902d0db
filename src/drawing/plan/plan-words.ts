import type { DrawStyle } from '../draw-options.js';
import { BUILDING, HAND_DIG, SLAB } from '../frame/hatches.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { ARROW_SAMPLE, STRING_SAMPLE } from '../frame/samples.js';
import { line } from '../svg/shapes.js';
import { labelName } from '../surface-rows.js';
import { edgeRow } from './edge-rows.js';
import type { PlanScene } from './plan-scene.js';

/** Units, and how stakes are drawn. Internal. */
export function planNotes(
  { job }: PlanScene,
  factor: number,
  { label, units }: DrawStyle,
): string[] {
  const isNear = (job.utilities ?? []).length > 0;
  return [
    `${label(units.isUs ? 'lengths-us' : 'lengths-metric')} ${
      factor === 1 ? label('offsets-none') : label('offsets-scaled', { factor: `${factor}` })
    }`,
    label('caution-dig'),
    ...(isNear ? [label('caution-plan')] : []),
  ];
}

/** What the picture does not tell by itself. Internal. */
export const planRemarks = (factor: number, { label }: DrawStyle): string[] => [
  ...(factor === 1 ? [] : [label('offsets-sides')]),
  label('plan-axes'),
];

/** Areas of the pavements and their edges in words. Internal. */
export function describePlan(scene: PlanScene, style: DrawStyle): string {
  const { label, units } = style;
  const pavements = scene.pavements.map(({ plan: { name, areas } }) =>
    label('describe-pavement', {
      pavement: labelName(name),
      area: units.area(areas.paving),
      dig: units.area(areas.dig),
    }),
  );
  const edges = scene.pavements.flatMap((pavement) =>
    pavement.plan.edges.map((edge, index) =>
      label('describe-edge', {
        row: edgeRow(edge, pavement.edges[index] ?? '', { scene, style }),
      }),
    ),
  );
  return [...pavements, ...edges.slice(0, 60)].join(' ');
}

/** A line in its colour, in a legend. */
const COLOURED_LINE: LegendEntry['sample'] = {
  mark: ([x, y]) =>
    ['casing', 'marked'].map((name) => line(name, [x - 15, y], [x + 15, y])).join(''),
  of: 'casing',
};

/** What the lines and hatches of a plan mean. Internal. */
export function planLegend({ pavements }: PlanScene, style: DrawStyle): LegendEntry[] {
  const isApart = pavements.some(({ base }) => base !== null);
  return legendEntries(style, [
    [{ line: 'finish' }, 'paving-line'],
    [{ line: 'base' }, 'base-line'],
    [{ line: 'dig' }, isApart ? 'dig-bottom-line' : 'base-and-dig-line'],
    [{ line: 'dig-top' }, 'dig-top-line'],
    [STRING_SAMPLE, 'string-line'],
    [ARROW_SAMPLE, 'fall-line'],
    [{ hatch: BUILDING }, 'along-building'],
    [{ hatch: SLAB }, 'along-slab'],
    [{ line: 'old' }, 'old-paving-line'],
    [{ line: 'line-plain' }, 'marked-line'],
    [COLOURED_LINE, 'marked-line'],
    [{ hatch: HAND_DIG }, 'hand-dig-zone'],
    [{ line: 'root-zone' }, 'root-zone'],
  ]);
}
