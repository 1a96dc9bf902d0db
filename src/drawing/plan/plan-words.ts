import type { DrawStyle } from '../draw-options.js';
import { BUILDING, HAND_DIG, SLAB } from '../frame/hatches.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { ARROW_SAMPLE, STRING_SAMPLE } from '../frame/samples.js';
import { labelName } from '../surface-rows.js';
import { edgeWords } from './edge-rows.js';
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
  const edges = scene.pavements
    .flatMap((pavement) => edgeWords(pavement, scene, style))
    .map((row) => label('describe-edge', { row }));
  return [...pavements, ...edges.slice(0, 60)].join(' ');
}

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
    [{ hatch: BUILDING }, 'edge-building'],
    [{ hatch: SLAB }, 'edge-slab'],
    [{ line: 'old' }, 'old-paving-line'],
    [{ line: 'line-plain' }, 'marked-line'],
    [{ line: 'casing' }, 'marked-line'],
    [{ hatch: HAND_DIG }, 'hand-dig-zone'],
    [{ line: 'root-zone' }, 'root-zone'],
  ]);
}
