import type { FieldPath } from '../errors.js';
import type { QuantityRule, Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { between, type PlanPoint, type Vector } from '../units/vector.js';

/** A stake in plan. */
export interface PlanStakeInput {
  readonly id: string;
  readonly x: LengthInput;
  readonly y: LengthInput;
}

/** A coordinate of a site. Internal. */
export const PLACE: QuantityRule<'length'> = Object.freeze({
  sign: 'any',
  most: length(100_000, 'km'),
});

/** How far off a stake may stand. Internal. */
export const TOLERANCE: QuantityRule<'length'> = Object.freeze({
  sign: 'not-negative',
  most: length(10, 'm'),
});

type Fields = Readonly<Record<string, unknown>>;

/** Reads the `x` and `y` of a point in plan. Internal. */
export function readPlace(reader: Reader, fields: Fields, path: FieldPath): PlanPoint {
  const x = reader.quantity('length', fields['x'], [...path, 'x'], PLACE);
  const y = reader.quantity('length', fields['y'], [...path, 'y'], PLACE);
  return { x, y };
}

/** How many stakes a row needs, and the words if there are fewer. Internal. */
export interface RowNeed {
  readonly least: number;
  readonly words: string;
}

/** Reads a row of stakes, each id once; `readRest` reads what else stands on a stake. Internal. */
export function readRow<T extends object>(
  {
    reader,
    value,
    need,
  }: { readonly reader: Reader; readonly value: unknown; readonly need: RowNeed },
  readRest: (fields: Fields, path: FieldPath) => T,
): (T & { readonly id: string })[] {
  const ids = new Set<string>();
  const stakes = reader.list(value, ['stakes']).map((item, index) => {
    const path = ['stakes', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id)) {
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the stake ${id} stands twice`);
    }
    ids.add(id);
    return { id, ...readRest(fields, path) };
  });
  if (stakes.length > 0 && stakes.length < need.least) {
    reader.fail('TOO_FEW_STAKES', ['stakes'], need.words);
  }
  return stakes;
}

/** A stake in plan, counted from the first one. Internal. */
export interface LocalStake {
  readonly id: string;
  readonly at: Vector;
}

/** Reads stakes in plan, and counts them from the first one, exactly. Internal. */
export function readPlanStakes(
  reader: Reader,
  value: unknown,
  need: RowNeed,
): { readonly origin: PlanPoint; readonly local: readonly LocalStake[] } {
  const stakes = readRow({ reader, value, need }, (fields, path) => ({
    at: readPlace(reader, fields, path),
  }));
  const origin = stakes[0]?.at ?? { x: length(0, 'm'), y: length(0, 'm') };
  return { origin, local: stakes.map(({ id, at }) => ({ id, at: between(origin, at) })) };
}
