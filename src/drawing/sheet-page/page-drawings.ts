import { present } from '../../invariant.js';
import type { JobPlan } from '../../job/plan/plan.js';
import type { SheetSection } from '../../job/sheet/sections/job-sheet-sections.js';
import type { SheetSystem } from '../../job/sheet/layout/lengths-of-sheet.js';
import { workSteps } from '../../job/steps/work-steps.js';
import { drawDig } from '../dig/draw-dig.js';
import type { DrawOptions } from '../draw-options.js';
import { drawPlan, type LineColour } from '../plan/draw-plan.js';
import { drawProfile } from '../profile/draw-profile.js';
import { drawSection } from '../section/draw-section.js';
import { drawStakeRow } from '../stake-row/draw-stake-row.js';
import { drawSteps } from '../steps/draw-steps.js';
import { tag } from './page-text.js';

/** A drawing of a page. */
interface PageDrawing {
  readonly draw: (options: DrawOptions) => string;
  /**
   * On paper it has the width of the page, or half of it in the layout for a phone, so that two stand
   * side by side. One for a phone alone shows a part larger. One for a screen alone would be too long
   * for a printed page.
   */
  readonly on: 'whole' | 'half' | 'phone' | 'screen';
}

/** Pixels of the wide layout: on paper its type is as large as that of the page. */
const WIDE = 620;

/** What the drawings of a page are made from. Internal. */
export interface PageBasis {
  readonly plan: JobPlan;
  readonly system: SheetSystem;
  readonly lineColours: readonly LineColour[];
}

/** The drawings that belong to a part of a sheet, each for a phone and for wider pages. Internal. */
export function pageDrawings(section: SheetSection, basis: PageBasis): string {
  const screen = { system: basis.system, theme: 'screen' } as const;
  const figures = drawingsOf(section, basis).flatMap(({ draw, on }) => [
    ...(on === 'phone'
      ? []
      : [tag('figure', bare(draw({ ...screen, width: WIDE })), `wide ${on}`)]),
    tag(
      'figure',
      bare(draw({ ...screen, narrow: true })),
      on === 'half' ? 'narrow half' : 'narrow phone',
    ),
  ]);
  return figures.join('\n');
}

/** The tables of the sheet have the edges, so the plans are drawn without their rows. */
function drawingsOf({ kind, id }: SheetSection, basis: PageBasis): PageDrawing[] {
  const { plan, lineColours } = basis;
  if (kind === 'opening') {
    return [
      {
        draw: (options) => drawPlan(plan, { ...options, lineColours, edgeRows: false }),
        on: 'whole',
      },
    ];
  }
  if (kind === 'pavement') return pavementDrawings(present(id, 'id'), basis);
  if (kind === 'steps') {
    const steps = workSteps(plan);
    return [{ draw: (options) => drawSteps(steps, options), on: 'screen' }];
  }
  return kind === 'string' ? stringDrawings(present(id, 'id'), basis) : [];
}

/** On a phone the pavement alone, its section, and the depths of the dig where levels give them. */
function pavementDrawings(pavement: string, { plan, lineColours }: PageBasis): PageDrawing[] {
  const { pavements } = plan;
  const isLevelled = pavements.some(({ id, earth }) => id === pavement && earth.cutArea !== null);
  const own: PageDrawing = {
    draw: (options) => drawPlan(plan, { ...options, lineColours, pavement, edgeRows: false }),
    on: 'phone',
  };
  return [
    ...(pavements.length > 1 ? [own] : []),
    { draw: (options) => drawSection(plan, { ...options, pavement }), on: 'half' },
    ...(isLevelled
      ? [
          {
            draw: (options: DrawOptions) => drawDig(plan, { ...options, pavement }),
            on: 'half' as const,
          },
        ]
      : []),
  ];
}

/** The profile, and the row from above where a stake is out of line. */
function stringDrawings(string: string, { plan }: PageBasis): PageDrawing[] {
  const line = plan.stringLines.find(({ id }) => id === string);
  return [
    { draw: (options) => drawProfile(plan, { ...options, string }), on: 'whole' },
    ...(line?.ok === false
      ? [{ draw: (options: DrawOptions) => drawStakeRow(line, options), on: 'whole' as const }]
      : []),
  ];
}

/** A drawing without its style sheet: the page has it once. */
const bare = (svg: string): string => svg.replace(/<style>[^<]*<\/style>\n?/, '').trim();
