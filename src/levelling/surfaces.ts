// levelling uses build-up: the surfaces that a rod is set on are those of a build-up
import type { BuildUp } from '../build-up/build-up.js';
import { MOST_LIFTS, type Lifts } from '../build-up/lifts.js';
import { builtUp } from '../build-up/built-up.js';
import type { FieldPath } from '../errors.js';
import { custom, optional } from '../input/field.js';
import type { Reader } from '../input/reader.js';
import type { Field } from '../input/shape.js';
import { isLength } from '../units/is-length.js';
import type { Length } from '../units/quantity.js';

/** A surface of a build-up and its depth below finished grade. Internal. */
export interface Surface {
  readonly surface: string;
  readonly depth: Length;
}

type LiftTops = Pick<Lifts, 'tops'>;

/** The lifts of the lowest layer as `lifts` returns them. */
const workedLifts: Field<LiftTops> = custom((reader, value, path) => {
  const tops = topsOf(value);
  if (tops !== undefined) return { tops };
  reader.fail('WRONG_TYPE', path, 'pass the result of lifts()');
  return { tops: [] };
});

function topsOf(value: unknown): readonly Length[] | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { tops } = value as Partial<LiftTops>;
  if (!Array.isArray(tops) || tops.length === 0 || tops.length > MOST_LIFTS) return undefined;
  const all = Array.from<unknown>(tops);
  return all.every(isLength) ? all : undefined;
}

/** The fields that surfaces are read from. Internal. */
export const STACK = { buildUp: builtUp, lifts: optional(workedLifts) } as const;

interface Stack {
  readonly buildUp?: BuildUp | undefined;
  readonly lifts?: LiftTops | undefined;
}

/** Lifts make up the lowest layer of their build-up. Internal. */
export function checkLifts(reader: Reader, { buildUp, lifts }: Stack, path: FieldPath): void {
  const lowest = buildUp?.layers.at(-1);
  const whole = lifts?.tops.at(-1);
  if (lowest === undefined || whole === undefined || whole.equals(lowest.thickness)) return;
  const message = `make up ${whole.toString()}, but the lowest layer is ${lowest.thickness.toString()}`;
  reader.fail('CONFLICTING_FIELDS', [...path, 'lifts'], `${message}. Pass the lifts of that layer`);
}

/** Surfaces from finished grade down to the subgrade. Internal. */
export function surfacesOf(
  { layers, total }: BuildUp,
  lifts: LiftTops | undefined,
): readonly Surface[] {
  // the top lift ends at the top of its layer
  const lower = (lifts?.tops ?? []).slice(0, -1).map((top, k) => ({
    surface: `lift ${k + 1} top`,
    depth: total.minus(top),
  }));
  return [
    ...layers.map(({ name, top }, k) => ({
      surface: k === 0 ? 'finished grade' : `${name} top`,
      depth: top,
    })),
    ...lower.reverse(),
    { surface: 'subgrade', depth: total },
  ];
}
