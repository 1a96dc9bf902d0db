import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input.js';
// the dig is an outline: it is read, checked and measured as one
import { areaOfDouble, doubleArea } from '../outline/double-area.js';
import { readOutline, type OutlineInput } from '../outline/read-outline.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { FlowInput, LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Time, type Volume } from '../units/quantity.js';
import { addRatios, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { between, isZero, minus, type PlanPoint, type Vector } from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { HAND_DIG_NOTES, readMark, readRate } from './hand-dig.js';
import { clip, outsideOf, stripSides, type HalfPlane } from './half-plane.js';
import { ANY_LENGTH, DEPTH } from './limits.js';

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
 * line, and as far past its ends and bends (square, a little more than the round end). Exact but for
 * the length of slanted lines (40 digits).
 *
 * @param options.outline - outline of the whole dig, as `outlineArea` takes it, at most 1000 points
 * @param options.depth - depth of the dig [length]
 * @param options.lines - 1 to 20: `id`, `path` of 2 to 50 points, `width` [length], `tolerance`
 *   [length; no default, the law sets it]
 * @param options.rate - volume that is dug by hand in a time [flow]
 * @returns the zone of each line and what it adds, area, share of the dig, bank volume, time; cautions
 * @throws `TOO_FEW_POINTS`, `POINTS_COINCIDE`, `SELF_INTERSECTION`, `DUPLICATE_ID`, `NOT_POSITIVE`,
 *   `CAPACITY_EXCEEDED` and the reading codes
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
  const { origin, points } = readOutline(reader, fields['outline'], ['outline']);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH);
  const lines = readDrawnLines(reader, fields['lines'], origin);
  const rate = readRate(reader, fields['rate']);
  reader.finish();

  const zones = measureZones(points, lines);
  const digArea = areaOfDouble(doubleArea(points));
  const area = zones.reduce((total, { added }) => total.plus(added), NO_AREA);
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

const NO_AREA = areaOfDouble(ZERO_RATIO);
/** A piece of the zone of a line: what lies on all these sides. */
type Strip = readonly HalfPlane[];

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
    const places = readPath(reader, fields['path'], [...path, 'path']);
    const points = places.map((place) => between(origin, place));
    return { id, strips: stripsAlong(points, exactOf(reach)) };
  });
}

function readPath(reader: Reader, value: unknown, path: FieldPath): PlanPoint[] {
  const places = reader.list(value, path).map((item, index) => {
    const at = [...path, index];
    const fields = reader.object(item, at);
    return {
      x: reader.quantity('length', fields['x'], [...at, 'x'], ANY_LENGTH),
      y: reader.quantity('length', fields['y'], [...at, 'y'], ANY_LENGTH),
    };
  });
  if (places.length === 1) reader.fail('TOO_FEW_POINTS', path, 'a line needs two points or more');
  if (places.length > 50) reader.fail('CAPACITY_EXCEEDED', path, 'more than 50 points');
  places.forEach((place, index) => {
    const before = places[index - 1];
    if (before !== undefined && isZero(between(before, place))) {
      reader.fail('POINTS_COINCIDE', [...path, index], 'the same point as the one before');
    }
  });
  return places;
}

function stripsAlong(points: readonly Vector[], reach: Ratio): Strip[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from === undefined || isZero(minus(to, from)) ? [] : [stripSides(from, to, reach)];
  });
}

function measureZones(dig: readonly Vector[], lines: readonly DrawnLine[]): LineZone[] {
  const before: Strip[] = [];
  return lines.map(({ id, strips }) => {
    const added = unionArea(dig, strips, before);
    const area = unionArea(dig, strips, []);
    before.push(...strips);
    return { id, area, added };
  });
}

/** Area of the dig within any of the strips and outside all of those that are counted already. */
function unionArea(dig: readonly Vector[], strips: readonly Strip[], counted: readonly Strip[]): Area {
  let twice: Ratio = ZERO_RATIO;
  const earlier = [...counted];
  for (const strip of strips) {
    let pieces: readonly (readonly Vector[])[] = [clipAll(dig, strip)];
    for (const other of earlier) pieces = pieces.flatMap((piece) => outsideStrip(piece, other));
    for (const piece of pieces) twice = addRatios(twice, doubleArea(piece));
    earlier.push(strip);
  }
  return areaOfDouble(twice);
}

const clipAll = (points: readonly Vector[], sides: Strip): Vector[] =>
  sides.reduce<Vector[]>((rest, side) => clip(rest, side), [...points]);

/** The pieces of a figure outside a strip: beyond its first side, within it but beyond the next ... */
function outsideStrip(points: readonly Vector[], strip: Strip): readonly (readonly Vector[])[] {
  if (clipAll(points, strip).length < 3) return [points];
  const pieces: Vector[][] = [];
  let rest = [...points];
  for (const side of strip) {
    const beyond = clip(rest, outsideOf(side));
    if (beyond.length > 2) pieces.push(beyond);
    rest = clip(rest, side);
  }
  return pieces;
}
