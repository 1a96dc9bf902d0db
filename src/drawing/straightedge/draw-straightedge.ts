import { grainRules } from '../frame/grain-hatches.js';
import type { FlatnessCheck } from '../../checks/check-flatness.js';
import { spanText } from '../../checks/print-amount.js';
import { readStyle, type DrawOptions, type DrawStyle } from '../draw-options.js';
import { frameDrawing, type Picture } from '../frame/frame-drawing.js';
import { ALLOWED_RULES } from '../frame/rules.js';
import { scaledPicture } from '../frame/scaled-picture.js';
import { labelName } from '../surface-rows.js';
import { edgeFrame, type EdgeFrame } from './edge-frame.js';
import { edgeMarks, hatchOf } from './edge-marks.js';
import { edgeReadings, namedReadings, requireFlatness, type EdgeReading } from './edge-readings.js';
import { describeEdge, edgeLegend, edgeLines, edgeNotes } from './edge-words.js';
import { STRAIGHTEDGE_TEXTS } from './straightedge-texts.js';

/** How a straightedge is drawn. */
export type DrawStraightedgeOptions = DrawOptions;

/**
 * Draws a flatness check from the side: the surface through its readings, the straightedge where it
 * shows the gaps that do not pass, or the largest gap where all do, and under it the lowest that the
 * tolerance allows. Heights are drawn larger by a stated factor. Below stands what to do at each
 * reading.
 *
 * @param check - the result of `checkFlatness` with a tolerance; not changed
 * @param options - see {@link DrawStraightedgeOptions}
 * @returns an SVG document as text, without scripts and fonts of its own
 * @throws `WRONG_TYPE`, `UNKNOWN_CHOICE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `REQUIRED`, `UNKNOWN_FIELD`,
 *   `NOT_FINITE`
 * @example
 * const check = checkFlatness({
 *   layer: 'base',
 *   profile: [
 *     { station: '0 ft', height: '0 in' },
 *     { station: '5 ft', height: '-7/16 in' },
 *     { station: '10 ft', height: '0 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * const svg = drawStraightedge(check, { system: 'us' });
 * svg.includes('2 OUT: gap 7/16 in at station 5.00 ft, add 7/16 in') //=> true
 */
export function drawStraightedge(check: FlatnessCheck, options: DrawStraightedgeOptions): string {
  requireFlatness(check);
  const style = readStyle(options, STRAIGHTEDGE_TEXTS);
  const readings = edgeReadings(check, style);
  const named = namedReadings(readings);
  const frame = (top: number): EdgeFrame => edgeFrame(check, readings, { top, style });
  return frameDrawing(
    {
      kind: 'straightedge',
      rules: [...grainRules([hatchOf(check)]), ...ALLOWED_RULES],
      title: style.label('flat-title', {
        layer: labelName(check.subject),
        edge: spanText(check.edgeLength),
      }),
      notes: edgeNotes(check, frame(0).factor, style),
      description: describeEdge(check, named, style),
      legend: edgeLegend(check, style),
      draw: (top) => drawPicture(check, { readings, named, frame: frame(top), style }),
    },
    style,
  );
}

function drawPicture(
  check: FlatnessCheck,
  parts: {
    readonly readings: readonly EdgeReading[];
    readonly named: readonly EdgeReading[];
    readonly frame: EdgeFrame;
    readonly style: DrawStyle;
  },
): Picture {
  const { readings, named, frame, style } = parts;
  const lines = edgeLines(check, readings, { named, style });
  return scaledPicture(edgeMarks(check, parts), { frame, below: 8, lines }, style);
}
