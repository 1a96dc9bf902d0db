import { choice, flag, list, object, optional, text } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { JobPlan } from '../../job/plan/plan.js';
import { requirePlan } from '../../job/require-plan.js';
import { fault } from '../../errors.js';
import { shownText } from '../../input/shown.js';
import { LOCATE_COLOURS } from '../../sources/locate-colours.js';
import {
  checkWidth,
  DRAW_FIELDS,
  drawStyle,
  type DrawOptions,
  type DrawStyle,
} from '../draw-options.js';
import { pavementOf } from '../find-in-plan.js';
import { frameDrawing } from '../frame/frame-drawing.js';
import { BUILDING, HAND_DIG, hatchRules, PAVER, SLAB } from '../frame/hatches.js';
import { MARK_RULES, PLAN_RULES } from '../frame/rules.js';
import { shownName } from '../svg/escape-text.js';
import { edgePart } from './edge-part.js';
import { edgeRows } from './edge-rows.js';
import { fallPart } from './fall-part.js';
import { nearbyPart, zoneMarks, type LineColours, type LocateColour } from './nearby-part.js';
import { oldPavingPart } from './old-paving-part.js';
import { outlinePart, pavingArea } from './outline-part.js';
import { joined, type PlanPart, type PlanPen } from './parts.js';
import { drawPicture } from './place-parts.js';
import { placesOfScene, planScene, type PlanScene } from './plan-scene.js';
import { planView } from './plan-view.js';
import { describePlan, planLegend, planNotes, planRemarks } from './plan-words.js';
import { offsetFactor, stakePart } from './stake-part.js';
import { PLAN_TEXTS } from './plan-texts.js';

/** The colour that a line is marked in. */
export interface LineColour {
  /** Id of a marked line of the job. */
  readonly line: string;
  /** The colour that its locator marked it in: it tells what the line is. */
  readonly colour: LocateColour;
}

/** How a plan is drawn. */
export interface DrawPlanOptions extends DrawOptions {
  /** Marked lines whose colour is known. Default: none; they are drawn plain, with their ids. */
  readonly lineColours?: readonly LineColour[];
  /** Id of the one pavement to draw, with its strings, larger than among the others. Default: all. */
  readonly pavement?: string;
  /** False leaves out the rows of edges below the picture, where a sheet beside it has them. Default true. */
  readonly edgeRows?: boolean;
}

/** Colours of marked lines, as a field. Internal. */
export const lineColoursField = optional(
  list(
    object(
      shapeOf<LineColour>()({
        line: text(),
        colour: choice(Object.keys(LOCATE_COLOURS) as [LocateColour, ...LocateColour[]]),
      }),
    ),
    { of: 'line colours', least: 0, most: 20, unique: 'line' },
  ),
);

const OPTIONS = shapeOf<DrawPlanOptions>()({
  ...DRAW_FIELDS,
  lineColours: lineColoursField,
  pavement: optional(text()),
  edgeRows: optional(flag, true),
});

/**
 * Draws a job from above: each pavement with its corners and edges named as on the sheet, the edges of
 * base and dig, lengths and set-outs, strings and stakes with what they are off their lines, falls, and
 * what lies near: marked lines with the zones to dig by hand, trees with their root zones, buildings,
 * slabs and old paving. x runs to the right and y up, as the job has them.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link DrawPlanOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `PLAN_INVALID`, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_TYPE`,
 *   `REQUIRED`, `UNKNOWN_FIELD`, `TOO_MANY`, `DUPLICATE_ID`, `NOT_FINITE`
 * @example
 * const svg = drawPlan(planJob(job), { system: 'us' });
 * svg.includes('>1 (A-B) 44&#39; 0&quot;</text>') //=> true
 */
export function drawPlan(plan: JobPlan, options: DrawPlanOptions): string {
  requirePlan(plan);
  const read = readOptions(options, OPTIONS, checkWidth);
  const style = drawStyle(read, PLAN_TEXTS);
  const only = read.pavement === undefined ? undefined : pavementOf(plan, read.pavement);
  const scene = planScene(plan, only?.id);
  const colours = coloursOf(scene, read.lineColours ?? []);
  const penFrom = (top: number): PlanPen => planPen(scene, top, style);
  const factor = offsetFactor(scene, penFrom(0));
  const title =
    only === undefined
      ? style.label('plan-title', { site: shownName(plan.name) })
      : style.label('plan-title-of', { pavement: shownName(only.name) });
  return frameDrawing(
    {
      kind: 'plan',
      rules: [
        ...hatchRules([PAVER, HAND_DIG, BUILDING, SLAB]),
        ...PLAN_RULES,
        ...(style.theme === 'screen' ? MARK_RULES : []),
      ],
      title,
      notes: planNotes(scene, factor, style),
      remarks: planRemarks(factor, style),
      description: describePlan(scene, style),
      legend: planLegend(scene, style),
      draw: (top) => {
        const pen = penFrom(top);
        const { marks, bottom } = drawPicture(planPart(scene, { factor, colours, pen }), pen);
        const rows = read.edgeRows ? edgeRows(scene, bottom + 8, style) : { marks: [], bottom };
        return { marks: [...marks, ...rows.marks], bottom: rows.bottom };
      },
    },
    style,
  );
}

function coloursOf({ job }: PlanScene, given: readonly LineColour[]): LineColours {
  const known = new Set((job.utilities ?? []).map(({ id }) => id));
  given.forEach(({ line }, index) => {
    if (known.has(line)) return;
    const message = `the job has no marked line "${shownText(line)}"`;
    throw fault('UNKNOWN_ID', message, {}, ['lineColours', index, 'line']);
  });
  return new Map(given.map(({ line, colour }) => [line, colour]));
}

const planPen = (scene: PlanScene, top: number, style: DrawStyle): PlanPen => ({
  view: planView(placesOfScene(scene), {
    top,
    // clear space round the site, for names and dimensions
    gutter: style.isNarrow ? [58, 34] : [80, 54],
    style,
  }),
  style,
});

/** From what lies below to what lies above. */
function planPart(
  scene: PlanScene,
  {
    factor,
    colours,
    pen,
  }: { readonly factor: number; readonly colours: LineColours; readonly pen: PlanPen },
): Required<PlanPart> {
  const { pavements } = scene;
  return joined([
    { marks: [...pavements.flatMap((one) => pavingArea(one, pen)), ...zoneMarks(scene, pen)] },
    oldPavingPart(scene, pen),
    ...pavements.map((one) => outlinePart(one, pen)),
    ...pavements.map((one) => edgePart(one, scene, pen)),
    nearbyPart(scene, colours, pen),
    stakePart(scene, factor, pen),
    ...pavements.map((one) => fallPart(one, scene, pen)),
  ]);
}
