import type { DrawStyle } from '../draw-options.js';
import type { Picture } from './frame-drawing.js';
import { labelMarks, placeLabels, type LabelRequest, type LabelRoom } from './place-labels.js';
import { scaleBar } from './scale.js';
import { leftWords, textLines } from './text-lines.js';
import { rectangle } from '../svg/shapes.js';

/** The part of a drawing that is to scale. Internal. */
export interface ScaledFrame {
  readonly top: number;
  readonly bottom: number;
  readonly pixelsPerMetre: number;
}

/** What is drawn to scale, and the labels that found no place in it. Internal. */
export interface ScaledMarks {
  readonly marks: readonly string[];
  readonly left: readonly string[];
}

/** From the scale bar down to the first line of text. */
const BELOW_BAR = 14;

/** What is drawn to scale with its scale bar, so far below, and lines of text under it. Internal. */
export function scaledPicture(
  { marks, left }: ScaledMarks,
  { frame, below, lines }: { frame: ScaledFrame; below: number; lines: readonly string[] },
  style: DrawStyle,
): Picture {
  const foot = frame.bottom + below;
  const most = (style.width - 2 * style.margin) / 3;
  const bar = scaleBar(frame.pixelsPerMetre, { at: [style.margin, foot], most }, style);
  const told = textLines([...lines, ...leftWords(left, style)], foot + BELOW_BAR, style);
  return { marks: [...marks, ...bar, ...told.marks], bottom: told.bottom };
}

/** Labels inside what is drawn to scale, each on a ground of its own. Internal. */
export function scaledLabels(
  requests: readonly LabelRequest[],
  { frame, ...room }: Omit<LabelRoom, 'view'> & { readonly frame: ScaledFrame },
  { margin, width }: DrawStyle,
): ScaledMarks {
  const { top, bottom } = frame;
  const view = { x: margin, y: top, width: width - 2 * margin, height: bottom - top };
  const { placed, left } = placeLabels(requests, { view, ...room });
  return {
    marks: [...placed.map(({ box }) => rectangle('knock', box)), ...labelMarks(placed)],
    left: left.map(({ text }) => text),
  };
}
