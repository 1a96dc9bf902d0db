import type { FieldPath } from '../../errors.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import { sum } from '../../units/aggregate.js';
import {
  angle,
  length,
  type AngleInput,
  type FlowInput,
  type LengthInput,
} from '../../units/construct.js';
import { Decimal40 } from '../../units/decimal.js';
import type { Angle, Area, Length, Time, Volume } from '../../units/quantity.js';
import { given, withWorking, type Worked } from '../../working.js';
import { ANY_LENGTH, DEPTH, FLOW, LENGTH, LENGTH_OR_NONE } from '../limits.js';

/** A marked line that crosses a straight dig. */
export interface MarkedLineInput {
  readonly id: string;
  /** Outside diameter or width of the line or duct; zero only where the mark gives none. */
  readonly width: LengthInput;
  /** Zone on each side, from the outside of the line, as the law where you dig sets it. */
  readonly tolerance: LengthInput;
  /** Middle of the line, square to it, from any mark; needed where there are several lines. */
  readonly offset?: LengthInput;
}

/** Ground that is dug by hand: zones that touch are one. */
export interface HandDigZone {
  /** Lines in the zone, from the lowest offset to the highest. */
  readonly lines: readonly string[];
  readonly from: Length;
  readonly to: Length;
  readonly width: Length;
  readonly area: Area;
  readonly volume: Volume;
}

