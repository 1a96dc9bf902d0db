import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { angle, type AngleInput, type AreaInput, type LengthInput } from '../units/construct.js';
import { exactOf, type Angle, type Area, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  ratioToNumber,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { onePlus, readRatio } from './exact.js';
import { AREA, FRACTION, JOINT, RUN } from './limits.js';
import {
  LAYING_PATTERNS,
  metPerMetre,
  metPerMetreOfArc,
  metPerMetreOfCurve,
  type LayingPattern,
} from './pattern.js';
import { moduleOf, readUnit, type Module, type UnitInput } from './read-unit.js';
import { wholeUp } from './whole-number.js';

/** An edge along which units are cut. */
export interface CutEdgeInput {
  readonly length: LengthInput;
  /** Between the edge and the long side of the units (the reference line of a 45 herringbone). */
  readonly angle?: AngleInput;
  /** How far an arc turns on its way, + to the left of travel; `angle` is then that at its start. */
  readonly turn?: AngleInput;
  /** A curve that runs in all directions alike: no angle then. */
  readonly curved?: boolean;
  /** Share of the off-cuts of this edge that find a place, if it differs. */
  readonly reuse?: number | string;
}

/** Units of a field: how many fill it, how many are cut, how many to order. */
export interface UnitCount extends Worked {
  /** Units for one square metre, joints counted in. A plain number, not rounded. */
  readonly perArea: number;
  /** What one unit takes up with its joints. */
  readonly module: Area;
  /** Units that fill the area, rounded up. */
  readonly whole: number;
  /** Units met by the edges, and so cut, rounded up. */
  readonly cut: number;
  /** Units more than fill the area, because off-cuts are left over. A plain number, not rounded. */
  readonly extra: number;
  /** Extra over the units that fill the area: 0.04 means four in a hundred. 0 for no area. */
  readonly extraShare: number;
  /** Units to order. */
  readonly order: number;
  readonly cautions: readonly Caution[];
}

/**
 * Counts the units of a field by their module, and the cuts from the geometry of its edges. A field
 * takes `N = A / ((l + j) (w + j))` units. A straight edge of length E at angle a to their long side
 * meets `n = E (|cos a| / (l + j) + |sin a| / (w + j))` of them; half of each is cut off in the mean,
 * so that `x = n (1 - reuse) / 2` more are needed. `order = ceil((N + x) (1 + breakage))`, rounded up
 * once, from the exact sum; N and x are not rounded before.
 *
 * By pattern: herringbone at 90 degrees and basket weave have half of their units square to the other
 * half, and n is the mean of a and a + 90 degrees; for herringbone at 45 degrees a counts from the
 * line that the points run along, and n is the mean of a - 45 and a + 45 degrees. On a curve n is the
 * mean over all directions, `E (2 / pi) (1 / (l + j) + 1 / (w + j))`, and on an arc with its `turn` the
 * mean over the directions that it runs through. Arcs and angles other than 0, 30, 60 and 90 degrees
 * are worked out in floats.
 *
 * The count of cuts is a mean over all ways in which the pattern can meet the edges: one field takes
 * about one unit more for its corners, and a lucky or unlucky start shifts it by a few. Leave out edges
 * that whole units meet without a cut.
 *
 * @param options.area - of the field, borders taken off [area]
 * @param options.unit - its own size without joints: `length` and `width` [length]; give joint 0 if
 *   the size already has the joint in it
 * @param options.joint - joint width [length], 0 to 100 mm
 * @param options.pattern - default `running-bond`
 * @param options.edge - the edge to be cut, or a list of them: `length` [length], `angle` [angle],
 *   default 0, with `turn` [angle] for an arc, or `curved: true`; default none; see `outlineEdges`
 * @param options.reuse - share of the off-cuts that find a place, 0 to 1, default 0; triangles of a 45
 *   herringbone hardly ever do
 * @param options.breakage - broken units and spare stock, a fraction 0 to 1, default 0
 * @returns units for a square metre, to fill the area, cut, extra and to order
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`, `CONFLICTING_FIELDS` (a curve
 *   with an angle), `CAPACITY_EXCEEDED` and the reading codes
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
export function unitCount(options: {
  readonly area: AreaInput;
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  readonly pattern?: LayingPattern;
  readonly edge?: CutEdgeInput | readonly CutEdgeInput[];
  readonly reuse?: number | string;
  readonly breakage?: number | string;
}): UnitCount {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const unit = readUnit(reader, fields['unit']);
  const joint = reader.quantity('length', fields['joint'], ['joint'], JOINT);
  const pattern = reader.choice(fields['pattern'] ?? 'running-bond', ['pattern'], LAYING_PATTERNS);
  const reuse = readRatio(reader, fields['reuse'] ?? 0, ['reuse'], FRACTION);
  const edges = readEdges(reader, fields['edge'], reuse);
  const breakage = readRatio(reader, fields['breakage'] ?? 0, ['breakage'], FRACTION);
  reader.finish();

  const module = moduleOf(unit, joint);
  const filling = divideRatios(exactOf(area), exactOf(module.area));
  const cuts = edges.map((edge) => cutsAlong(edge, pattern, module));
  const met = total(cuts.map(({ met: one }) => one));
  const extra = total(cuts.map(({ extra: one }) => one));
  const needed = addRatios(filling, extra);
  const order = wholeUp(multiplyRatios(needed, onePlus(breakage)));
  const cut = wholeUp(met);
  const isEmpty = area.isZero();
  const count = {
    perArea: ratioToNumber(divideRatios(ONE_RATIO, exactOf(module.area))),
    module: module.area,
    whole: wholeUp(filling),
    cut,
    extra: ratioToNumber(extra),
    extraShare: isEmpty ? 0 : ratioToNumber(divideRatios(extra, filling)),
    order,
    cautions: cut > 0 ? cautionsFor('cutting') : [],
  };
  return withWorking(count, () => [
    {
      title: 'Units that fill the area',
      formula: 'N = A / ((l + j) (w + j))',
      given: [
        given('A', 'area', area),
        given('l', 'length of a unit', unit.length),
        given('w', 'width of a unit', unit.width),
        given('j', 'joint', joint),
      ],
      result: given('N', 'units', ratioToDecimal(filling)),
      source: 'derived',
    },
    ...edges.map((edge, index) => edgeStep(edge, cuts[index]?.met ?? ZERO_RATIO, pattern, module)),
    {
      title: 'Units to order',
      formula: 'n = ceil((N + sum(c (1 - r)) / 2) (1 + q))',
      given: [
        given('N', 'units that fill the area', ratioToDecimal(filling)),
        given('c', 'units cut', ratioToDecimal(met)),
        given('r', 'share of off-cuts used again', ratioToDecimal(reuse)),
        given('q', 'breakage', ratioToDecimal(breakage)),
      ],
      result: given('n', 'units to order', order),
      source: 'derived',
    },
  ]);
}

interface CutEdge {
  readonly length: Length;
  readonly angle: Angle | 'curved';
  /** Null for a straight edge. */
  readonly turn: Angle | null;
  readonly reuse: Ratio;
}

