import { choice, optional } from '../../input/field.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import type { JobPlan } from '../../job/plan/plan.js';
import { requirePlan } from '../../job/require-plan.js';
import {
  jobSheetSections,
  type SheetSection,
} from '../../job/sheet/sections/job-sheet-sections.js';
import type { SheetLine } from '../../job/sheet/layout/sheet-lines.js';
import { systemField } from '../../job/sheet/layout/sheet-options.js';
import type { SheetSystem } from '../../job/sheet/layout/lengths-of-sheet.js';
import { lineColoursField, type LineColour } from '../plan/draw-plan.js';
import { pageDrawings } from './page-drawings.js';
import { pageLines } from './page-lines.js';
import { pageStyle, type SheetPaper } from './page-style.js';
import { plainText, tag } from './page-text.js';

/** How the page of a job is written. */
export interface JobSheetHTMLOptions {
  /** Feet and inches, or metres and millimetres. */
  readonly system: SheetSystem;
  /** The paper it is printed on. Default: `letter` in feet and inches, `a4` in metres. */
  readonly paper?: SheetPaper;
  /** Marked lines whose colour is known, as for `drawPlan`. Default: none; they are drawn plain. */
  readonly lineColours?: readonly LineColour[];
}

const OPTIONS = shapeOf<JobSheetHTMLOptions>()({
  system: systemField,
  paper: optional(choice<SheetPaper>(['a4', 'letter'])),
  lineColours: lineColoursField,
});

/** Nothing is loaded and nothing is run, whatever a name contains. */
const NO_LOADING = "default-src 'none'; style-src 'unsafe-inline'";

/**
 * Writes the sheet of a job as one page for a phone and for paper: the lines of `renderJobSheet` as
 * headings, tables and lists, with the drawings in place. The page stands alone: no script, nothing
 * loaded, light or dark as the reader's screen is set, black on paper. On a phone the drawings are in
 * their narrow layout, and on paper sections and depths of a dig stand side by side in it. Parts follow
 * each other on the printed pages; no table row and no drawing is cut in two.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link JobSheetHTMLOptions}
 * @returns an HTML document as text
 * @throws `PLAN_INVALID`, `UNKNOWN_ID`, `UNKNOWN_CHOICE`, `WRONG_TYPE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `TOO_MANY`, `DUPLICATE_ID`, `NOT_FINITE`
 * @example
 * const page = renderJobSheetHTML(planJob(job), { system: 'us' });
 * page.includes('<h2>CHECK BEFORE YOU START</h2>') //=> true
 * page.includes('role="img"') //=> true
 */
export function renderJobSheetHTML(plan: JobPlan, options: JobSheetHTMLOptions): string {
  requirePlan(plan);
  const read = readOptions(options, OPTIONS);
  const { system, paper = system === 'us' ? 'letter' : 'a4', lineColours = [] } = read;
  const sections = jobSheetSections(plan, system).map((section) => {
    const [before = [], after = []] = splitLines(section);
    return tag(
      'section',
      [
        pageLines(before),
        pageDrawings(section, { plan, system, lineColours }),
        pageLines(after),
      ].join('\n'),
      // no class of a drawing: its rules would hold here too
      `${section.kind}-part`,
    );
  });
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="${NO_LOADING}">`,
    tag('title', plainText(plan.name)),
    tag('style', pageStyle(paper)),
    '</head>',
    '<body class="settline-screen">',
    tag('main', `\n${sections.join('\n')}\n`),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** Drawings stand at the end of their part; the order of work stands before its first step. */
function splitLines({ kind, lines }: SheetSection): readonly (readonly SheetLine[])[] {
  const first = kind === 'steps' ? lines.findIndex((one) => one.kind === 'subheading') : -1;
  return first < 0 ? [lines, []] : [lines.slice(0, first), lines.slice(first)];
}
