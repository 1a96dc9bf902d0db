import type { DrawStyle } from '../draw-options.js';
import type { DrawingLabelKey } from '../label-texts.js';
import { cornersOfBox, line, type Point } from '../svg/shapes.js';
import { hatched, type Hatch } from './hatches.js';
import { textLines } from './text-lines.js';

/** One entry of a legend: a sample of the hatch, the line or the mark, and what it is. Internal. */
export interface LegendEntry {
  readonly sample:
    | { readonly hatch: Hatch }
    | { readonly line: string }
    | {
        readonly mark: (middle: Point) => string;
        /** The style of what it stands for. */
        readonly of: string;
      };
  readonly text: string;
}

/** Entries of a legend from samples and the keys of their texts. Internal. */
export const legendEntries = (
  { label }: Pick<DrawStyle, 'label'>,
  entries: readonly (readonly [LegendEntry['sample'], DrawingLabelKey])[],
): LegendEntry[] => entries.map(([sample, key]) => ({ sample, text: label(key) }));

/** The style of what a sample stands for. */
const styleOf = (sample: LegendEntry['sample']): string =>
  'hatch' in sample ? `ground-${sample.hatch.name}` : 'line' in sample ? sample.line : sample.of;

/** The styles of a mark, which has them first. */
function classOf(mark: string): string {
  const from = mark.indexOf('"') + 1;
  return mark.slice(from, mark.indexOf('"', from));
}

/** The entries of what stands in a picture. Internal. */
export function shownEntries(
  entries: readonly LegendEntry[],
  marks: readonly string[],
): LegendEntry[] {
  const names = new Set(marks.map(classOf).join(' ').split(' '));
  return entries.filter(({ sample }) => names.has(styleOf(sample)));
}

const SAMPLE = { width: 30, height: 15 };
const GAP = 8;
const LEAST_COLUMN = 215;

/** A legend in as many columns as there is room for, from a height down. Internal. */
export function drawLegend(
  entries: readonly LegendEntry[],
  top: number,
  style: DrawStyle,
): { readonly marks: readonly string[]; readonly bottom: number } {
  const { margin, width, small } = style;
  const room = width - 2 * margin;
  const columns = Math.floor(room / LEAST_COLUMN);
  const column = room / columns;
  const marks: string[] = [];
  let y = top;
  let bottom = top;
  entries.forEach(({ sample, text }, index) => {
    if (index % columns === 0) y = bottom;
    const x = margin + (index % columns) * column;
    const lines = textLines([text], y - 0.35 * small, style, {
      x: x + SAMPLE.width + GAP,
      room: column - SAMPLE.width - 2 * GAP,
    });
    marks.push(sampleMark(sample, { x, y }), ...lines.marks);
    bottom = Math.max(bottom, y + SAMPLE.height + 5, lines.bottom + 0.35 * small + 5);
  });
  return { marks, bottom };
}

function sampleMark(
  sample: LegendEntry['sample'],
  { x, y }: { readonly x: number; readonly y: number },
): string {
  if ('hatch' in sample) return hatched('area', cornersOfBox({ x, y, ...SAMPLE }), sample.hatch);
  const middle = y + SAMPLE.height / 2;
  if ('mark' in sample) return sample.mark([x + SAMPLE.width / 2, middle]);
  return line(sample.line, [x, middle], [x + SAMPLE.width, middle]);
}
