import { countLabel } from '../draw-label.js';
import { fault } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { requireStep, type WorkStep } from '../../job/steps/work-step.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { HOLD_RULES } from '../frame/rules.js';
import type { LegendEntry } from '../frame/legend.js';
import { shownName } from '../svg/escape-text.js';
import { rectangle, type Point } from '../svg/shapes.js';
import { drawnSteps, STEP_GAP, stepBox, whoSigns, type DrawnStep } from './step-boxes.js';
import { STEPS_TEXTS } from './steps-texts.js';

/** How the steps of work are drawn. */
export type DrawStepsOptions = DrawOptions;

/**
 * Draws the order of work as a strip: a frame for each step with its number, what it waits for, and a
 * double frame for each hold point with who signs. It reads down, in two columns where there is room.
 *
 * @param steps - the result of `workSteps`; not changed
 * @param options - see {@link DrawStepsOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `EMPTY_LIST`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`,
 *   `UNKNOWN_FIELD`
 * @example
 * const svg = drawSteps(workSteps(planJob(job)), { system: 'us' });
 * svg.includes('1. Locate and mark buried lines') //=> true
 * svg.includes('HOLD: crew leader signs.') //=> true
 */
export function drawSteps(steps: readonly WorkStep[], options: DrawStepsOptions): string {
  requireSteps(steps);
  const style = readStyle(options, STEPS_TEXTS);
  const drawn = drawnSteps(steps, style);
  const { label } = style;
  return frameDrawing(
    {
      kind: 'steps',
      rules: HOLD_RULES,
      title: label('steps-title'),
      notes: [label('steps-note')],
      remarks: [label('steps-waits'), label('steps-more')],
      description: describe(drawn, style),
      legend: legend(style),
      draw: (top) => drawColumns(drawn, top + 4, style),
    },
    style,
  );
}

function requireSteps(value: unknown): asserts value is readonly WorkStep[] {
  if (!Array.isArray(value)) {
    const message = `pass the result of workSteps(), got ${shown(value)}`;
    throw fault('WRONG_TYPE', message, { got: shown(value) });
  }
  if (value.length === 0) throw fault('EMPTY_LIST', 'there are no steps to draw');
  for (const step of value as unknown[]) requireStep(step);
}

const BETWEEN = 22;

/** In two columns of about the same height where there is room, else in one. */
function drawColumns(steps: readonly DrawnStep[], top: number, style: DrawStyle): Picture {
  const { margin, width, isNarrow } = style;
  const room = width - 2 * margin;
  if (isNarrow) return column(steps, { x: margin, width: room, top, style });
  const half = (room - BETWEEN) / 2;
  const at = (x: number, own: readonly DrawnStep[]) => column(own, { x, width: half, top, style });
  const heights = steps.map((one) => at(margin, [one]).bottom - top + STEP_GAP);
  const whole = heights.reduce((sum, height) => sum + height, 0);
  let above = 0;
  const first = heights.findIndex((height) => (above += height) >= whole / 2);
  const [left, right] = [steps.slice(0, first + 1), steps.slice(first + 1)];
  const columns = [at(margin, left), at(margin + half + BETWEEN, right)];
  return {
    marks: columns.flatMap(({ marks }) => marks),
    bottom: Math.max(...columns.map(({ bottom }) => bottom)),
  };
}

function column(
  steps: readonly DrawnStep[],
  {
    top,
    ...place
  }: {
    readonly x: number;
    readonly width: number;
    readonly top: number;
    readonly style: DrawStyle;
  },
): Picture {
  const marks: string[] = [];
  let y = top;
  steps.forEach((one, index) => {
    const drawn = stepBox(one, { ...place, top: y }, index === 0);
    marks.push(...drawn.marks);
    y = drawn.bottom + STEP_GAP;
  });
  return { marks, bottom: Math.max(top, y - STEP_GAP) };
}

/** Each step and who signs, in words. */
function describe(steps: readonly DrawnStep[], style: DrawStyle): string {
  const { label } = style;
  const list = steps.map(({ number, step }) => {
    const values = { number: `${number}`, title: shownName(step.title) };
    const [hold] = step.holdPoints;
    return hold === undefined
      ? label('describe-step', values)
      : label('describe-hold', { ...values, who: whoSigns(hold, style) });
  });
  return label('describe-steps', {
    steps: countLabel(label, 'count-steps', steps.length),
    holds: countLabel(label, 'count-holds', steps.flatMap(({ step }) => step.holdPoints).length),
    list: list.join(' '),
  });
}

function legend({ label }: DrawStyle): LegendEntry[] {
  const box = (name: string, [x, y]: Point, inset: number): string =>
    rectangle(name, {
      x: x - 15 + inset,
      y: y - 7 + inset,
      width: 30 - 2 * inset,
      height: 14 - 2 * inset,
    });
  return [
    { sample: { mark: (at) => box('stake', at, 0), of: 'stake' }, text: label('mark-step') },
    {
      sample: {
        mark: (at) => box('hold-frame', at, 0) + box('stake', at, 3),
        of: 'hold-frame',
      },
      text: label('mark-hold'),
    },
  ];
}
