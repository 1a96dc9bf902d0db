import { list, quantity } from '../input/field.js';
import { forEachOf, oneOrMany, refuseMismatch } from '../input/one-or-many.js';
import { DISTANCE, DISTANCE_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { entry, lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { sum } from '../units/aggregate.js';
import type { Area, Length } from '../units/quantity.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** Offsets from a base line to an edge. */
export interface AreaByOffsetsOptions {
  /**
   * Two or more, in order along the base line [length], not negative: measure the two sides of a
   * line separately.
   */
  readonly offsets: readonly LengthInput[];
  /** Spacing of the offsets [length], more than 0: one for all, or one per strip. */
  readonly spacing: LengthInput | readonly LengthInput[];
}

const OPTIONS = shapeOf<AreaByOffsetsOptions>()({
  offsets: list(quantity(DISTANCE_OR_NONE), { of: 'offsets', least: 2 }),
  spacing: oneOrMany(quantity(DISTANCE), 'spacings'),
});

const countsMatch: Check<typeof OPTIONS> = (reader, { offsets, spacing }) => {
  if (offsets === undefined || spacing === undefined) return;
  const strips = { of: 'spacings', expected: offsets.length - 1, things: 'strips' };
  refuseMismatch(reader, spacing, { path: ['spacing'], ...strips });
};

/** Area between a base line and an edge, by two rules. */
export interface AreaByOffsets extends Worked {
  /** Trapezoid rule: straight from offset to offset. */
  readonly trapezoid: Area;
  /**
   * Simpson's rule: parabolas through three offsets at a time. With an odd number of strips the
   * last one is a trapezoid. Null for two offsets, or spacings that differ.
   */
  readonly simpson: Area | null;
  /** The last strip, if it is a trapezoid beside Simpson's rule; else null. */
  readonly lastStrip: Area | null;
  /** Simpson less trapezoid. If it is large, measure more offsets. Null without Simpson. */
  readonly difference: Area | null;
}

/**
 * Area between a base line and a curved edge from offsets square to the line. Trapezoid:
 * `A = sum((y(i) + y(i+1)) d(i) / 2)`; Simpson, for strips of one width:
 * `A = d / 3 (y(0) + 4 y(1) + 2 y(2) + ... + 4 y(n-1) + y(n))` over an even number of strips, and a
 * trapezoid for a last one left over. Both sums are exact; how well they fit the edge depends on
 * its curve.
 *
 * @param options - see {@link AreaByOffsetsOptions}
 * @returns the area by each rule [area] and the difference
 * @throws `TOO_FEW`, `COUNT_MISMATCH`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const offsets = ['0 m', '1.9 m', '2.6 m', '2.8 m', '2.4 m', '1.7 m', '0.6 m'];
 * const { trapezoid, simpson } = areaByOffsets({ offsets, spacing: '1.5 m' });
 * trapezoid.to('m2').toString() //=> '17.55'
 * simpson?.to('m2').toString() //=> '18.1'
 */
export function areaByOffsets(options: AreaByOffsetsOptions): AreaByOffsets {
  const { offsets, spacing } = readOptions(options, OPTIONS, countsMatch);
  const spacings = forEachOf(spacing, offsets.length - 1);
  const strips = spacings.map((spacing, index) => strip(offsets, index, spacing));
  const trapezoid = sum(strips);
  const { simpson, lastStrip } = bySimpson(offsets, spacings, strips);
  const result = {
    trapezoid,
    simpson,
    lastStrip,
    difference: simpson === null ? null : simpson.minus(trapezoid),
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Area by offsets, trapezoid rule',
      formula: 'A = sum((y[i] + y[i + 1]) * d[i] / 2)',
      given: [given('y', 'offsets, in order', offsets), given('d', 'spacings, in order', spacings)],
      result: given('A', 'area', trapezoid),
    }),
    ...(simpson === null ? [] : [simpsonStep(offsets, spacings, { simpson, lastStrip })]),
  ]);
}

function simpsonStep(
  offsets: readonly Length[],
  spacings: readonly Length[],
  { simpson, lastStrip }: { readonly simpson: Area; readonly lastStrip: Area | null },
): Step {
  const rule = 'A = d / 3 * sum(y[2 * i - 1] + 4 * y[2 * i] + y[2 * i + 1])';
  const title = "Area by offsets, Simpson's rule";
  const isOdd = lastStrip !== null;
  return derivedStep({
    title: isOdd ? `${title}, the last strip by the trapezoid rule` : title,
    formula: isOdd ? `${rule} + t` : rule,
    given: [
      given('d', 'spacing', entry(spacings, 0)),
      given(
        'y',
        isOdd ? 'offsets, in order, without the last' : 'offsets, in order',
        isOdd ? offsets.slice(0, -1) : offsets,
      ),
      ...(isOdd ? [given('t', 'last strip', lastStrip)] : []),
    ],
    result: given('A', 'area', simpson),
  });
}

const strip = (offsets: readonly Length[], index: number, spacing: Length): Area =>
  entry(offsets, index)
    .plus(entry(offsets, index + 1))
    .times(spacing)
    .dividedBy(2);

function bySimpson(
  offsets: readonly Length[],
  spacings: readonly Length[],
  strips: readonly Area[],
): Pick<AreaByOffsets, 'simpson' | 'lastStrip'> {
  const [spacing] = spacings;
  const isEven = spacings.every((one) => spacing?.equals(one) === true);
  if (spacing === undefined || spacings.length < 2 || !isEven) {
    return { simpson: null, lastStrip: null };
  }
  const lastStrip = spacings.length % 2 === 0 ? null : lastOf(strips);
  const used = offsets.slice(0, lastStrip === null ? offsets.length : -1);
  const weighted = used.map((offset, index) => {
    const isEnd = index === 0 || index === used.length - 1;
    return offset.times(isEnd ? 1 : index % 2 === 0 ? 2 : 4);
  });
  const parabolas = sum(weighted).times(spacing).dividedBy(3);
  return { simpson: lastStrip === null ? parabolas : parabolas.plus(lastStrip), lastStrip };
}
