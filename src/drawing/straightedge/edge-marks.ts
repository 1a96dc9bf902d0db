import { entry, known } from '../../invariant.js';
import type { FlatnessCheck } from '../../checks/check-flatness.js';
import type { DrawStyle } from '../draw-options.js';
import { SAND, SOIL, STONE } from '../frame/grain-hatches.js';
import { hatched, PAVER, type Hatch } from '../frame/hatches.js';
import type { LabelRequest } from '../frame/place-labels.js';
import { scaledLabels, type ScaledMarks } from '../frame/scaled-picture.js';
import { boxRound } from '../plan/parts.js';
import { element } from '../svg/element.js';
import { line, polygon, polyline, rectangle, type Point } from '../svg/shapes.js';
import type { EdgeFrame } from './edge-frame.js';
import type { EdgeReading } from './edge-readings.js';

const BAR = 9;
const BAND = 16;
const HALF = 4;
/** Of more readings only those that are named have a mark. */
const MOST_MARKED = 120;

const HATCHES: ReadonlyMap<string, Hatch> = new Map([
  ['base', STONE],
  ['bedding', SAND],
  ['pavers', PAVER],
]);

/** What a layer is hatched with. Internal. */
export const hatchOf = ({ subject }: FlatnessCheck): Hatch => HATCHES.get(subject) ?? SOIL;

/** The surface, the straightedge where it shows the gaps, the tolerance under it, and the gaps. Internal. */
export function edgeMarks(
  check: FlatnessCheck,
  {
    readings,
    named,
    frame,
    style,
  }: {
    readonly readings: readonly EdgeReading[];
    readonly named: readonly EdgeReading[];
    readonly frame: EdgeFrame;
    readonly style: DrawStyle;
  },
): ScaledMarks {
  const surface = readings.map(({ station, height }) => frame.to(station, height));
  const positions = named.map((one) => positionOf(one, readings, frame));
  const tolerance = check.limits.maximum.toNumber('m') * frame.down;
  const { marks, left } = scaledLabels(
    named.map((one) => gapLabel(one, { frame, style })),
    {
      frame,
      taken: named.map(({ station, height }) => boxRound(frame.to(station, height), HALF + 1)),
      rings: 8,
      lines: positions.map(({ edge }) => edge),
    },
    style,
  );
  const below = surface.map(([x, y]): Point => [x, y + BAND]).reverse();
  return {
    marks: [
      hatched('bare', [...surface, ...below], hatchOf(check)),
      polyline('finish', surface),
      ...positions.flatMap(({ edge, gap }) => positionMarks(edge, gap, tolerance)),
      ...readings.flatMap((one, k) =>
        readings.length <= MOST_MARKED || named.includes(one) ? [dot(entry(surface, k), one)] : [],
      ),
      ...marks,
    ],
    left,
  };
}

/** The straightedge from one contact to the other, and the gap from it down to the reading. */
function positionOf(one: EdgeReading, readings: readonly EdgeReading[], { to }: EdgeFrame) {
  const at = (station: number): Point => {
    const found = known(
      readings.find((reading) => reading.station === station),
      'contact',
    );
    return to(found.station, found.height);
  };
  const [from, until] = one.of.between ?? [one.of.station, one.of.station];
  const [a, b] = [at(from.toNumber('m')), at(until.toNumber('m'))];
  const foot = to(one.station, one.height);
  const share = b[0] === a[0] ? 0 : (foot[0] - a[0]) / (b[0] - a[0]);
  const head: Point = [foot[0], a[1] + (b[1] - a[1]) * share];
  return { edge: [a, b] as const, gap: [head, foot] as const };
}

function positionMarks(
  [a, b]: readonly [Point, Point],
  [head, foot]: readonly [Point, Point],
  tolerance: number,
): string[] {
  const raised = ([x, y]: Point, by: number): Point => [x, y - by];
  return [
    polygon('stake', [a, b, raised(b, BAR), raised(a, BAR)]),
    line('old', raised(a, -tolerance), raised(b, -tolerance)),
    line('fall', head, foot),
  ];
}

/** A ring where it passes, a full dot where it is out, half a dot where nobody can tell. */
function dot(at: Point, { of: { verdict } }: EdgeReading): string {
  const [cx, cy] = at;
  if (verdict === 'unclear') {
    return `${element('circle', { class: 'stake', cx, cy, r: HALF + 1 })}${rectangle('solid', { x: cx - HALF, y: cy, width: 2 * HALF, height: 2 })}`;
  }
  return element('circle', { class: verdict === 'pass' ? 'stake' : 'solid', cx, cy, r: HALF });
}

function gapLabel(
  { name, gap, of, station, height }: EdgeReading,
  { frame, style }: { readonly frame: EdgeFrame; readonly style: DrawStyle },
): LabelRequest {
  const { label, size } = style;
  const values = { reading: name, gap, verdict: label(`verdict-${of.verdict}`) };
  return {
    text: label(of.verdict === 'pass' ? 'flat-gap' : 'flat-gap-off', values),
    size,
    style: 'strong',
    at: frame.to(station, height),
    clearance: BAND + 4,
    toward: -Math.PI / 2,
  };
}
