import { fault } from '../../errors.js';
import { optional, text } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { JobPlan } from '../../job/plan/plan.js';
import { placesOfPlan } from '../../job/saved/places-of-plan.js';
import { requirePlan } from '../../job/require-plan.js';
import {
  checkWidth,
  DRAW_FIELDS,
  drawStyle,
  type DrawOptions,
  type DrawStyle,
} from '../draw-options.js';
import { pavementOf, stringForSection } from '../find-in-plan.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { grainRules, SOIL } from '../frame/grain-hatches.js';
import { FILL, OLD_PAVING } from '../frame/hatches.js';
import { LIFT_RULES } from '../frame/rules.js';
import { labelName, LAYER_HATCHES } from '../surface-rows.js';
import { columnMarks } from './section-column.js';
import { levelDimensions, turnedDimensions } from './section-dimensions.js';
import { sectionFigures, type SectionFigures } from './section-figures.js';
import { sectionFrame, type SectionFrame } from './section-frame.js';
import { digMarks, groundMarks, UNDER } from './section-ground.js';
import { sectionLayerMarks } from './section-layers.js';
import { stringMarks } from './section-string.js';
import {
  describeSection,
  sectionLegend,
  sectionNotes,
  sectionRemarks,
  stringName,
} from './section-words.js';
import { SECTION_TEXTS } from './section-texts.js';

/** How a section is drawn. */
export interface DrawSectionOptions extends DrawOptions {
  /** Id of the pavement. */
  readonly pavement: string;
  /** Id of the string that depths run down from. Default: the first that serves the pavement. */
  readonly string?: string;
}

const OPTIONS = shapeOf<DrawSectionOptions>()({
  ...DRAW_FIELDS,
  pavement: text(),
  string: optional(text()),
});

/**
 * Draws a section through the edge of a pavement: the string and a stake, finished grade, each layer
 * with its thickness, the lifts, the subgrade, the dig, the existing surface on average, and base and
 * edge restraint past the paving. Depths run from the string down, as the sheet prints them; without a
 * string they run from finished grade. The edge is the one where the dig reaches farthest.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link DrawSectionOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `PLAN_INVALID`, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_TYPE`,
 *   `REQUIRED`, `UNKNOWN_FIELD`, `NOT_FINITE`
 * @example
 * const svg = drawSection(planJob(job), { system: 'us', pavement: 'court' });
 * svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"') //=> true
 * svg.includes('>36 3/4</text>') //=> true
 */
export function drawSection(plan: JobPlan, options: DrawSectionOptions): string {
  requirePlan(plan);
  const read = readOptions(options, OPTIONS, checkWidth);
  const style = drawStyle(read, SECTION_TEXTS);
  const pavement = pavementOf(plan, read.pavement);
  const line = stringForSection(plan, pavement, read.string);
  const figures = sectionFigures({ pavement, line, job: placesOfPlan(plan) }, style);
  if (figures === null) throw fault('PLAN_INVALID', 'the plan has a pavement without edges');
  const told = {
    site: plan.name,
    pavement,
    line,
    figures,
    factor: sectionFrame(figures, 0, style).factor,
  };
  const name = line === null ? '' : stringName(line);
  return frameDrawing(
    {
      kind: 'section',
      rules: [...grainRules([...LAYER_HATCHES, SOIL, OLD_PAVING, FILL]), ...LIFT_RULES],
      title: style.label('section-title', { pavement: labelName(pavement.name) }),
      notes: sectionNotes(told, style),
      remarks: sectionRemarks(told, style),
      description: describeSection(told, style),
      legend: sectionLegend(told, style),
      draw: (top) =>
        drawPicture(figures, { frame: sectionFrame(figures, top, style), name, style }),
    },
    style,
  );
}

function drawPicture(
  figures: SectionFigures,
  {
    frame,
    name,
    style,
  }: {
    readonly frame: SectionFrame;
    readonly name: string;
    readonly style: DrawStyle;
  },
): Picture {
  const column = columnMarks(figures, frame, style);
  const top = Math.max(frame.bottom + UNDER, column.bottom);
  const below = levelDimensions(figures, { frame, top, style });
  return {
    marks: [
      ...groundMarks(figures, frame),
      ...sectionLayerMarks(figures, frame),
      ...digMarks(figures, frame),
      ...stringMarks(figures, { frame, name, style }),
      ...turnedDimensions(figures, frame, style),
      ...column.marks,
      ...below.marks,
    ],
    bottom: below.bottom,
  };
}
