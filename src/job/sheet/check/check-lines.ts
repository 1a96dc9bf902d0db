import { SOURCES, type SourceId } from '../../../sources/catalogue.js';
import { countOf, toleranceOf, worstOf, type SheetCheck } from '../words/check-words.js';
import { paragraph, type SheetLine } from '../layout/sheet-lines.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';

/** How a check is printed. Internal. */
export interface CheckStyle {
  readonly system: SheetSystem;
  /** The publications of the sheet, in the order of their numbers. */
  readonly sources: readonly SourceId[];
}

/** How many readings a check has, the worst of them, the tolerance and its source. Internal. */
export const checkLines = (check: SheetCheck, style: CheckStyle): SheetLine[] => [
  ...paragraph(`${countOf(check)}; worst: ${worstOf(check, style.system)}`, '  ', '    '),
  ...paragraph(`tolerance: ${toleranceOf(check, style)}`, '  ', '    '),
];

/** The publications by their numbers; no line if there are none. Internal. */
export const sourceLines = (sources: readonly SourceId[]): SheetLine[] =>
  sources.flatMap((id, index) => {
    const { title, section, status } = SOURCES[id];
    const doubt = status === 'read' || status === 'derived' ? '' : ` [${status}]`;
    return paragraph(`[${index + 1}] ${title}: ${section}${doubt}`, '', '    ');
  });
