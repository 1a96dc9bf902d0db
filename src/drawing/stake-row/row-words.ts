import { entry, lastOf } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { ARROW_SAMPLE } from '../frame/samples.js';
import { labelName } from '../surface-rows.js';
import type { StakeRow } from './stake-row.js';

const endsOf = ({ stakes }: StakeRow) => ({
  first: labelName(entry(stakes, 0).id),
  last: labelName(lastOf(stakes).id),
});

/** Which way to face, the scale of the offsets and what the row is checked against. Internal. */
export function rowNotes(row: StakeRow, factor: number, { label, units }: DrawStyle): string[] {
  const { reference, tolerance } = row;
  const ends = endsOf(row);
  const by = reference === 'ends' ? 'row-by-ends' : 'row-by-fit';
  return [
    label('row-facing', ends),
    factor === 1 ? label('row-same-scale') : label('row-scaled', { factor: `${factor}` }),
    ...(reference === null || tolerance === null
      ? []
      : [
          `${label(by, ends)} ${label('row-within', { tolerance: units.depthWithUnit(tolerance) })}`,
        ]),
  ];
}

/** What the check says, the moves to make, and each stake that is off, as the sheet prints them. Internal. */
export function rowLines(row: StakeRow, style: DrawStyle): string[] {
  return [style.label(`row-${row.code}`), ...moveLines(row, style), ...stakeLines(row, style)];
}

function moveLines(row: StakeRow, { label, units }: DrawStyle): string[] {
  const ends = endsOf(row);
  return row.moves.map(({ id, distance, direction }) =>
    label('row-move-words', {
      ...ends,
      stake: labelName(id),
      distance: units.depthWithUnit(distance),
      side: label(`row-${direction}`),
    }),
  );
}

const stakeLines = ({ stakes }: StakeRow, { label, units }: DrawStyle): string[] =>
  stakes.map(({ id, station, offset, inTolerance }) => {
    const off = units.depth(offset.abs());
    const side = label(offset.isNegative() ? 'row-right' : 'row-left');
    const text =
      off === '0'
        ? label('row-on')
        : label('row-off', { offset: `${off} ${units.depthUnit}`, side });
    return label(inTolerance ? 'row-entry' : 'row-entry-out', {
      stake: labelName(id),
      station: units.long(station),
      off: text,
    });
  });

/** The finding and the moves in words. Internal. */
export const describeRow = (row: StakeRow, style: DrawStyle): string =>
  style.label('describe-row', {
    stakes: row.stakes
      .slice(0, 60)
      .map(({ id }) => labelName(id))
      .join(', '),
    note: style.label(`row-${row.code}`),
    moves: moveLines(row, style).join('; '),
  });

/** What the marks mean. Internal. */
export const rowLegend = ({ isAmbiguous }: StakeRow, style: DrawStyle): LegendEntry[] =>
  legendEntries(style, [
    [{ line: 'string' }, 'row-line'],
    [{ line: 'lift' }, 'row-tolerance'],
    [ARROW_SAMPLE, isAmbiguous ? 'row-alternative' : 'row-move'],
  ]);
