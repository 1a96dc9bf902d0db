import { sum } from '../../units/aggregate.js';
import { Decimal40 } from '../../units/decimal.js';
import type { Angle, Area, Length, Volume } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, type Step, withWorking } from '../../working.js';
import { handDigTotals, type DigAcrossLines, type HandDigTotals } from './hand-dig-totals.js';
import { reachOf, type MarkedLine } from './marked-line.js';

/** Ground to hand dig: zones that overlap or touch count as one. */
export interface HandDigZone {
  /** Lines in the zone, from the lowest offset to the highest. */
  readonly lines: readonly string[];
  /** Offset of its near side. */
  readonly from: Length;
  /** Offset of its far side. */
  readonly to: Length;
  /** Width across the lines. */
  readonly width: Length;
  /** Area of the zone within the dig. */
  readonly area: Area;
  /** Volume to hand dig, in place (bank). */
  readonly volume: Volume;
}

/** Hand digging across marked lines in a straight dig. */
export interface HandDig extends HandDigTotals {
  /** The zones; those that touch count as one. */
  readonly zones: readonly HandDigZone[];
  /** Length of each zone along the lines, from one side of the dig to the other. */
  readonly along: Length;
}

/** A straight dig and the lines across it. Internal. */
export interface StraightDig extends DigAcrossLines {
  readonly digWidth: Length;
  readonly crossingAngle: Angle;
}

/** Zones of parallel lines across a straight dig. Internal. */
export function acrossStraightDig(dig: StraightDig): HandDig {
  const { digWidth, crossingAngle, depth, lines, rate } = dig;
  const along = digWidth.dividedBy(Decimal40.sin(crossingAngle.si));
  const zones = mergeZones(lines.map(zoneOf)).map((zone): HandDigZone => {
    const width = zone.to.minus(zone.from);
    const area = width.times(along);
    return { ...zone, width, area, volume: area.times(depth) };
  });
  const area = sum(zones.map((zone) => zone.area));
  const volume = sum(zones.map((zone) => zone.volume));
  const found = { zones, along, ...handDigTotals({ area, volume }, rate) };
  return withWorking(found, () => [
    derivedStep({
      title: 'Length of a zone in the dig',
      formula: 'L = b / sin(a)',
      given: [
        given('b', 'width of the dig', digWidth),
        given('a', 'crossing angle', crossingAngle),
      ],
      result: given('L', 'length', along),
    }),
    ...zones.map((zone) => zoneStep(zone, along, depth)),
  ]);
}

const zoneStep = (zone: HandDigZone, along: Length, depth: Length): Step =>
  derivedStep({
    title: `Zone of ${zone.lines.join(', ')}`,
    formula: 'V = W * L * e',
    given: [
      given('W', 'width, merged', zone.width),
      given('L', 'length', along),
      given('e', 'depth of dig', depth),
    ],
    result: given('V', 'to dig by hand, bank', zone.volume),
  });

type Zone = Pick<HandDigZone, 'lines' | 'from' | 'to'>;

function zoneOf(line: MarkedLine): Zone {
  const { id, offset = NO_LENGTH } = line;
  const reach = reachOf(line);
  return { lines: [id], from: offset.minus(reach), to: offset.plus(reach) };
}

/** Joins zones that overlap or touch. */
function mergeZones(zones: readonly Zone[]): Zone[] {
  const merged: Zone[] = [];
  for (const zone of [...zones].sort((a, b) => a.from.compare(b.from))) {
    const last = merged.at(-1);
    if (last === undefined || zone.from.compare(last.to) > 0) {
      merged.push(zone);
      continue;
    }
    const to = zone.to.compare(last.to) > 0 ? zone.to : last.to;
    merged[merged.length - 1] = { lines: [...last.lines, ...zone.lines], from: last.from, to };
  }
  return merged;
}
