import type { GradePlan } from '../../plan/plan.js';
import { columnTable, entry, subheading, type SheetLine } from '../layout/sheet-lines.js';
import type { Sheet } from '../layout/sheet-context.js';
import { slopeText } from '../words/in-words.js';
import type { SheetUnits } from '../layout/units-of-sheet.js';

const GRADE_WORDS: Readonly<Record<GradePlan['kind'], string>> = {
  line: 'straight from level to level',
  plane: 'one plane',
  warped: 'warped between four corners',
};

/** Finished grade by fixed levels; nothing where the stakes give it. Internal. */
export function gradeLines(grade: GradePlan | null, { units }: Sheet): SheetLine[] {
  if (grade === null) return [];
  const { kind, levels, twist, steepest, flattest, verdict } = grade;
  const name = { head: 'fixed level', cells: levels.map((level) => level.name) };
  return [
    ...subheading(`Finished grade, ${GRADE_WORDS[kind]}`),
    ...columnTable(name, [
      { head: 'elevation', cells: levels.map(({ elevation }) => units.elevation(elevation)) },
      {
        head: 'finished grade',
        cells: levels.map(({ miss }) => missText(miss, units)),
        once: 'finished grade, every level',
      },
    ]),
    ...stretchLines(grade),
    ...(twist === null ? [] : entry('out of plane', units.depthWithUnit(twist.abs()))),
    ...entry('steepest fall', slopeText(steepest)),
    ...entry('flattest fall', `${slopeText(flattest)} ${verdict === 'pass' ? 'ok' : 'TOO FLAT'}`),
  ];
}

// the miss is the level less finished grade
function missText(miss: GradePlan['levels'][number]['miss'], units: SheetUnits): string {
  if (miss.isZero()) return 'meets it';
  return `${units.depthWithUnit(miss.abs())} ${miss.isNegative() ? 'above it' : 'below it'}`;
}

function stretchLines({ stretches }: GradePlan): SheetLine[] {
  if (stretches.length === 0) return [];
  return columnTable(
    {
      head: 'downhill',
      cells: stretches.map(({ from, to, grade }) =>
        grade.isNegative() || grade.isZero() ? `${from} to ${to}` : `${to} to ${from}`,
      ),
    },
    [
      { head: ['along', 'the line'], cells: stretches.map((one) => slopeText(one.grade.abs())) },
      { head: 'steepest', cells: stretches.map(({ fall }) => slopeText(fall)) },
    ],
  );
}
