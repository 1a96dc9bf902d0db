import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/set-outs.js';
import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { textMark } from '../frame/text-label.js';
import { textWidth, wrapText } from '../svg/text-width.js';
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
  const marks: string[] = [];
  let y = top;
  const write = (text: string, x: number, from: number, size: { most: number; name?: string }) => {
    const lines = wrapText(text, small, size.most);
    lines.forEach((one, k) => {
      const at = { text: one, x, y: from + (k + 1) * small * 1.35, size: small };
      marks.push(textMark(size.name === undefined ? at : { ...at, style: size.name }));
    });
    return from + lines.length * small * 1.35;
  };
  y = write(label(style.units.isUs ? 'set-outs-us' : 'set-outs-metric'), margin, y, { most: room });
  for (const pavement of scene.pavements) {
    y = write(label('edges-of', { pavement: labelName(pavement.plan.name) }), margin, y + 6, {
      most: room,
      name: 'strong',
    });
    const rows = pavement.plan.edges.map((edge, index) =>
      edgeRow(edge, pavement.edges[index] ?? '', { scene, style }),
    );
    const columns = columnsFor(rows, room, small);
    const each = Math.ceil(rows.length / columns);
    const starts = Array.from({ length: columns }, (_, k) => rows.slice(k * each, (k + 1) * each));
    const column = room / columns;
    y = Math.max(
      ...starts.map((own, k) =>
        own.reduce(
          (from, row) => write(row, margin + k * column, from + 2, { most: column - GAP }),
          y,
        ),
      ),
    );
  }
  return { marks, bottom: y };
}