/** Digging by hand across marked lines. */
export interface HandDig extends Worked {
  readonly zones: readonly HandDigZone[];
  /** Length of each zone along the lines, from one side of the dig to the other. */
  readonly along: Length;
  readonly area: Area;
  /** In the bank. */
  readonly volume: Volume;
  /** At the rate given; null without one. */
  readonly time: Time | null;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Soil to dig by hand where parallel marked lines cross a straight dig: zone `W = w + 2 T`, measured
 * from the outside of the line; length in the dig `L = dig width / sin(angle)`; `V = W L depth`.
 * Zones that overlap or touch are merged and counted once. The dig is the whole dig, with the base
 * carried past the edge, not the paving alone. For lines at different angles, or an outline, see
 * {@link handDigInOutline}.
 *
 * @param options.digWidth - whole width of the dig [length]
 * @param options.depth - depth of the dig [length]
 * @param options.crossingAngle - between the lines and the dig, 5 to 175 degrees [angle]
 * @param options.lines - 1 to 50: `id`, `width` [length], `tolerance` [length; no default, the law
 *   sets it], `offset` [length]
 * @param options.rate - volume that is dug by hand in a time [flow]
 * @returns the merged zones, area, bank volume, time; cautions
 * @throws `REQUIRED`, `DUPLICATE_ID`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const dig = handDig({
 *   digWidth: '12 ft',
 *   depth: '1 ft',
 *   crossingAngle: '90 deg',
 *   lines: [
 *     { id: 'gas', width: '0 in', tolerance: '18 in', offset: '10 ft' },
 *     { id: 'water', width: '0 in', tolerance: '18 in', offset: '12 ft' },
 *   ],
 * });
 * dig.zones.map(({ lines, width }) => `${lines.join(', ')}: ${width.to('ft')} ft`) //=> ['gas, water: 5 ft']
 * dig.volume.to('ft3').toString() //=> '60'
 */
export function handDig(options: {
  readonly digWidth: LengthInput;
  readonly depth: LengthInput;
  readonly crossingAngle: AngleInput;
  readonly lines: readonly MarkedLineInput[];
  readonly rate?: FlowInput;
}): HandDig {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const digWidth = reader.quantity('length', fields['digWidth'], ['digWidth'], LENGTH);
  const depth = reader.quantity('length', fields['depth'], ['depth'], DEPTH);
  const crossing = readCrossing(reader, fields['crossingAngle']);
  const lines = readLines(reader, fields['lines']);
  const rate = readRate(reader, fields['rate']);
  reader.finish();

  const along = digWidth.dividedBy(Decimal40.sin(crossing.si));
  const zones = mergeZones(lines).map((zone): HandDigZone => {
    const width = zone.to.minus(zone.from);
    const area = width.times(along);
    return { ...zone, width, area, volume: area.times(depth) };
  });
  const volume = sum(zones.map((zone) => zone.volume));
  const found = {
    zones,
    along,
    area: sum(zones.map((zone) => zone.area)),
    volume,
    time: rate === undefined ? null : volume.dividedBy(rate),
    notes: HAND_DIG_NOTES,
    cautions: cautionsFor('utilities', 'excavation'),
  };
  return withWorking(found, () => [
    {
      title: 'Length of a zone in the dig',
      formula: 'L = b / sin(a)',
      given: [given('b', 'width of the dig', digWidth), given('a', 'crossing angle', crossing)],
      result: given('L', 'length', along),
      source: 'derived',
    },
    ...zones.map((zone) => ({
      title: `Zone of ${zone.lines.join(', ')}`,
      formula: 'V = W L e',
      given: [
        given('W', 'width, merged', zone.width),
        given('L', 'length', along),
        given('e', 'depth of dig', depth),
      ],
      result: given('V', 'to dig by hand, bank', zone.volume),
      source: 'derived' as const,
    })),
  ]);
}

/** What every hand-dig result says. Internal. */
export const HAND_DIG_NOTES: readonly string[] = Object.freeze([
  'Hand tools or vacuum only inside a zone, whatever the marks or a test hole say about depth.',
  'Marks give no depth. Lines owned privately (irrigation, gates, lamps) are often not marked.',
  'Marks stripped off with the old surface have to be set again before digging on.',
  'Any contact with a line is reported to its owner. Smell of gas: stop, leave, call from afar.',
]);

/** Reads the rate of digging by hand. Internal. */
export function readRate(reader: Reader, value: unknown) {
  return value === undefined ? undefined : reader.quantity('flow', value, ['rate'], FLOW);
}

const FLATTEST = angle('5 deg');
const STRAIGHT = angle('180 deg');

function readCrossing(reader: Reader, value: unknown): Angle {
  const path: FieldPath = ['crossingAngle'];
  const crossing = reader.quantity('angle', value, path, { sign: 'positive', most: STRAIGHT });
  const rest = STRAIGHT.minus(crossing);
  const isFlat = crossing.compare(FLATTEST) < 0 || rest.compare(FLATTEST) < 0;
  if (value !== undefined && !crossing.isZero() && isFlat) {
    reader.fail(
      'OUT_OF_RANGE',
      path,
      'a line that runs along the dig does not cross it: draw the dig and use its outline',
    );
  }
  return crossing;
}

interface Zone {
  readonly lines: readonly string[];
  readonly from: Length;
  readonly to: Length;
}

function readLines(reader: Reader, value: unknown): Zone[] {
  const ids = new Set<string>();
  const list = reader.list(value, ['lines']);
  if (list.length > 50) reader.fail('CAPACITY_EXCEEDED', ['lines'], 'more than 50 lines');
  return list.map((item, index): Zone => {
    const path: FieldPath = ['lines', index];
    const fields = reader.object(item, path);
    const { id, reach } = readMark(reader, fields, path, ids);
    const offset =
      fields['offset'] === undefined && list.length === 1
        ? length(0, 'm')
        : reader.quantity('length', fields['offset'], [...path, 'offset'], ANY_LENGTH);
    return { lines: [id], from: offset.minus(reach), to: offset.plus(reach) };
  });
}

/** Reads what every marked line has; `reach` is half its width and the tolerance. Internal. */
export function readMark(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
  ids: Set<string>,
): { readonly id: string; readonly reach: Length } {
  const id = reader.text(fields['id'], [...path, 'id']);
  if (id !== '' && ids.has(id)) reader.fail('DUPLICATE_ID', [...path, 'id'], `${id} stands twice`);
  ids.add(id);
  const width = reader.quantity('length', fields['width'], [...path, 'width'], LENGTH_OR_NONE);
  const tolerance = reader.quantity('length', fields['tolerance'], [...path, 'tolerance'], LENGTH);
  return { id, reach: tolerance.plus(width.dividedBy(2)) };
}

/** The union of zones: those that overlap or touch become one. */
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
