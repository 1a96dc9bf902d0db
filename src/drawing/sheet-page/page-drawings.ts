import type { JobPlan } from '../../job/plan/plan.js';
import type { SheetSection } from '../../job/sheet/job-sheet-sections.js';
import type { SheetSystem } from '../../job/sheet/units-of-sheet.js';
import { drawDig } from '../dig/draw-dig.js';
import type { DrawOptions } from '../draw-options.js';
import { themeStyle } from '../frame/themes.js';
import { drawPlan, type LineColour } from '../plan/draw-plan.js';
import { drawProfile } from '../profile/draw-profile.js';
import { drawSection } from '../section/draw-section.js';
import { drawStakeRow } from '../stake-row/draw-stake-row.js';
import { element } from '../svg/element.js';
import { tag } from './page-text.js';

/** A drawing of a page; one that is on a phone alone shows a part larger. */
interface PageDrawing {
  readonly draw: (options: DrawOptions) => string;
  readonly isForPhone?: boolean;
}

/** Pixels of the wide layout: on paper its type is as large as that of the page. */
const WIDE = 620;

/** What the drawings of a page are made from. Internal. */
export interface PageBasis {
  readonly plan: JobPlan;
  readonly system: SheetSystem;
  readonly lineColours: readonly LineColour[];
}

/** The drawings that belong to a part of a sheet, each for a phone and for paper. Internal. */
export function pageDrawings(section: SheetSection, basis: PageBasis): string {
  const screen = { system: basis.system, theme: 'screen' } as const;
  const figures = drawingsOf(section, basis).flatMap(({ draw, isForPhone = false }) => [
    ...(isForPhone ? [] : [tag('figure', bare(draw({ ...screen, width: WIDE })), 'wide')]),
    tag('figure', bare(draw({ ...screen, narrow: true })), 'narrow'),
  ]);
  return figures.join('\n');
}

/** The tables of the sheet have the edges, so the plans are drawn without their rows. */
function drawingsOf({ kind, id }: SheetSection, basis: PageBasis): PageDrawing[] {
  const { plan, lineColours } = basis;
  if (kind === 'opening') {
    return [{ draw: (options) => drawPlan(plan, { ...options, lineColours, edgeRows: false }) }];
  }
  if (kind === 'pavement') return pavementDrawings(id ?? '', basis);
  return kind === 'string' ? stringDrawings(id ?? '', basis) : [];
}

/** On a phone the pavement alone, its section, and the depths of the dig where levels give them. */
function pavementDrawings(pavement: string, { plan, lineColours }: PageBasis): PageDrawing[] {
  const { pavements } = plan;
  const isLevelled = pavements.some(({ id, earth }) => id === pavement && earth.cutArea !== null);
  const own: PageDrawing = {
    draw: (options) => drawPlan(plan, { ...options, lineColours, pavement, edgeRows: false }),
    isForPhone: true,
  };
  return [
    ...(pavements.length > 1 ? [own] : []),
    { draw: (options) => drawSection(plan, { ...options, pavement }) },
    ...(isLevelled
      ? [{ draw: (options: DrawOptions) => drawDig(plan, { ...options, pavement }) }]
      : []),
  ];
}

/** The profile, and the row from above where a stake is out of line. */
function stringDrawings(string: string, { plan }: PageBasis): PageDrawing[] {
  const line = plan.stringLines.find(({ id }) => id === string);
  return [
    { draw: (options) => drawProfile(plan, { ...options, string }) },
    ...(line?.ok === false
      ? [{ draw: (options: DrawOptions) => drawStakeRow(line, options) }]
      : []),
  ];
}

const STYLE = element('style', {}, themeStyle('screen'));

/** A drawing without its style sheet: the page has it once. */
const bare = (svg: string): string => svg.replace(STYLE, '').trim();