const NO_ANGLE = angle(0, 'deg');
const FULL_TURN = Object.freeze({ sign: 'any', most: angle(360, 'deg') } as const);
const HALF: Ratio = Object.freeze({ n: 5, d: 10 });

function readEdges(reader: Reader, value: unknown, reuse: Ratio): CutEdge[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) return [readEdge(reader, value, ['edge'], reuse)];
  return value.map((item, index) => readEdge(reader, item, ['edge', index], reuse));
}

function readEdge(reader: Reader, value: unknown, path: FieldPath, reuse: Ratio): CutEdge {
  const fields = reader.object(value, path);
  const length = reader.quantity('length', fields['length'], [...path, 'length'], RUN);
  const isCurved = reader.flag(fields['curved'] ?? false, [...path, 'curved']);
  const own =
    fields['reuse'] === undefined
      ? reuse
      : readRatio(reader, fields['reuse'], [...path, 'reuse'], FRACTION);
  for (const name of ['angle', 'turn'] as const) {
    if (!isCurved || fields[name] === undefined) continue;
    const words = `a curve in all directions has no ${name}: leave it out`;
    reader.fail('CONFLICTING_FIELDS', [...path, name], words);
  }
  if (isCurved) return { length, angle: 'curved', turn: null, reuse: own };
  const read = (name: 'angle' | 'turn') =>
    reader.quantity('angle', fields[name] ?? NO_ANGLE, [...path, name], FULL_TURN);
  const [by, turn] = [read('angle'), read('turn')];
  return { length, angle: by, turn: turn.isZero() ? null : turn, reuse: own };
}

const total = (parts: readonly Ratio[]): Ratio => parts.reduce(addRatios, ZERO_RATIO);

/** Units met by an edge, and units more that it takes. */
function cutsAlong(edge: CutEdge, pattern: LayingPattern, module: Module) {
  const met = multiplyRatios(exactOf(edge.length), perMetre(edge, pattern, module));
  const lost = subtractRatios(ONE_RATIO, edge.reuse);
  return { met, extra: multiplyRatios(multiplyRatios(met, lost), HALF) };
}

function perMetre({ angle: by, turn }: CutEdge, pattern: LayingPattern, module: Module): Ratio {
  if (by === 'curved') return metPerMetreOfCurve(module);
  if (turn === null) return metPerMetre(pattern, module, by);
  return metPerMetreOfArc(pattern, module, { from: by, turn });
}

const FORMULAS: Readonly<Record<LayingPattern, string>> = {
  'running-bond': 'c = E (|cos a| / L + |sin a| / W)',
  'stack-bond': 'c = E (|cos a| / L + |sin a| / W)',
  'basket-weave': 'c = E (|cos a| + |sin a|) (1 / L + 1 / W) / 2',
  'herringbone-90': 'c = E (|cos a| + |sin a|) (1 / L + 1 / W) / 2',
  'herringbone-45': 'c = E max(|cos a|, |sin a|) (1 / L + 1 / W) / sqrt(2)',
};

function edgeStep(edge: CutEdge, met: Ratio, pattern: LayingPattern, module: Module): Step {
  const isCurve = edge.angle === 'curved' || edge.turn !== null;
  const formula = edge.angle === 'curved' ? 'c = E (2 / pi) (1 / L + 1 / W)' : FORMULAS[pattern];
  return {
    title: isCurve ? 'Units cut along a curve' : `Units cut along an edge, ${pattern}`,
    formula: edge.turn === null ? formula : `${formula}, mean from a to a + t`,
    given: [
      given('E', 'edge', edge.length),
      ...(edge.angle === 'curved' ? [] : [given('a', 'angle to the units', edge.angle)]),
      ...(edge.turn === null ? [] : [given('t', 'turn of the arc', edge.turn)]),
      given('L', 'length of a unit with its joint', module.length),
      given('W', 'width of a unit with its joint', module.width),
    ],
    result: given('c', 'units cut', ratioToDecimal(met)),
    source: 'derived',
  };
}
