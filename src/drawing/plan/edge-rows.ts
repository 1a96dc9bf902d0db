import { entry } from '../../invariant.js';
import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/set-outs.js';
import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { textLines } from '../frame/text-lines.js';
import { textWidth } from '../svg/text-width.js';
import { labelName } from '../surface-rows.js';
import type { PlanScene } from './plan-scene.js';

/** An edge in words: its name, what lies along it, its length and how far base and dig go. Internal. */
export function edgeRow(
  edge: EdgePlan,
  name: string,
  { scene, style }: { readonly scene: PlanScene; readonly style: DrawStyle },
): string {
  const { label, units, system } = style;
  const distance = (length: EdgePlan['dig']) =>
    setOutText(length, { job: scene.job, system, units });
  return label(rowKey(edge), {
    edge: name,
    kind: label(edge.kind === null ? 'edge-kind-none' : `edge-${edge.kind}`),
    length: units.long(edge.length),
    base: distance(edge.base),
    dig: distance(edge.dig),
    top: distance(edge.top),
  });
}

function rowKey({ base, dig, top }: EdgePlan): DrawingLabelKey {
  if (!top.equals(dig)) return 'edge-row-top';
  if (dig.isZero()) return 'edge-row-none';
  return base.equals(dig) ? 'edge-row-same' : 'edge-row';
}

const GAP = 14;

/** Two columns where every row fits. */
const columnsFor = (rows: readonly string[], room: number, size: number): number =>
  rows.every((row) => textWidth(row, size) <= room / 2 - GAP) ? 2 : 1;

/** The edges of all pavements in words, from a height down. Internal. */
export function edgeRows(
  scene: PlanScene,
  top: number,
  style: DrawStyle,
): { readonly marks: readonly string[]; readonly bottom: number } {
  const { margin, width, small, label } = style;
  const room = width - 2 * margin;
  const head = [label(style.units.isUs ? 'set-outs-us' : 'set-outs-metric')];
  const drawn = [textLines(head, top, style)];
  for (const { plan, edges } of scene.pavements) {
    const name = label('edges-of', { pavement: labelName(plan.name) });
    const above = textLines([name], bottomOf(drawn) + 6, style, { name: 'strong' });
    const rows = plan.edges.map((edge, index) =>
      edgeRow(edge, entry(edges, index), { scene, style }),
    );
    const columns = columnsFor(rows, room, small);
    const each = Math.ceil(rows.length / columns);
    const column = room / columns;
    drawn.push(above);
    for (let k = 0; k < columns; k += 1) {
      const own = rows.slice(k * each, (k + 1) * each);
      const place = { x: margin + k * column, room: column - GAP, gap: 2 };
      drawn.push(textLines(own, above.bottom, style, place));
    }
  }
  return { marks: drawn.flatMap(({ marks }) => marks), bottom: bottomOf(drawn) };
}

const bottomOf = (drawn: readonly { readonly bottom: number }[]): number =>
  Math.max(...drawn.map(({ bottom }) => bottom));
