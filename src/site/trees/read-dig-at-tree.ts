import { known } from '../../invariant.js';
import { exactlyOne } from '../../input/exactly-one.js';
import { object, optional, quantity } from '../../input/field.js';
import { SITE_OFFSET } from '../../input/ranges.js';
import { shapeOf, type Check, type Field, type Values } from '../../input/shape.js';
// a drawn dig is an outline
import type { OutlineInput } from '../../outline/read-outline.js';
import type { LengthInput } from '../../units/construct.js';
import { drawnDig, placeField, refuseFarPlace, type PlaceInput } from '../drawn-dig.js';
import type { DigAtTree } from './dig-at-tree.js';
import { digPastTree } from './dig-past-tree.js';
import { drawnDigAtTree } from './drawn-dig-at-tree.js';

/** A whole dig beside a tree, extension included: straight, or drawn. */
export type DigAtTreeInput = DigPastTreeInput | DrawnDigAtTreeInput;

/** A straight dig past a tree, measured square to it from the middle of the trunk. */
export interface DigPastTreeInput {
  /** Near edge of the dig [length], up to 10 km either way; negative if it is beyond the trunk. */
  readonly near: LengthInput;
  /** Far edge, beyond `near` [length]. Default: the dig extends past the zone. */
  readonly far?: LengthInput;
}

/** A drawn dig beside a tree. */
export interface DrawnDigAtTreeInput {
  /** Outline of the dig, as `outlineArea` takes it, with arcs and holes. */
  readonly outline: OutlineInput;
  /** Middle of the trunk, in the coordinates of the outline, within 10 km of it. */
  readonly trunk: PlaceInput;
}

const DIG = shapeOf<Partial<DigPastTreeInput & DrawnDigAtTreeInput>>()({
  near: optional(quantity(SITE_OFFSET)),
  far: optional(quantity(SITE_OFFSET)),
  outline: optional(drawnDig),
  trunk: optional(placeField),
});

/** The fields that go with each form of a dig. */
const GOES_WITH = { near: 'far', outline: 'trunk' } as const;

const checkDig: Check<typeof DIG> = (reader, { near, far, outline, trunk }, path, raw) => {
  const form = exactlyOne(reader, raw, ['near', 'outline'], [...path, 'near']);
  if (form === undefined || (raw['near'] !== undefined && raw['outline'] !== undefined)) return;
  const other = form === 'near' ? 'outline' : 'near';
  const stray = GOES_WITH[other];
  if (raw[stray] !== undefined) {
    const message = `belongs to ${other}, and the dig is given by ${form}. Leave one of them out`;
    reader.fail('CONFLICTING_FIELDS', [...path, stray], message);
  }
  if (form === 'outline' && raw['trunk'] === undefined) {
    placeField.read(reader, undefined, [...path, 'trunk']);
  }
  if (near !== undefined && far !== undefined && far.compare(near) <= 0) {
    const message = 'the far edge must be beyond the near edge, measured from the trunk';
    reader.fail('NOT_INCREASING', [...path, 'far'], message);
  }
  if (outline !== undefined && trunk !== undefined) {
    refuseFarPlace(reader, trunk, { dig: outline, path: [...path, 'trunk'] });
  }
};

/** A dig beside a tree. Internal. */
export const digAtTree: Field<Values<typeof DIG>> = object(DIG, checkDig);

/** The cut of a dig that has been read. Internal. */
export function digFrom({ near, far, outline, trunk }: Values<typeof DIG>): DigAtTree {
  return outline === undefined || trunk === undefined
    ? digPastTree(known(near, 'near side'), far)
    : drawnDigAtTree(outline, trunk);
}
