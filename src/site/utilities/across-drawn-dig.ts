// a drawn dig is an outline
import { areaOf } from '../../outline/outline-area.js';
import type { Outline } from '../../outline/read-outline.js';
import { sum } from '../../units/aggregate.js';
import { fromNumber } from '../../units/construct.js';
import type { Area } from '../../units/quantity.js';
import { between } from '../../units/vector.js';
import { derivedStep, given, withWorking } from '../../working.js';
import { floatsOf, ringsOfDig } from '../drawn-dig.js';
import { handDigTotals, type DigAcrossLines, type HandDigTotals } from './hand-dig-totals.js';
import { reachOf, type MarkedLine } from './marked-line.js';
import { stripsAlong, zoneArea, type Strip } from '../../geometry/ring/zone-area.js';

/** The zone of one line within a drawn dig. */
export interface LineZone {
  /** The line. */
  readonly id: string;
  /** Area of the zone within the dig; 0 if it does not reach the dig. */
  readonly area: Area;
  /** Area that this zone adds to those of the lines before it. */
  readonly added: Area;
}

/** Hand digging across marked lines in a drawn dig. */
export interface DrawnHandDig extends HandDigTotals {
  /** The zone of each line, in the order given. */
  readonly zones: readonly LineZone[];
  /** Area of the whole dig, less its holes. */
  readonly digArea: Area;
  /** Share of the dig to hand dig, 0 to 1. */
  readonly share: number;
}

/** A drawn dig and the lines across it. Internal. */
export interface DrawnDig extends DigAcrossLines {
  readonly outline: Outline;
}

/** Zones of lines at any angle within a drawn dig. Internal. */
export function acrossDrawnDig({ outline, depth, lines, rate }: DrawnDig): DrawnHandDig {
  const zones = measureZones(outline, lines);
  const digArea = areaOf(outline);
  const area = sum(zones.map(({ added }) => added));
  const volume = area.times(depth);
  const found = {
    zones,
    digArea,
    share: area.dividedBy(digArea).toNumber(),
    ...handDigTotals({ area, volume }, rate),
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Soil to dig by hand',
      formula: 'V = A * e',
      given: [given('A', 'zones together, within the dig', area), given('e', 'depth', depth)],
      result: given('V', 'to dig by hand, bank', volume),
    }),
  ]);
}

function measureZones(outline: Outline, lines: readonly MarkedLine[]): LineZone[] {
  const rings = ringsOfDig(outline).map(floatsOf);
  const before: Strip[] = [];
  return lines.map((line) => {
    const { id, path = [] } = line;
    const points = floatsOf(path.map((point) => between(outline.origin, point)));
    const strips = stripsAlong(points, reachOf(line).toNumber('m'));
    const added = toArea(zoneArea(rings, strips, before));
    const area = toArea(zoneArea(rings, strips, []));
    before.push(...strips);
    return { id, area, added };
  });
}

/** Floats back into exact values, rounded to the accuracy of the floats; no negative zero. */
const toArea = (squareMetres: number): Area =>
  fromNumber(Math.round(squareMetres * 1e10) / 1e10 + 0, 'm2');
