import { countLabel } from '../draw-label.js';
import type { FlatnessCheck } from '../../checks/check-flatness.js';
import { limitText, spanText } from '../../checks/print-amount.js';
import type { DrawStyle } from '../draw-options.js';
import { legendEntries, type LegendEntry } from '../frame/legend.js';
import { actionWords } from '../frame/verdict-words.js';
import { line, rectangle, type Point } from '../svg/shapes.js';
import { element } from '../svg/element.js';
import { hatchOf } from './edge-marks.js';
import type { EdgeReading } from './edge-readings.js';

const MOST_LISTED = 40;

/** The tolerance in words. Internal. */
export const limitWords = ({ limits, edgeLength }: FlatnessCheck, style: DrawStyle): string =>
  style.label('flat-limit', {
    limit: limitText(limits.maximum, style.system),
    edge: spanText(edgeLength),
  });

/** The tolerance, the scale, and what the readings do not show. Internal. */
export function edgeNotes(check: FlatnessCheck, factor: number, style: DrawStyle): string[] {
  const { label } = style;
  return [
    limitWords(check, style),
    `${label('flat-drawn', { factor: `${factor}` })} ${label('flat-worst')}`,
    ...(check.isSparse ? [label('flat-sparse')] : []),
    ...(check.overhangs ? [label('flat-overhangs')] : []),
  ];
}

/** What the check finds, and each reading that does not pass with what to do. Internal. */
export function edgeLines(
  { verdict }: FlatnessCheck,
  readings: readonly EdgeReading[],
  { named, style }: { readonly named: readonly EdgeReading[]; readonly style: DrawStyle },
): string[] {
  const { label } = style;
  const off = readings.filter(({ of }) => of.verdict !== 'pass');
  const more = off.length - MOST_LISTED;
  return [
    label(`check-${verdict}`),
    ...worstWords(named, style),
    ...off.slice(0, MOST_LISTED).map(({ name, gap, stationText, of }) =>
      label('flat-row', {
        reading: name,
        gap,
        station: stationText,
        action: actionWords(of, style) ?? '',
        verdict: label(`verdict-${of.verdict}`),
      }),
    ),
    ...(more > 0 ? [countLabel(label, 'flat-more', more)] : []),
  ];
}

function worstWords([worst]: readonly EdgeReading[], { label }: DrawStyle): string[] {
  if (worst === undefined) return [label('flat-none')];
  const { name, gap, stationText } = worst;
  return [label('flat-row-worst', { reading: name, gap, station: stationText })];
}

/** The main figures in words. Internal. */
export const describeEdge = (
  check: FlatnessCheck,
  named: readonly EdgeReading[],
  style: DrawStyle,
): string =>
  style.label('describe-flatness', {
    readings: countLabel(style.label, 'count-readings', check.readings.length),
    limit: limitWords(check, style),
    worst: worstWords(named, style).join(' '),
    verdict: style.label(`check-${check.verdict}`),
  });

const bar = ([x, y]: Point): string =>
  rectangle('stake', { x: x - 15, y: y - 4, width: 30, height: 8 });

const gap = ([x, y]: Point): string =>
  line('fall', [x - 15, y], [x + 15, y]) +
  element('circle', { class: 'solid', cx: x + 15, cy: y, r: 4 });

/** What the marks mean. Internal. */
export const edgeLegend = (check: FlatnessCheck, style: DrawStyle): LegendEntry[] =>
  legendEntries(style, [
    [{ hatch: hatchOf(check) }, 'flat-surface'],
    [{ mark: bar, of: 'stake' }, 'flat-bar'],
    [{ line: 'old' }, 'flat-tolerance'],
    [{ mark: gap, of: 'fall' }, 'flat-gap-line'],
  ]);
