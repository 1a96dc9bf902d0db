import { SOURCES, type SourceId } from '../../sources/catalogue.js';
import { countOf, toleranceOf, worstOf, type SheetCheck } from './check-words.js';
import { wrap } from './layout.js';
import type { SheetSystem } from './units-of-sheet.js';

/** How a check is printed. Internal. */
export interface CheckStyle {
  readonly system: SheetSystem;
  readonly width: number;
  /** The publications of the sheet, in the order of their numbers. */
  readonly sources: readonly SourceId[];
}

/** How many readings a check has, the worst of them, the tolerance and its source. Internal. */
export const checkLines = (check: SheetCheck, style: CheckStyle): string[] => [
  ...wrap(`${countOf(check)}; worst: ${worstOf(check, style.system)}`, style.width, '  ', '    '),
  ...wrap(`tolerance: ${toleranceOf(check, style)}`, style.width, '  ', '    '),
];

/** The publications by their numbers; no line if there are none. Internal. */
export const sourceLines = (sources: readonly SourceId[], width: number): string[] =>
  sources.flatMap((id, index) => {
    const { title, section, status } = SOURCES[id];
    const doubt = status === 'read' || status === 'derived' ? '' : ` [${status}]`;
    return wrap(`[${index + 1}] ${title}: ${section}${doubt}`, width, '', '    ');
  });
