import { choice, optional, quantity, ratio } from '../../input/field.js';
import { AREA_OR_NONE, FRACTION, JOINT } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { entry } from '../../invariant.js';
import { cautionsFor, type Caution } from '../../sources/cautions.js';
import type { AreaInput, LengthInput } from '../../units/construct.js';
import { exactOf, type Area } from '../../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  ratioToNumber,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { onePlus } from '../../units/times-ratio.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';
import { wholeUp } from '../whole-number.js';
import { cutEdges, cutsAlong, edgeStep, type CutEdgeInput } from './cut-edges.js';
import { LAYING_PATTERNS, type LayingPattern } from './pattern.js';
import { moduleOf, unit, type UnitInput } from './unit.js';

/** A field of pavers, and the edges with cuts. */
export interface UnitCountOptions {
  /** Area of the field, borders deducted [area], 0 to 1000 ha. */
  readonly area: AreaInput;
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Joint width [length], 0 to 100 mm; 0 if the size already has the joint in it. */
  readonly joint: LengthInput;
  /** Laying pattern. Default: `running-bond`. */
  readonly pattern?: LayingPattern;
  /** The edge with cuts, or a list of them; see {@link outlineEdges}. Default: none. */
  readonly edge?: CutEdgeInput | readonly CutEdgeInput[];
  /** Share of the off-cuts that are used, 0 to 1; in 45 herringbone hardly any are. Default: 0. */
  readonly reuse?: number | string;
  /** Broken pavers and spare stock, a fraction 0 to 1. Default: 0. */
  readonly breakage?: number | string;
}

const OPTIONS = shapeOf<UnitCountOptions>()({
  area: quantity(AREA_OR_NONE),
  unit,
  joint: quantity(JOINT),
  pattern: optional(choice(LAYING_PATTERNS), 'running-bond'),
  edge: optional(cutEdges, []),
  reuse: optional(ratio(FRACTION), ZERO_RATIO),
  breakage: optional(ratio(FRACTION), ZERO_RATIO),
});

/** Pavers of a field: to fill it, to cut, to order. */
export interface UnitCount extends Worked {
  /** Pavers for one square metre, joints included. Not rounded. */
  readonly perArea: number;
  /** Area of one paver with its joints. */
  readonly module: Area;
  /** Pavers that fill the area, rounded up. */
  readonly whole: number;
  /** Pavers that the edges cut, rounded up. */
  readonly cut: number;
  /** Extra pavers beyond those that fill the area, for off-cuts that are not used. Not rounded. */
  readonly extra: number;
  /** Extra pavers over pavers that fill the area: 0.04 means 4%. 0 for no area. */
  readonly extraShare: number;
  /** Pavers to order. */
  readonly order: number;
  /** What to watch when you cut; empty if nothing is cut. */
  readonly cautions: readonly Caution[];
}

/**
 *
 * Counts the pavers of a field by their module, and the cuts from the geometry of its edges. A field
 * takes `N = A / ((l + j) (w + j))` pavers. A straight edge of length E at angle a to their long
 * side meets `n = E (|cos a| / (l + j) + |sin a| / (w + j))` of them. On average half of each is
 * cut off, so `x = n (1 - reuse) / 2` more are needed. `order = ceil((N + x) (1 + breakage))`,
 * rounded up once at the end, from exact N and x.
 *
 * By pattern: herringbone at 90 degrees and basket weave have half of their pavers square to the
 * other half, and n is the mean of a and a + 90 degrees; for herringbone at 45 degrees a counts
 * from the line that the points run along, and n is the mean of a - 45 and a + 45 degrees. On a
 * curve n is the mean over all directions, `E (2 / pi) (1 / (l + j) + 1 / (w + j))`. On an arc with
 * a `turn` it is the mean over the directions of the arc. Arcs and angles other than 0, 30, 60 and
 * 90 degrees are worked out in floats.
 *
 * The count of cuts is an average over all positions of the pattern. A field takes about one paver
 * more for its corners, and the starting point shifts the count by a few. Leave out edges that need
 * no cuts.
 *
 * @param options - see {@link UnitCountOptions}
 * @returns pavers for a square metre, to fill the area, cut, extra and to order
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `CONFLICTING_FIELDS` (a curve
 *   with an angle), `TOO_MANY`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const drive = unitCount({
 *   area: '60 m2',
 *   unit: { length: '198 mm', width: '98 mm' },
 *   joint: '2 mm',
 *   edge: [{ length: '24 m' }, { length: '10 m', angle: '90 deg' }],
 *   breakage: 0.02,
 * });
 * drive.perArea //=> 50
 * drive.whole //=> 3000
 * drive.cut //=> 220
 * drive.order //=> 3173
 */
export function unitCount(options: UnitCountOptions): UnitCount {
  const read = readOptions(options, OPTIONS);
  const { area, pattern, edge: edges, reuse } = read;
  const module = moduleOf(read.unit, read.joint);
  const filling = divideRatios(exactOf(area), exactOf(module.area));
  const field = { pattern, module, reuse };
  const cuts = edges.map((edge) => cutsAlong(edge, field));
  const met = total(cuts.map((one) => one.met));
  const extra = total(cuts.map((one) => one.extra));
  const cut = wholeUp(met);
  const order = wholeUp(multiplyRatios(addRatios(filling, extra), onePlus(read.breakage)));
  const count = {
    perArea: ratioToNumber(divideRatios(ONE_RATIO, exactOf(module.area))),
    module: module.area,
    whole: wholeUp(filling),
    cut,
    extra: ratioToNumber(extra),
    extraShare: area.isZero() ? 0 : ratioToNumber(divideRatios(extra, filling)),
    order,
    cautions: cut > 0 ? cautionsFor('cutting') : [],
  };
  return withWorking(count, () => [
    derivedStep({
      title: 'Pavers that fill the area',
      formula: 'N = A / ((l + j) * (w + j))',
      given: [
        given('A', 'area', area),
        given('l', 'length of a paver', read.unit.length),
        given('w', 'width of a paver', read.unit.width),
        given('j', 'joint', read.joint),
      ],
      result: given('N', 'pavers that fill the area', ratioToDecimal(filling)),
    }),
    ...edges.map((edge, index) => edgeStep(edge, entry(cuts, index).met, field)),
    derivedStep({
      title: 'Pavers to order',
      formula: 'n = ceil((N + sum(c[i] * (1 - r[i])) / 2) * (1 + q))',
      given: [
        given('N', 'pavers that fill the area', ratioToDecimal(filling)),
        given(
          'c',
          'pavers cut',
          cuts.map((one) => ratioToDecimal(one.met)),
        ),
        given(
          'r',
          'share of the off-cuts of each edge that are used again',
          edges.map((edge) => ratioToDecimal(edge.reuse ?? reuse)),
        ),
        given('q', 'breakage', ratioToDecimal(read.breakage)),
      ],
      result: given('n', 'pavers to order', order),
    }),
  ]);
}

const total = (parts: readonly Ratio[]): Ratio => parts.reduce(addRatios, ZERO_RATIO);
