import { present } from '../../../invariant.js';
import type { EdgePlan, PavementPlan } from '../../plan/plan.js';
import type { Outline } from '../../../outline/ring.js';
import {
  columnTable,
  entry,
  paragraph,
  subheading,
  type SheetLine,
} from '../layout/sheet-lines.js';
import { edgeNames } from './corners.js';
import { setOutStep, setOutText } from './set-outs.js';
import type { Sheet } from '../layout/sheet-context.js';

/** How far base and dig are marked outside the paving, edge by edge, and the areas. Internal. */
export function digLineLines(
  { id, edges, areas, top }: PavementPlan,
  outline: Outline,
  sheet: Sheet,
): SheetLine[] {
  const { units } = sheet;
  const names = edgeNames(outline);
  const isTapered = sheet.job.pavements.some((one) => one.id === id && one.taperedBase === true);
  const isBase = edges.some(({ base, dig }) => !base.equals(dig));
  const cells = (distance: (edge: EdgePlan) => EdgePlan['dig']) =>
    edges.map((edge) => setOutText(distance(edge), sheet));
  const dig = { head: 'dig', cells: cells((edge) => edge.dig), once: 'dig, every edge' };
  const base = { head: 'base', cells: cells((edge) => edge.base), once: 'base, every edge' };
  const topCut = { head: 'top', cells: cells((edge) => edge.top), once: 'top, every edge' };
  const columns = [
    { head: 'length', cells: edges.map(({ length }) => units.long(length)) },
    ...(isBase ? [base, dig] : [{ ...dig, head: 'base, dig', once: 'base and dig, every edge' }]),
    ...(top === null ? [] : [topCut]),
  ];
  const labels = edges.map(
    ({ kind }, index) => `${present(names[index], 'name of an edge')} ${kind ?? 'not said'}`,
  );
  return [
    ...subheading(`Dig line: distance outside the paving edge (${units.depthUnit})`),
    ...columnTable({ head: 'edge', cells: labels }, columns),
    ...paragraph(roundingText(sheet), '  '),
    ...(top === null ? [] : paragraph('top: the edge of the dig at the top of its slope', '  ')),
    ...(edges.some(({ kind }) => kind === null)
      ? paragraph('not said: planned as open. Find out what lies along it.', '  ')
      : []),
    ...entry('area of the paving', units.area(areas.paving)),
    ...entry('area of the base', units.area(areas.base)),
    ...entry('area of the dig at the bottom', units.area(areas.dig)),
    ...(top === null ? [] : entry('area of the dig at the top', units.area(top.area))),
    ...widenedLines(edges, isTapered),
  ];
}

const roundingText = (sheet: Sheet): string =>
  `Rounded up to steps of ${stepText(sheet)}. Areas and orders are taken from the exact distances.`;

/** The step as it is: 1/4 in, 5 mm, 6.35 mm. */
function stepText(sheet: Sheet): string {
  const step = setOutStep(sheet);
  const { units } = sheet;
  if (units.onTape(step).equals(step)) return units.depthWithUnit(step);
  const unit = units.isUs ? 'in' : 'mm';
  return `${step.to(unit).toSignificantDigits(4).toString()} ${unit}`;
}

/** What is counted in the strips beyond the paving. */
function widenedLines(edges: readonly EdgePlan[], isTapered: boolean): SheetLine[] {
  if (edges.every(({ dig }) => dig.isZero())) return [];
  return paragraph(isTapered ? TAPERED : FULL, '  ');
}

const FULL =
  'Soil and stone in the strips beyond the paving are counted at full thickness, with no taper.';
const TAPERED =
  'Stone beyond the edge restraint is counted as it tapers off to the outer edge of the base; soil of the strips is counted at full depth.';
