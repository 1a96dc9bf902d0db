import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
// the dig is an outline
import type { OutlineInput } from '../../outline/read-outline.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { fromNumber, type FlowInput, type LengthInput } from '../../units/construct.js';
import { sum } from '../../units/aggregate.js';
import type { Area, Time, Volume } from '../../units/quantity.js';
import { isZero, minus, type PlanPoint, type Vector } from '../../units/vector.js';
import { given, withWorking, type Worked } from '../../working.js';
import { floatsOf, readDrawnDig, readPlace } from '../drawn-dig.js';
import { HAND_DIG_NOTES, readMark, readRate } from './hand-dig.js';
import { DEPTH } from '../limits.js';
import { stripsAlong, zoneArea, type FloatRing, type Strip } from '../../geometry/ring/zone-area.js';

/** A marked line on the plan. */
export interface DrawnLineInput {
  readonly id: string;
  /** Two points or more along the line; draw it past the dig unless it ends there. */
  readonly path: readonly { readonly x: LengthInput; readonly y: LengthInput }[];
  /** Outside diameter or width of the line or duct; zero only where the mark gives none. */
  readonly width: LengthInput;
  /** Zone on each side, from the outside of the line, as the law where you dig sets it. */
  readonly tolerance: LengthInput;
}

/** The zone of one line within the dig. */
export interface LineZone {
  readonly id: string;
  /** Zero where the zone does not reach into the dig. */
  readonly area: Area;
  /** What this zone adds to those of the lines before it. */
  readonly added: Area;
}

/** Digging by hand in a drawn dig. */
export interface DrawnHandDig extends Worked {
  readonly zones: readonly LineZone[];
  /** Of all zones together, each spot counted once. */
  readonly area: Area;
  readonly digArea: Area;
  /** Part of the dig that is dug by hand, 0 to 1. */
  readonly share: number;
  /** In the bank. */
  readonly volume: Volume;
  readonly time: Time | null;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Soil to dig by hand in a drawn dig that marked lines cross at any angle: the area of the union of
 * their zones within the outline, times the depth. A zone reaches `w / 2 + T` to each side of the
 * line, and as far past its ends and bends (square, a little more than the round end). Holes of the
 * outline are left out. Worked out in floats and rounded to 1e-10 m2 (a dig of 100 m or more is not
 * known better); arcs are put in chords that leave them by less than 1/300 000 of the radius.
 *
 * @param options.outline - outline of the whole dig, as `outlineArea` takes it, arcs and holes too
 * @param options.depth - depth of the dig [length]
 * @param options.lines - 1 to 20: `id`, `path` of 2 to 50 points within 10 km, `width` [length],
 *   `tolerance` [length; no default, the law sets it]
 * @param options.rate - volume that is dug by hand in a time [flow]
 * @returns the zone of each line and what it adds, area, share of the dig, bank volume, time; cautions
 * @throws `POINTS_COINCIDE`, `DUPLICATE_ID`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `CAPACITY_EXCEEDED`, the
 *   codes of `outlineArea` and the reading codes
 * @source derived
 * @example
 * const dig = handDigInOutline({
 *   outline: { unit: 'ft', points: [[0, 0], [30, 0], [30, 12], [0, 12]] },
 *   depth: '1 ft',
 *   lines: [
 *     { id: 'gas', path: [{ x: '10 ft', y: '-5 ft' }, { x: '10 ft', y: '20 ft' }], width: '0 in', tolerance: '18 in' },
 *     { id: 'water', path: [{ x: '12 ft', y: '-5 ft' }, { x: '12 ft', y: '20 ft' }], width: '0 in', tolerance: '18 in' },
 *   ],
 * });
 * dig.area.to('ft2').toString() //=> '60'
 * dig.zones.map(({ area, added }) => [area.toNumber('ft2'), added.toNumber('ft2')]) //=> [[36, 36], [36, 24]]
 */
export function handDigInOutline(options: {
  readonly outline: OutlineInput;
  readonly depth: LengthInput;
  readonly lines: readonly DrawnLineInput[];
  readonly rate?: FlowInput;
}): DrawnHandDig {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const dig = readDrawnDig(reader, fields['outline'], ['outline']);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH);
  const lines = readDrawnLines(reader, fields['lines'], dig.origin);
  const rate = readRate(reader, fields['rate']);
  reader.finish();

  const zones = measureZones(dig.rings().map(floatsOf), lines);
  const digArea = dig.area();
  const area = sum(zones.map(({ added }) => added));
  const volume = area.times(depth);
  const found = {
    zones,
    area,
    digArea,
    share: area.dividedBy(digArea).toNumber(),
    volume,
    time: rate === undefined ? null : volume.dividedBy(rate),
    notes: HAND_DIG_NOTES,
    cautions: cautionsFor('utilities', 'excavation'),
  };
  return withWorking(found, () => [
    {
      title: 'Soil to dig by hand',
      formula: 'V = A e',
      given: [given('A', 'zones together, within the dig', area), given('e', 'depth', depth)],
      result: given('V', 'to dig by hand, bank', volume),
      source: 'derived',
    },
  ]);
}

interface DrawnLine {
  readonly id: string;
  readonly strips: readonly Strip[];
}

function readDrawnLines(reader: Reader, value: unknown, origin: PlanPoint): DrawnLine[] {
  const ids = new Set<string>();
  const list = reader.list(value, ['lines']);
  if (list.length > 20) reader.fail('CAPACITY_EXCEEDED', ['lines'], 'more than 20 lines');
  return list.map((item, index) => {
    const path: FieldPath = ['lines', index];
    const fields = reader.object(item, path);
    const { id, reach } = readMark(reader, fields, path, ids);
    const places = readPath(reader, fields['path'], [...path, 'path'], origin);
    return { id, strips: stripsAlong(floatsOf(places), reach.toNumber('m')) };
  });
}

function readPath(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  origin: PlanPoint,
): readonly Vector[] {
  const places = reader
    .list(value, path)
    .map((item, index) => readPlace(reader, item, [...path, index], origin));
  if (places.length === 1) reader.fail('TOO_FEW_POINTS', path, 'a line needs two points or more');
  if (places.length > 50) reader.fail('CAPACITY_EXCEEDED', path, 'more than 50 points');
  places.forEach((place, index) => {
    const before = places[index - 1];
    if (before !== undefined && isZero(minus(place, before))) {
      reader.fail('POINTS_COINCIDE', [...path, index], 'the same point as the one before');
    }
  });
  return places;
}

function measureZones(dig: readonly FloatRing[], lines: readonly DrawnLine[]): LineZone[] {
  const before: Strip[] = [];
  return lines.map(({ id, strips }) => {
    const added = toArea(zoneArea(dig, strips, before));
    const area = toArea(zoneArea(dig, strips, []));
    before.push(...strips);
    return { id, area, added };
  });
}

/** Back into the ledger, without what is below the accuracy of the floats; no negative zero. */
const toArea = (squareMetres: number): Area =>
  fromNumber(Math.round(squareMetres * 1e10) / 1e10 + 0, 'm2');
