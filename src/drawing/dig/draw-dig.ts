import { text } from '../../input/field.js';
import { fault } from '../../errors.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { groundOf } from '../../job/plan/earth/ground-of.js';
import type { JobPlan } from '../../job/plan/plan.js';
import { jobOfPlan } from '../../job/saved/job-of-plan.js';
import { requirePlan } from '../../job/require-plan.js';
import {
  checkWidth,
  DRAW_FIELDS,
  drawStyle,
  type DrawOptions,
  type DrawStyle,
} from '../draw-options.js';
import { pavementOf } from '../find-in-plan.js';
import { frameDrawing } from '../frame/frame-drawing.js';
import { CUT, hatchRules } from '../frame/hatches.js';
import { ZERO_RULES } from '../frame/rules.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { shownName } from '../svg/escape-text.js';
import { outlinePart } from '../plan/outline-part.js';
import { joined, type PlanPart, type PlanPen } from '../plan/parts.js';
import { drawPicture } from '../plan/place-parts.js';
import { planScene } from '../plan/plan-scene.js';
import { planView } from '../plan/plan-view.js';
import type { Place } from '../plan/rings-in-metres.js';
import {
  cornerLetters,
  deepestPart,
  digLines,
  evenPart,
  gridPart,
  gridScale,
  stakeDigs,
  stepsIn,
  zeroPart,
  zerosOf,
  type DigScene,
} from './dig-part.js';
import { depthsOf } from './depth-field.js';
import { describeDig, digNotes, digRemarks, evenDepth } from './dig-words.js';
import { DIG_TEXTS } from './dig-texts.js';

/** How a plan of depths is drawn. */
export interface DrawDigOptions extends DrawOptions {
  /** Id of the pavement. */
  readonly pavement: string;
}

const OPTIONS = shapeOf<DrawDigOptions>()({ ...DRAW_FIELDS, pavement: text() });

/**
 * Draws how deep the dig of a pavement goes, from above: figures from the existing surface down to the
 * subgrade on a grid of round coordinates, the line where dig turns to fill, and the deepest place. They
 * come from the levels of the ground that the plan was worked out with. Where one depth holds, the
 * drawing says so, with the digs that were measured at the stakes.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link DrawDigOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `PLAN_INVALID`, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_TYPE`,
 *   `REQUIRED`, `UNKNOWN_FIELD`, `NOT_FINITE`
 * @example
 * const svg = drawDig(planJob(job), { system: 'us', pavement: 'court' });
 * svg.includes('deepest dig') //=> true
 */
export function drawDig(plan: JobPlan, options: DrawDigOptions): string {
  requirePlan(plan);
  const read = readOptions(options, OPTIONS, checkWidth);
  const style = drawStyle(read, DIG_TEXTS);
  const of = digScene(plan, read.pavement);
  return frameDrawing(
    {
      kind: 'dig',
      rules: [...hatchRules([CUT]), ...ZERO_RULES],
      title: style.label('dig-title', { pavement: shownName(of.pavement.plan.name) }),
      notes: digNotes(of, style),
      remarks: digRemarks(of, stepsIn(penFrom(of, { top: 0, style })), style),
      description: describeDig(of, style),
      legend: digLegend(style),
      draw: (top) => {
        const pen = penFrom(of, { top, style });
        return drawPicture(digPart(of, pen), pen);
      },
    },
    style,
  );
}

function digScene(plan: JobPlan, id: string): DigScene {
  pavementOf(plan, id);
  const scene = planScene(plan, id);
  const [pavement] = scene.pavements;
  if (pavement === undefined) throw noPavement();
  const { basis } = pavement.plan.dig;
  if (basis !== 'spot-heights' && basis !== 'stake-levels') {
    return { scene, pavement, depthAt: null, zeros: [] };
  }
  const ground = groundOf(jobOfPlan(plan), id);
  if (ground === null) throw noPavement();
  const depthAt = depthsOf(ground);
  return { scene, pavement, depthAt, zeros: zerosOf(pavement, depthAt) };
}

const noPavement = () => fault('PLAN_INVALID', 'the plan has a pavement that is not in its job');

/** Clear space round the dig: coordinates stand in it. */
const GUTTERS = { wide: [74, 46], narrow: [62, 42] } as const;
/** Clear space for digs at stakes. */
const EVEN_GUTTER = [50, 20] as const;

function penFrom(
  of: DigScene,
  { top, style }: { readonly top: number; readonly style: DrawStyle },
): PlanPen {
  const { dig, paving } = of.pavement;
  const places = [...dig, ...paving].flatMap(({ points }) => points);
  const isEven = of.depthAt === null;
  const gutter = isEven ? EVEN_GUTTER : GUTTERS[style.isNarrow ? 'narrow' : 'wide'];
  return {
    view: planView([...places, ...stakePlaces(of)], { top, gutter, style }),
    style,
  };
}

/** Stakes that the picture shows: those with a dig, where one depth holds. */
function stakePlaces({ scene, depthAt }: DigScene): Place[] {
  if (depthAt !== null) return [];
  return scene.stringLines.flatMap(({ stakes }) =>
    stakes.flatMap(({ id, dig }) => {
      const place = scene.stakes.get(id);
      return dig === null || place === undefined ? [] : [place];
    }),
  );
}

function digPart(of: DigScene, pen: PlanPen): Required<PlanPart> {
  const letters = cornerLetters(outlinePart(of.pavement, pen));
  if (of.depthAt === null) {
    const even = evenPart(of, evenText(of, pen.style), pen);
    return joined([digLines(of, pen), stakeDigs(of, pen), even, letters]);
  }
  const deepest = deepestPart(of, pen);
  const grid = gridPart(of, of.depthAt, deepest.taken ?? [], pen);
  return joined([
    digLines(of, pen),
    zeroPart(of, pen),
    grid,
    gridScale(of, grid.taken, pen),
    deepest,
    letters,
  ]);
}

const evenText = (of: DigScene, style: DrawStyle): string =>
  style.label('one-depth', { depth: style.units.depthWithUnit(evenDepth(of, style)) });

const digLegend = (style: DrawStyle): LegendEntry[] =>
  legendEntries(style, [
    [{ line: 'dig' }, 'dig-bottom-line'],
    [{ line: 'dimension' }, 'paving-line'],
    [{ line: 'zero' }, 'zero-line'],
  ]);
