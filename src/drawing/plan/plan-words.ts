import type { DrawStyle } from '../draw-options.js';
import type { LegendEntry } from '../frame/legend.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { labelName } from '../surface-rows.js';
import { edgeRow } from './edge-rows.js';
import type { PlanScene } from './plan-scene.js';

/** Units, axes and how stakes are drawn. Internal. */
export function planNotes(
  { job }: PlanScene,
  factor: number,
  { label, units }: DrawStyle,
): string[] {
  const isNear = (job.utilities ?? []).length > 0;
  return [
    `${label(units.isUs ? 'lengths-us' : 'lengths-metric')} ${label('plan-axes')}`,
    factor === 1 ? label('offsets-none') : label('offsets-scaled', { factor: `${factor}` }),
    label('caution-dig'),
    ...(isNear ? [label('caution-plan')] : []),
  ];
}

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

/** What the lines and hatches of a plan mean. Internal. */
export function planLegend(
  { pavements, job, plan }: PlanScene,
  { label }: DrawStyle,
): LegendEntry[] {
  const entry = (sample: LegendEntry['sample'], key: DrawingLabelKey): LegendEntry => ({
    sample,
    text: label(key),
  });
  const when = (isThere: boolean, of: LegendEntry): LegendEntry[] => (isThere ? [of] : []);
  const along = (kind: 'building' | 'slab') =>
    when(
      pavements.some((one) => one.plan.edges.some((edge) => edge.kind === kind)),
      entry({ hatch: kind }, `along-${kind}`),
    );
  const isSame = pavements.some(({ base }) => base === null);
  const isApart = pavements.some(({ base }) => base !== null);
  const hasLines = (job.utilities ?? []).length > 0;
  return [
    entry({ line: 'finish' }, 'paving-line'),
    ...when(isApart, entry({ line: 'base' }, 'base-line')),
    ...when(isApart, entry({ line: 'dig' }, 'dig-bottom-line')),
    ...when(isSame && !isApart, entry({ line: 'dig' }, 'base-and-dig-line')),
    ...when(
      pavements.some(({ top }) => top !== null),
      entry({ line: 'dig-top' }, 'dig-top-line'),
    ),
    ...when(plan.stringLines.length > 0, entry({ line: 'string' }, 'string-line')),
    entry({ line: 'fall' }, 'fall-line'),
    ...along('building'),
    ...along('slab'),
    ...when(
      (job.oldPaving ?? []).some(({ outline }) => outline !== undefined),
      entry({ line: 'old' }, 'old-paving-line'),
    ),
    ...when(hasLines, entry({ line: 'line-plain' }, 'marked-line')),
    ...when(hasLines, entry({ hatch: 'hand-dig' }, 'hand-dig-zone')),
    ...when((job.trees ?? []).length > 0, entry({ line: 'root-zone' }, 'root-zone')),
  ];
}
