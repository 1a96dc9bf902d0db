import { formatFor } from '../../units/format-for.js';
import { formatQuantity } from '../../units/format-quantity.js';
import type { AnyQuantity, Length, Slope, Volume } from '../../units/quantity.js';
import {
  requireUncertainty,
  type PlanUncertainty,
  type UncertainFigure,
} from '../uncertainty/plan-uncertainty.js';
import { heading, paragraph, table } from './layout/sheet-lines.js';
import { readSheetOptions, type JobSheetOptions } from './layout/sheet-options.js';
import { sheetText } from './layout/sheet-text.js';
import { inWords } from './words/in-words.js';
import type { SheetSystem } from './layout/lengths-of-sheet.js';

/**
 * Writes how well the figures of a plan are known, as text: each figure with the range either way.
 *
 * @param uncertainty - from `planUncertainty`; not changed
 * @param options - see {@link JobSheetOptions}
 * @returns the text, lines ended by `\n`
 * @throws `WRONG_TYPE` for what says nothing about a plan, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`,
 *   `NOT_WHOLE`, `UNKNOWN_FIELD`
 * @example
 * const uncertainty = planUncertainty(planJob(job), { string: '1/8 in' });
 * renderUncertainty(uncertainty, { system: 'us' }).includes('+- 0.35 in') //=> true
 */
export function renderUncertainty(uncertainty: PlanUncertainty, options: JobSheetOptions): string {
  requireUncertainty(uncertainty);
  const { system, width } = readSheetOptions(options);
  const { readings, coverage, figures } = uncertainty;
  const subjects = [...new Set(figures.map(({ subject }) => subject))];
  const lines = [
    ...heading('HOW WELL THE FIGURES ARE KNOWN'),
    ...paragraph(
      `From ${readings} readings, to first order. Ranges are ${coverage} standard deviations either way. Outlines, thicknesses and materials count as exact.`,
    ),
    ...subjects.flatMap((subject) => [
      ...paragraph(subject),
      ...table(figures.filter((figure) => figure.subject === subject).map(rowOf(system))),
    ]),
  ];
  // the sheet has no empty line before its only heading
  return sheetText(lines, width).slice(1);
}

const rowOf =
  (system: SheetSystem) =>
  ({ what, value, expanded }: UncertainFigure): string[] => [
    what,
    inWords(formatFor(value, system)),
    `+- ${rangeText(expanded, system)}`,
  ];

/** A range in the unit of the figure, finer than the figure itself is printed. */
function rangeText(range: AnyQuantity, system: SheetSystem): string {
  const isUs = system === 'us';
  switch (range.dimension) {
    case 'length':
      return formatQuantity(
        range as Length,
        isUs ? { as: 'in', places: 2 } : { as: 'mm', places: 1 },
      );
    case 'volume':
      return inWords(
        formatQuantity(range as Volume, isUs ? { as: 'yd3', places: 2 } : { as: 'm3', places: 3 }),
      );
    default:
      return formatQuantity(range as Slope, { as: 'percent', places: 2 });
  }
}
