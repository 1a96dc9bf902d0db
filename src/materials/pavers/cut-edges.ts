import type { FieldPath } from '../../errors.js';
import { custom, flag, list, object, optional, quantity, ratio } from '../../input/field.js';
import { AZIMUTH, DISTANCE_OR_NONE, FRACTION } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { shapeOf, type Check, type Values } from '../../input/shape.js';
import type { AngleInput, LengthInput } from '../../units/construct.js';
import { exactOf } from '../../units/quantity.js';
import {
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  subtractRatios,
  HALF_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { NO_ANGLE } from '../../units/zero.js';
import { formulaStep, given, procedureStep, type Step } from '../../working.js';
import {
  metPerMetre,
  metPerMetreOfArc,
  metPerMetreOfCurve,
  type LayingPattern,
} from './pattern.js';
import type { Module } from './unit.js';

/** An edge with cut pavers. */
export interface CutEdgeInput {
  /** Length of the edge [length], 0 to 100 km. */
  readonly length: LengthInput;
  /**
   * Angle between the edge and the long side of the pavers (the reference line of a 45 herringbone)
   * [angle], up to ten turns either way. Default: 0.
   */
  readonly angle?: AngleInput;
  /**
   * Turn of an arc from start to end [angle], positive to the left of travel, up to ten turns;
   * `angle` is then the angle at its start. Default: 0, a straight edge.
   */
  readonly turn?: AngleInput;
  /** True for a curve that runs equally in all directions, and so has no angle. Default: false. */
  readonly isCurved?: boolean;
  /** Share of the off-cuts of this edge that are used, 0 to 1. Default: that of all edges. */
  readonly reuse?: number | string;
}

const EDGE = shapeOf<CutEdgeInput>()({
  length: quantity(DISTANCE_OR_NONE),
  angle: optional(quantity(AZIMUTH), NO_ANGLE),
  turn: optional(quantity(AZIMUTH), NO_ANGLE),
  isCurved: optional(flag, false),
  reuse: optional(ratio(FRACTION)),
});

type CutEdge = Values<typeof EDGE>;

const checkEdge: Check<typeof EDGE> = (reader, { isCurved }, path, raw) => {
  for (const name of ['angle', 'turn'] as const) {
    if (isCurved !== true || raw[name] === undefined) continue;
    const message = `a curve in all directions has no ${name}. Leave out ${name} or isCurved`;
    reader.fail('CONFLICTING_FIELDS', [...path, name], message);
  }
};

const one = object(EDGE, checkEdge);
const several = list(one, { of: 'edges', least: 0, most: 20_000 });

/** The edge with cuts, or a list of them. Internal. */
export const cutEdges = custom(
  (reader: Reader, value: unknown, path: FieldPath): readonly CutEdge[] =>
    Array.isArray(value) ? several.read(reader, value, path) : [one.read(reader, value, path)],
);

/** Pavers and pattern that the edges cut. Internal. */
export interface CutField {
  readonly pattern: LayingPattern;
  readonly module: Module;
  /** Share of the off-cuts that are used, if the edge has none of its own. */
  readonly reuse: Ratio;
}

/** Pavers that an edge cuts, and the extra pavers it takes. Internal. */
export function cutsAlong(edge: CutEdge, field: CutField) {
  const met = multiplyRatios(exactOf(edge.length), perMetre(edge, field));
  const lost = subtractRatios(ONE_RATIO, edge.reuse ?? field.reuse);
  return { met, extra: multiplyRatios(multiplyRatios(met, lost), HALF_RATIO) };
}

function perMetre({ angle, turn, isCurved }: CutEdge, { pattern, module }: CutField): Ratio {
  if (isCurved) return metPerMetreOfCurve(module);
  if (turn.isZero()) return metPerMetre(pattern, module, angle);
  return metPerMetreOfArc(pattern, module, { from: angle, turn });
}

const FORMULAS: Readonly<Record<LayingPattern, string>> = {
  'running-bond': 'c = E * (abs(cos(a)) / L + abs(sin(a)) / W)',
  'stack-bond': 'c = E * (abs(cos(a)) / L + abs(sin(a)) / W)',
  'basket-weave': 'c = E * (abs(cos(a)) + abs(sin(a))) * (1 / L + 1 / W) / 2',
  'herringbone-90': 'c = E * (abs(cos(a)) + abs(sin(a))) * (1 / L + 1 / W) / 2',
  'herringbone-45': 'c = E * max(abs(cos(a)), abs(sin(a))) * (1 / L + 1 / W) / sqrt(2)',
};

/** The working of an edge. Internal. */
export function edgeStep(edge: CutEdge, met: Ratio, { pattern, module }: CutField): Step {
  const isArc = !edge.turn.isZero();
  const fields = {
    given: [
      given('E', 'edge', edge.length),
      ...(edge.isCurved ? [] : [given('a', 'angle to the pavers', edge.angle)]),
      ...(isArc ? [given('t', 'turn of the arc', edge.turn)] : []),
      given('L', 'length of a paver with its joint', module.length),
      given('W', 'width of a paver with its joint', module.width),
    ],
    result: given('c', 'pavers cut', ratioToDecimal(met)),
    source: 'derived' as const,
  };
  if (isArc) {
    const title = `Pavers cut along an arc, ${pattern}`;
    return procedureStep({ title, procedure: 'unitCount', method: ARC_METHOD, ...fields });
  }
  if (edge.isCurved) {
    const formula = 'c = E * 2 / pi * (1 / L + 1 / W)';
    return formulaStep({ title: 'Pavers cut along a curve', formula, ...fields });
  }
  const title = `Pavers cut along an edge, ${pattern}`;
  return formulaStep({ title, formula: FORMULAS[pattern], ...fields });
}

const ARC_METHOD =
  'Takes the mean of the pavers that a straight edge cuts, over all angles to the pavers from a to a + t, and returns it for the length of the edge.';
