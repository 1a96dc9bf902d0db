import type { StringLinePlan } from '../../job/plan/plan.js';
import type { StakeLine } from '../../stakes/check-stake-line.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { LIFT_RULES } from '../frame/rules.js';
import { scaledPicture } from '../frame/scaled-picture.js';
import { labelName } from '../surface-rows.js';
import { rowFrame, type RowFrame } from './row-frame.js';
import { rowMarks } from './row-marks.js';
import { describeRow, rowLegend, rowLines, rowNotes } from './row-words.js';
import { rowOf, type StakeRow } from './stake-row.js';
import { ROW_TEXTS } from './row-texts.js';

/** How a row of stakes is drawn. */
export type DrawStakeRowOptions = DrawOptions;

/**
 * Draws a row of stakes from above: the line it was checked against, each stake as far off it as
 * measured, drawn larger by a stated factor, and the moves that bring the row into line. The first stake
 * is on the left; what is left of the row is up.
 *
 * @param row - the result of `checkStakeLine`, or a string of a plan; not changed
 * @param options - see {@link DrawStakeRowOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const row = checkStakeLine({
 *   stakes: [
 *     { id: 'A', x: '0 ft', y: '0 in' },
 *     { id: 'B', x: '12 ft', y: '1 1/4 in' },
 *     { id: 'C', x: '24 ft', y: '0 in' },
 *   ],
 *   tolerance: '1/2 in',
 * });
 * const svg = drawStakeRow(row, { system: 'us' });
 * svg.includes('facing from A to C, move B 1 1/4 in right') //=> true
 */
export function drawStakeRow(
  row: StakeLine | StringLinePlan,
  options: DrawStakeRowOptions,
): string {
  const read = rowOf(row);
  const style = readStyle(options, ROW_TEXTS);
  const { string } = read;
  const title =
    string === null
      ? style.label('row-title-plain')
      : style.label('row-title', { string: labelName(string.toUpperCase(), style.title) });
  return frameDrawing(
    {
      kind: 'stake-row',
      rules: LIFT_RULES,
      title,
      notes: rowNotes(read, rowFrame(read, 0, style).factor, style),
      description: describeRow(read, style),
      legend: rowLegend(read, style),
      draw: (top) => drawPicture(read, rowFrame(read, top, style), style),
    },
    style,
  );
}

function drawPicture(row: StakeRow, frame: RowFrame, style: DrawStyle): Picture {
  const lines = rowLines(row, style);
  return scaledPicture(rowMarks(row, frame, style), { frame, below: 16, lines }, style);
}
