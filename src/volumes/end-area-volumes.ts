import { makeReader, type Reader } from '../input/reader.js';
import { sum } from '../units/aggregate.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { fromSI, type Area, type Length, type Volume } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { AREA, STATION } from './limits.js';
import { inState, type StateVolume } from './state-volume.js';

/** A section across a strip. */
export interface SectionInput {
  /** Distance along the strip. */
  readonly station: LengthInput;
  /** Area of cut in the section; left out where there is none. */
  readonly cut?: AreaInput;
  /** Area of fill in the section; left out where there is none. */
  readonly fill?: AreaInput;
}

/** How a volume between two sections was taken. */
export type EndRule = 'end-area' | 'pyramid' | 'wedge' | 'none';

/** What lies between two sections. */
export interface EndAreaInterval {
  readonly from: Length;
  readonly to: Length;
  readonly cut: Volume;
  readonly cutRule: EndRule;
  readonly fill: Volume;
  readonly fillRule: EndRule;
  /** Cut less fill from the first station up to `to`. */
  readonly netToHere: Volume;
}

/** Cut and fill along a strip. */
export interface EndAreaVolumes extends Worked {
  readonly cut: StateVolume<'bank'>;
  readonly fill: StateVolume<'compacted'>;
  /** Room of the cut less room of the fill. */
  readonly net: Volume;
  readonly intervals: readonly EndAreaInterval[];
}

/**
 * Cut and fill along a strip by average end areas, with its run-outs: between two sections
 * `V = L (A1 + A2) / 2`; where one of them is nothing, the body runs out to a point, a pyramid
 * `V = L A / 3`, or to a line, a wedge `V = L A / 2`.
 *
 * @param options.sections - two or more in order, each `{ station, cut?, fill? }` [length, area]
 * @param options.runOut - `pyramid` (default) or `wedge`: how cut or fill ends at a section without
 *   any
 * @returns cut in the bank, fill compacted, net, each interval with its rule and the sum so far
 * @throws `TOO_FEW_SECTIONS`, `STATION_ORDER`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const walk = endAreaVolumes({
 *   sections: [
 *     { station: '0 m', cut: '1.2 m2' },
 *     { station: '10 m', cut: '0.6 m2' },
 *     { station: '15 m', fill: '0.3 m2' },
 *   ],
 * });
 * walk.cut.to('m3').toString() //=> '10'
 * walk.fill.to('m3').toString() //=> '0.5'
 */
export function endAreaVolumes(options: {
  readonly sections: readonly SectionInput[];
  readonly runOut?: 'pyramid' | 'wedge';
}): EndAreaVolumes {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const sections = readSections(reader, fields['sections']);
  const runOut =
    fields['runOut'] === undefined
      ? 'pyramid'
      : reader.choice(fields['runOut'], ['runOut'], ['pyramid', 'wedge']);
  reader.finish();

  let netToHere = NO_VOLUME;
  const intervals = sections.slice(1).map((section, k): EndAreaInterval => {
    const before = sections[k] ?? section;
    const along = section.station.minus(before.station);
    const cut = bodyBetween(before.cut, section.cut, along, runOut);
    const fill = bodyBetween(before.fill, section.fill, along, runOut);
    netToHere = netToHere.plus(cut.volume).minus(fill.volume);
    return {
      from: before.station,
      to: section.station,
      cut: cut.volume,
      cutRule: cut.rule,
      fill: fill.volume,
      fillRule: fill.rule,
      netToHere,
    };
  });
  const cut = sum(intervals.map((interval) => interval.cut));
  const fill = sum(intervals.map((interval) => interval.fill));
  const net = cut.minus(fill);
  const found = { cut: inState(cut, 'bank'), fill: inState(fill, 'compacted'), net, intervals };
  return withWorking(found, () => [...stepsOf(intervals), netStep(cut, fill, net)]);
}

interface Section {
  readonly station: Length;
  readonly cut: Area;
  readonly fill: Area;
}

const NO_AREA: Area = fromSI('area', ZERO_RATIO);
const NO_VOLUME: Volume = fromSI('volume', ZERO_RATIO);

function readSections(reader: Reader, value: unknown): readonly Section[] {
  const sections = reader.list(value, ['sections']).map((item, index): Section => {
    const path = ['sections', index];
    const fields = reader.object(item, path);
    const read = (name: 'cut' | 'fill') =>
      fields[name] === undefined
        ? NO_AREA
        : reader.quantity('area', fields[name], [...path, name], AREA);
    const station = reader.quantity('length', fields['station'], [...path, 'station'], STATION);
    return { station, cut: read('cut'), fill: read('fill') };
  });
  if (sections.length === 1) {
    reader.fail('TOO_FEW_SECTIONS', ['sections'], 'needs two sections or more');
  }
  sections.slice(1).forEach(({ station }, k) => {
    const before = sections[k]?.station;
    if (before === undefined || station.compare(before) > 0) return;
    const words = `is not beyond the section before it, at ${before.toString()}`;
    reader.fail('STATION_ORDER', ['sections', k + 1, 'station'], words);
  });
  return sections;
}

function bodyBetween(
  first: Area,
  last: Area,
  along: Length,
  runOut: 'pyramid' | 'wedge',
): { readonly volume: Volume; readonly rule: EndRule } {
  const ends = first.plus(last).times(along);
  if (first.isZero() && last.isZero()) return { volume: NO_VOLUME, rule: 'none' };
  if (!first.isZero() && !last.isZero()) return { volume: ends.dividedBy(2), rule: 'end-area' };
  return { volume: ends.dividedBy(runOut === 'pyramid' ? 3 : 2), rule: runOut };
}

const FORMULAS: Readonly<Record<EndRule, string>> = Object.freeze({
  'end-area': 'V = L (A1 + A2) / 2',
  pyramid: 'V = L A / 3',
  wedge: 'V = L A / 2',
  none: 'V = 0',
});

function stepsOf(intervals: readonly EndAreaInterval[]): Step[] {
  return intervals.flatMap(({ from, to, cut, cutRule, fill, fillRule }) => {
    const step = (what: 'Cut' | 'Fill', volume: Volume, rule: EndRule): Step => ({
      title: `${what} between two sections`,
      formula: FORMULAS[rule],
      given: [given('from', 'station', from), given('to', 'station', to)],
      result: given('V', what === 'Cut' ? 'cut, in the bank' : 'fill, compacted', volume),
      source: 'derived',
    });
    return [
      ...(cutRule === 'none' ? [] : [step('Cut', cut, cutRule)]),
      ...(fillRule === 'none' ? [] : [step('Fill', fill, fillRule)]),
    ];
  });
}

const netStep = (cut: Volume, fill: Volume, net: Volume): Step => ({
  title: 'Cut less fill',
  formula: 'N = C - F',
  given: [given('C', 'cut, in the bank', cut), given('F', 'fill, compacted', fill)],
  result: given('N', 'net', net),
  source: 'derived',
});
