import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import type { SourceId } from '../../sources/catalogue.js';
import { ROOT_CUT_MARKS } from '../../sources/tree-rules.js';
import { length, type LengthInput } from '../../units/construct.js';
import type { Decimal } from '../../units/decimal.js';
import { exactOf, type Area, type Length } from '../../units/quantity.js';
import { divideRatios, ratioToDecimal } from '../../units/ratio.js';
import { given, type Step, type StepInput } from '../../working.js';
import { shareBeyond } from './circle-cut.js';
import { ANY_LENGTH } from '../limits.js';
import { readDrawnDigAtTree } from './root-cut-in-outline.js';

/** A straight dig past a tree, measured square to it from the middle of the trunk. */
export interface DigPastTree {
  /** Near edge of the dig, its over-dig included; negative where it lies beyond the trunk. */
  readonly near: LengthInput;
  /** Far edge, for a strip dug on both sides; left out where the dig goes on past the zone. */
  readonly far?: LengthInput;
}

/** A mark that a published source draws. */
export interface RootCutMark {
  readonly id: 'share' | 'diameters';
  readonly reached: boolean;
  readonly text: string;
  readonly source: SourceId;
}

/** What a dig cuts of a root zone. */
export interface RootCut {
  readonly area: Area;
  /** Part of the zone, 0 to 1. */
  readonly share: number;
  /** From the middle of the trunk to the dig; zero where the dig runs under it. */
  readonly distance: Length;
  /** The distance over the trunk diameter. */
  readonly diameters: number;
  readonly marks: readonly RootCutMark[];
}

/** A dig beside a tree that has been read. Internal. */
export interface DigAtTree {
  /** Distance to the trunk, and part of a root zone of a radius that lies in the dig, 0 to 1. */
  readonly cut: (radius: Length) => { readonly distance: Length; readonly share: Decimal };
  readonly formula: string;
  readonly given: readonly StepInput[];
}

/** Reads a dig beside a tree: straight, or drawn. Internal. */
export function readDigAtTree(reader: Reader, value: unknown, path: FieldPath): DigAtTree {
  const fields = reader.object(value, path);
  if (fields['outline'] === undefined) return readDigPastTree(reader, fields, path);
  if (fields['near'] !== undefined || fields['far'] !== undefined) {
    reader.fail(
      'EITHER_OR',
      path,
      'give the edges near and far, or outline and trunk: one of the two',
    );
  }
  return readDrawnDigAtTree(reader, fields, path);
}

function readDigPastTree(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
): DigAtTree {
  const near = reader.quantity('length', fields['near'], [...path, 'near'], ANY_LENGTH);
  const far =
    fields['far'] === undefined
      ? undefined
      : reader.quantity('length', fields['far'], [...path, 'far'], ANY_LENGTH);
  if (far !== undefined && far.compare(near) <= 0) {
    reader.fail('NOT_INCREASING', [...path, 'far'], 'the far edge must lie beyond the near edge');
  }
  return {
    cut: (radius) => {
      const beyond = (edge: Length) =>
        shareBeyond(ratioToDecimal(divideRatios(exactOf(edge), exactOf(radius))));
      const share = far === undefined ? beyond(near) : beyond(near).minus(beyond(far));
      return { distance: distanceTo(near, far), share };
    },
    formula: 'A = R^2 acos(d / R) - d sqrt(R^2 - d^2), near edge less far edge',
    given: [
      given('d1', 'near edge', near),
      ...(far === undefined ? [] : [given('d2', 'far edge', far)]),
    ],
  };
}

const NONE = length(0, 'm');

/** From the trunk to the nearest edge; none where the dig runs under the trunk. */
function distanceTo(near: Length, far: Length | undefined): Length {
  if (!near.isNegative()) return near;
  return far?.isNegative() === true ? far.negated() : NONE;
}

/** What a dig cuts of a root zone, and the marks it reaches. Internal. */
export function rootCut(
  dig: DigAtTree,
  tree: { readonly radius: Length; readonly area: Area; readonly trunk: Length },
): RootCut {
  const { radius, area, trunk } = tree;
  const { distance, share } = dig.cut(radius);
  const closest = trunk.times(ROOT_CUT_MARKS.diameters.value);
  return {
    area: area.times(share),
    share: share.toNumber(),
    distance,
    diameters: distance.dividedBy(trunk).toNumber(),
    marks: [
      {
        id: 'share',
        reached: share.gt(ROOT_CUT_MARKS.share.value),
        text: 'More than a quarter of the root zone would be disturbed. The published quarter is of the roots inside the drip line: taking it of this circle is common practice.',
        source: ROOT_CUT_MARKS.share.source,
      },
      {
        id: 'diameters',
        reached: distance.compare(closest) < 0,
        text: 'The dig comes closer to the trunk than three trunk diameters.',
        source: ROOT_CUT_MARKS.diameters.source,
      },
    ],
  };
}

/** The working of a cut. Internal. */
export const rootCutStep = (radius: Length, dig: DigAtTree, cut: RootCut): Step => ({
  title: 'Root zone that the dig cuts',
  formula: dig.formula,
  given: [given('R', 'radius', radius), ...dig.given],
  result: given('A', 'area cut', cut.area),
  source: 'derived',
});
