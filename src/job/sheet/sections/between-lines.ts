import type { PavementPlan } from '../../plan/plan.js';
import { columnTable, heading, paragraph, type SheetLine } from '../layout/sheet-lines.js';
import { betweenRows } from './depth-rows.js';
import type { Sheet } from '../layout/sheet-context.js';

/** Depths below a line from one string of a pavement to another; nothing where none is asked for. Internal. */
export function betweenLines(
  { betweenStrings, buildUp, name }: PavementPlan,
  { units }: Sheet,
): SheetLine[] {
  if (betweenStrings === null) return [];
  const { from, to } = betweenStrings;
  const rows = betweenRows(betweenStrings, { total: buildUp.total, tape: units.onTape });
  return [
    ...heading(`BETWEEN STRINGS ${from.toUpperCase()} AND ${to.toUpperCase()}, for ${name}`),
    ...paragraph(`Depths below a line from string ${from} to string ${to} (${units.depthUnit})`),
    ...columnTable(
      {
        head: ['distance', `from ${from}`],
        cells: rows.map(({ distance }) => units.long(distance)),
      },
      [
        {
          head: ['to finished', 'grade'],
          cells: rows.map(({ toFinish }) => units.depth(toFinish)),
          once: 'to finished grade, everywhere',
        },
        {
          head: ['to', 'subgrade'],
          cells: rows.map(({ toSubgrade }) => units.depth(toSubgrade)),
          once: 'to subgrade, everywhere',
        },
      ],
    ),
    ...paragraph(
      `The subgrade is ${units.depthWithUnit(buildUp.total)} below finished grade.`,
      '  ',
    ),
  ];
}
