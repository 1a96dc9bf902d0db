import { publishedFigures, type PublishedFigure } from '../../explain/published-figures.js';
import type { JobPlan, PlanSource } from '../../plan/plan.js';
import { formatFor } from '../../../units/format-for.js';
import { isQuantity } from '../../../units/quantity.js';
import type { StepItem } from '../../../working.js';
import { inWords } from '../words/in-words.js';
import type { SheetSystem } from '../layout/lengths-of-sheet.js';
import { heading, paragraph, type SheetLine } from '../layout/sheet-lines.js';

type Printed = Pick<PlanSource, 'title' | 'section' | 'status'>;

/** The published figures that a plan uses, by source. Internal. */
export function figureSources(plan: JobPlan, system: SheetSystem): SheetLine[] {
  // a plan that was read without its working still names its sources
  const lines =
    plan.working.length === 0
      ? plan.sources.map(sourceText)
      : figureTexts(publishedFigures(plan), system);
  if (lines.length === 0) return [];
  return [
    ...heading('WHERE THE FIGURES COME FROM'),
    ...lines.flatMap((line) => paragraph(line, '- ', '  ')),
  ];
}

const sourceText = ({ title, section, status }: Printed): string =>
  `${title}: ${section}${status === 'read' || status === 'derived' ? '' : ` [${status}]`}`;

/** One entry for each source, with its figures in the units of the sheet. */
function figureTexts(figures: readonly PublishedFigure[], system: SheetSystem): string[] {
  const sources = [...new Set(figures.map(({ source }) => source))];
  return sources.flatMap((source) => {
    const own = figures.filter((one) => one.source === source);
    const named = own
      .map(
        ({ name, value, usedIn }) => `${name} ${valueText(value, system)} (${usedIn.join(', ')})`,
      )
      .join('; ');
    return own.slice(0, 1).map((first) => `${sourceText(first)}. From it: ${named}`);
  });
}

const valueText = (value: StepItem, system: SheetSystem): string =>
  isQuantity(value) ? inWords(formatFor(value, system)) : String(value);
