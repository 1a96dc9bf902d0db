import { custom, quantity } from '../input/field.js';
import { isForm } from '../input/plain.js';
import { TOLERANCE } from '../input/ranges.js';
import type { Field } from '../input/shape.js';
import type { Length } from '../units/quantity.js';
import { allowedBy, misclosureRule, type ReadRule } from './misclosure-rule.js';

/** A misclosure that is allowed: a length, or a rule that gives one. Internal. */
export type Allowance = Length | ReadRule;

const length = quantity(TOLERANCE);

/** Reads a misclosure that is allowed, in either form. Internal. */
export const allowance: Field<Allowance> = custom((reader, value, path) =>
  (isForm(value) ? misclosureRule : length).read(reader, value, path),
);

/** True for a rule that counts by distance. Internal. */
export const isByDistance = (allowed: Allowance | undefined): boolean =>
  allowed !== undefined && isRule(allowed) && allowed.per !== 'set-up';

/** The misclosure that is allowed over a line of levels; null if none was given. Internal. */
export function allowableOver(
  allowed: Allowance | undefined,
  line: { readonly setUps: number; readonly distance: Length },
): Length | null {
  if (allowed === undefined) return null;
  return isRule(allowed) ? allowedBy(allowed, line) : allowed;
}

const isRule = (allowed: Allowance): allowed is ReadRule => 'k' in allowed;
