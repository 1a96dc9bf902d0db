import { entry, lastOf } from '../../../invariant.js';
import type { PavementPlan, StringLinePlan } from '../../plan/plan.js';
import {
  columnTable,
  heading,
  paragraph,
  subheading,
  type SheetLine,
} from '../layout/sheet-lines.js';
import { moveText } from '../words/describe.js';
import type { Sheet } from '../layout/sheet-context.js';
import { depthLines } from './string-depths.js';
import { stakeLines } from './string-stakes.js';
import { sagText } from '../words/sag-text.js';
import { slopeText } from '../words/in-words.js';

/** The part of the sheet about one string. Internal. */
export function stringSection(
  line: StringLinePlan,
  pavement: PavementPlan,
  sheet: Sheet,
): SheetLine[] {
  const { units } = sheet;
  const { first, last } = endsOf(line);
  const height = units.depthWithUnit(line.stringHeight);
  return [
    ...heading(`STRING ${line.id.toUpperCase()}, for ${pavement.name}`),
    ...paragraph(`From stake ${first} to stake ${last}, ${height} above finished grade.`),
    ...depthLines(line, pavement, sheet),
    ...stakeLines(line, sheet),
    ...sagLines(line, sheet),
    ...alignmentLines(line, sheet),
    ...fallLines(line),
  ];
}

/** The stakes that give the facing. */
const endsOf = ({ stakes }: StringLinePlan) => ({
  first: entry(stakes, 0).id,
  last: lastOf(stakes).id,
});

function sagLines({ sags }: StringLinePlan, { units }: Sheet): SheetLine[] {
  if (sags.length === 0) return [];
  const unit = units.depthUnit;
  const cells = sags.map(({ sag }) => sagText(sag, units));
  return [
    ...subheading(`Sag of the string at mid-span (${unit})`),
    ...columnTable({ head: 'span', cells: sags.map(({ from, to }) => `${from} to ${to}`) }, [
      { head: 'sag', cells, once: 'sag, every span' },
    ]),
    ...paragraph(
      'The string hangs low by this much. At mid-span, measure that much less down from it.',
      '  ',
    ),
  ];
}

function alignmentLines(line: StringLinePlan, sheet: Sheet): SheetLine[] {
  const { units, system } = sheet;
  const { first, last } = endsOf(line);
  const by = line.reference === 'ends' ? `the line ${first} to ${last}` : 'the best line';
  const title = `Alignment: within ${units.depthWithUnit(line.tolerance)} of ${by}`;
  const facing = { from: first, to: last };
  return [
    ...subheading(title),
    ...offsetLines(line, sheet),
    ...paragraph(line.note, '  '),
    ...line.moves.flatMap((move) => paragraph(moveText(move, { system, facing }), '  > ', '    ')),
  ];
}

/** Stakes that are off the line; nothing where all are on it. */
function offsetLines(line: StringLinePlan, { units }: Sheet): SheetLine[] {
  if (line.ok === null) return [];
  const rows = line.stakes.map(({ id, offset, inTolerance }) => {
    const off = units.depth(offset.abs());
    const side = offset.isNegative() ? 'right' : 'left';
    return { id, off: off === '0' ? '-' : `${off} ${side}`, verdict: inTolerance ? 'ok' : 'OUT' };
  });
  const shown = rows.filter(({ off, verdict }) => off !== '-' || verdict !== 'ok');
  if (shown.length === 0) return [];
  const { first, last } = endsOf(line);
  return [
    ...columnTable({ head: 'stake', cells: shown.map(({ id }) => id) }, [
      { head: `off the line (${units.depthUnit})`, cells: shown.map(({ off }) => off) },
      { head: '', cells: shown.map(({ verdict }) => verdict) },
    ]),
    ...paragraph(
      `Left and right are as you face from ${first} to ${last}.${shown.length < rows.length ? ' The other stakes are on the line.' : ''}`,
      '  ',
    ),
  ];
}

function fallLines({ slopes }: StringLinePlan): SheetLine[] {
  if (slopes.length === 0) return [];
  const isDownhill = (slope: (typeof slopes)[number]['slope']) =>
    slope.isNegative() || slope.isZero();
  return [
    ...subheading('Fall'),
    ...columnTable(
      {
        head: 'downhill',
        cells: slopes.map(({ from, to, slope }) =>
          isDownhill(slope) ? `${from} to ${to}` : `${to} to ${from}`,
        ),
      },
      [
        {
          head: ['on', 'string'],
          cells: slopes.map(({ slope }) => slopeText(slope.abs())),
          once: 'on string, every span',
        },
        {
          head: 'steepest',
          cells: slopes.map(({ fall }) => slopeText(fall)),
          once: 'steepest, every span',
        },
        {
          head: '',
          cells: slopes.map(({ verdict }) => (verdict === 'pass' ? 'ok' : 'TOO FLAT')),
          once: 'minimum fall, every span',
        },
      ],
    ),
  ];
}
