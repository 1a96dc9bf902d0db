import type { FieldPath } from '../../errors.js';
import { exactOf, fromSI, isQuantity, type AnyQuantity } from '../../units/quantity.js';
import { subtractRatios } from '../../units/ratio.js';
import type { PlanChange, PlanValue } from './plan-change.js';

/** A value of a plan that is compared. Internal. */
export interface PlanEntry extends Pick<
  PlanChange,
  'about' | 'path' | 'subject' | 'what' | 'printed'
> {
  /** The same in both plans for the same thing. */
  readonly key: string;
  /** Key of what it belongs to: with that gone it is not missed. */
  readonly owner: string | null;
  readonly value: PlanValue;
}

/** What the entries of one thing have in common. Internal. */
export interface EntryOwner extends Pick<PlanEntry, 'about' | 'subject'> {
  readonly key: string;
  readonly path: FieldPath;
}

/** Says that a thing is there; its own entries belong to it. Internal. */
export const presence = (
  owner: EntryOwner,
  what: string,
  value: PlanValue,
  of: {
    readonly owner?: string;
    readonly at?: FieldPath;
    readonly printed?: PlanEntry['printed'];
  } = {},
): PlanEntry => ({
  ...owner,
  path: [...owner.path, ...(of.at ?? [])],
  owner: of.owner ?? null,
  what,
  printed: of.printed ?? 'depth',
  value,
});

/** A value of a thing, by its field. Internal. */
export const valueOf = (
  owner: EntryOwner,
  at: FieldPath,
  what: string,
  value: PlanValue,
  more: Partial<Pick<PlanEntry, 'about' | 'printed'>> = {},
): PlanEntry => ({
  about: more.about ?? owner.about,
  subject: owner.subject,
  path: [...owner.path, ...at],
  key: `${owner.key} ${what}`,
  owner: owner.key,
  what,
  printed: more.printed ?? 'depth',
  value,
});

/** After less before, where both are amounts of one kind. Internal. */
export function differenceOf(before: PlanValue, after: PlanValue): AnyQuantity | number | null {
  if (typeof before === 'number' && typeof after === 'number') return after - before;
  if (!isQuantity(before) || !isQuantity(after)) return null;
  const [was, now]: readonly [AnyQuantity, AnyQuantity] = [before, after];
  if (was.dimension !== now.dimension) return null;
  return fromSI(now.dimension, subtractRatios(exactOf(now), exactOf(was)));
}
