import { choice, list, object, optional, quantity } from '../input/field.js';
import { AREA_OR_NONE, STATION } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { entry } from '../invariant.js';
import { sum } from '../units/aggregate.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import { NO_AREA, NO_VOLUME } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { inState, type StateVolume } from './state-volume.js';

/** A cross section of a strip. */
export interface SectionInput {
  /** Distance along the strip [length], more than at the section before. */
  readonly station: LengthInput;
  /** Area of cut in the section [area], not negative. Default: none. */
  readonly cut?: AreaInput;
  /** Area of fill in the section [area], not negative. Default: none. */
  readonly fill?: AreaInput;
}

/** The cross sections of a strip, in order. */
export interface EndAreaVolumesOptions {
  /** Two sections or more, in order. */
  readonly sections: readonly SectionInput[];
  /** How cut or fill runs out at a section that has none: to a point or to a line. Default: `pyramid`. */
  readonly runOut?: 'pyramid' | 'wedge';
}

const SECTION = shapeOf<SectionInput>()({
  station: quantity(STATION),
  cut: optional(quantity(AREA_OR_NONE), NO_AREA),
  fill: optional(quantity(AREA_OR_NONE), NO_AREA),
});

const OPTIONS = shapeOf<EndAreaVolumesOptions>()({
  sections: list(object(SECTION), { of: 'sections', least: 2 }),
  runOut: optional(choice(['pyramid', 'wedge']), 'pyramid'),
});

const stationsIncrease: Check<typeof OPTIONS> = (reader, { sections = [] }, path) => {
  sections.slice(1).forEach(({ station }, k) => {
    const before = sections[k]?.station;
    if (before === undefined || station.compare(before) > 0) return;
    const message = 'this section is not beyond the one before it. List them in order';
    reader.fail('NOT_INCREASING', [...path, 'sections', k + 1, 'station'], message);
  });
};

/** Rule used for the volume between two sections. */
export type EndRule = 'end-area' | 'pyramid' | 'wedge' | 'none';

/** Cut and fill between two sections. */
export interface EndAreaInterval {
  /** Station of the first section. */
  readonly from: Length;
  /** Station of the last section. */
  readonly to: Length;
  /** Cut between them, bank volume. */
  readonly cut: Volume;
  /** Rule used for the cut. */
  readonly cutRule: EndRule;
  /** Fill between them, compacted. */
  readonly fill: Volume;
  /** Rule used for the fill. */
  readonly fillRule: EndRule;
  /** Cut less fill from the first station up to `to`. */
  readonly netToHere: Volume;
}

/** Cut and fill along a strip. */
export interface EndAreaVolumes extends Worked {
  /** Soil to dig, in place. */
  readonly cut: StateVolume<'bank'>;
  /** Soil to fill, compacted. */
  readonly fill: StateVolume<'compacted'>;
  /** Cut less fill, both as measured on the site. */
  readonly net: Volume;
  /** Cut and fill between each section and the next. */
  readonly intervals: readonly EndAreaInterval[];
}

/**
 * Cut and fill along a strip by average end areas, with run-outs. Between two sections
 * `V = L (A1 + A2) / 2`. If one of the areas is zero, the soil runs out to a point (a pyramid,
 * `V = L A / 3`) or to a line (a wedge, `V = L A / 2`).
 *
 * @param options - see {@link EndAreaVolumesOptions}
 * @returns bank cut, compacted fill, net, and each interval with its rule and the sum so far
 * @throws `TOO_FEW`, `NOT_INCREASING`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
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
export function endAreaVolumes(options: EndAreaVolumesOptions): EndAreaVolumes {
  const { sections, runOut } = readOptions(options, OPTIONS, stationsIncrease);
  let netToHere = NO_VOLUME;
  const intervals = sections.slice(1).map((section, k): EndAreaInterval => {
    const before = entry(sections, k);
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
  return withWorking(found, () => [...stepsOf(intervals, sections), netStep(cut, fill, net)]);
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

const TITLES: Readonly<Record<EndRule, string>> = Object.freeze({
  'end-area': 'between two sections',
  pyramid: 'between two sections, running out to a point',
  wedge: 'between two sections, running out to an edge',
  none: 'between two sections',
});

interface Section {
  readonly station: Length;
  readonly cut: Area;
  readonly fill: Area;
}

const stepsOf = (intervals: readonly EndAreaInterval[], sections: readonly Section[]): Step[] =>
  intervals.flatMap((interval, k) => {
    const ends = sections.slice(k, k + 2);
    return [
      ...(interval.cutRule === 'none' ? [] : [bodyStep('cut', interval, ends)]),
      ...(interval.fillRule === 'none' ? [] : [bodyStep('fill', interval, ends)]),
    ];
  });

function bodyStep(what: 'cut' | 'fill', interval: EndAreaInterval, ends: readonly Section[]): Step {
  const rule = interval[`${what}Rule`];
  return derivedStep({
    title: `${what === 'cut' ? 'Cut' : 'Fill'} ${TITLES[rule]}`,
    formula: `V = (s[2] - s[1]) * (A[1] + A[2]) / ${rule === 'pyramid' ? 3 : 2}`,
    given: [
      given(
        's',
        'stations of the two sections',
        ends.map(({ station }) => station),
      ),
      given(
        'A',
        `${what} in the two sections`,
        ends.map((section) => section[what]),
      ),
    ],
    result: given('V', what === 'cut' ? 'cut, bank' : 'fill, compacted', interval[what]),
  });
}

const netStep = (cut: Volume, fill: Volume, net: Volume): Step =>
  derivedStep({
    title: 'Cut less fill',
    formula: 'N = C - F',
    given: [given('C', 'cut, bank', cut), given('F', 'fill, compacted', fill)],
    result: given('N', 'net', net),
  });
