import type { EdgePlan } from '../../job/plan/plan.js';
import { setOutText } from '../../job/sheet/sections/set-outs.js';
import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import type { Picture } from '../frame/frame-drawing.js';
import { textLines } from '../frame/text-lines.js';
import { textWidth } from '../svg/text-width.js';
import { labelName } from '../surface-rows.js';
import type { PlanScene, ScenePavement } from './plan-scene.js';

/** Edges in words: their names, what lies along them, their lengths and how far base and dig go. Internal. */
export function edgeWords(
  { plan, edges: names }: ScenePavement,
  { job }: PlanScene,
  style: DrawStyle,
) {
  const { label, units, system } = style;
  const distance = (length: EdgePlan['dig']) => setOutText(length, { job, system, units });
  return plan.edges.map((edge, index) =>
    label(rowKey(edge), {
      edge: names[index] ?? '',
      kind: label(edge.kind === null ? 'edge-kind-none' : `edge-${edge.kind}`),
      length: units.long(edge.length),
      base: distance(edge.base),
      dig: distance(edge.dig),
      top: distance(edge.top),
    }),
  );
}

function rowKey({ base, dig, top }: EdgePlan): DrawingLabelKey {
  if (!top.equals(dig)) return 'edge-row-top';
  if (dig.isZero()) return 'edge-row-none';
  return base.equals(dig) ? 'edge-row-same' : 'edge-row';
}

const GAP = 14;

/** The edges of all pavements in words, from a height down: in two columns where every row fits. Internal. */
export function edgeRows(scene: PlanScene, top: number, style: DrawStyle): Picture {
  const { margin, width, small, label } = style;
  const marks: string[] = [];
  let bottom = top;
  const write = (texts: readonly string[], from: number, place = {}): void => {
    const drawn = textLines(texts, from, style, place);
    marks.push(...drawn.marks);
    bottom = Math.max(bottom, drawn.bottom);
  };
  write([label(style.units.isUs ? 'set-outs-us' : 'set-outs-metric')], top);
  for (const pavement of scene.pavements) {
    write([label('edges-of', { pavement: labelName(pavement.plan.name) })], bottom + 6, {
      name: 'strong',
    });
    const rows = edgeWords(pavement, scene, style);
    const half = width / 2 - margin;
    const isTwo = rows.every((row) => textWidth(row, small) <= half - GAP);
    const each = isTwo ? Math.ceil(rows.length / 2) : rows.length;
    const column = { room: (isTwo ? half : 2 * half) - GAP, gap: 2 };
    const from = bottom;
    write(rows.slice(0, each), from, column);
    write(rows.slice(each), from, { ...column, x: margin + half });
  }
  return { marks, bottom };
}
