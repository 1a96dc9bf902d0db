import { Decimal40, type Decimal } from '../../units/decimal.js';

/** The figures of soil: densities over that of water, and ratios. Internal. */
export interface Phases {
  readonly wetDensity: Decimal;
  readonly dryDensity: Decimal;
  readonly moisture: Decimal;
  readonly specificGravity: Decimal;
  readonly voidRatio: Decimal;
  readonly porosity: Decimal;
  readonly saturation: Decimal;
}

/** A figure of soil. Internal. */
export type PhaseName = keyof Phases;

/** Figures that are known so far. Internal. */
export type Known = Partial<Record<PhaseName, Decimal>>;

/** One relation: which figure follows from which, with the formula in words. Internal. */
export interface Relation {
  readonly gives: PhaseName;
  readonly from: readonly PhaseName[];
  readonly formula: string;
  /** Null where this way does not lead to the figure (a division by 0). */
  readonly solve: (known: Phases) => Decimal | null;
}

const ONE = new Decimal40(1);
const plusOne = (value: Decimal): Decimal => ONE.plus(value);
const over = (top: Decimal, bottom: Decimal): Decimal | null =>
  bottom.isZero() ? null : new Decimal40(top).dividedBy(bottom);

const relation = (
  gives: PhaseName,
  from: readonly PhaseName[],
  formula: string,
  solve: Relation['solve'],
): Relation => ({ gives, from, formula, solve });

/**
 * Every way in which a figure follows from others. The densities d (dry) and m (wet) are over that of
 * water; w moisture, G specific gravity, e void ratio, n porosity, S saturation. Internal.
 */
export const RELATIONS: readonly Relation[] = [
  relation('voidRatio', ['porosity'], 'e = n / (1 - n)', ({ porosity: n }) =>
    over(n, ONE.minus(n)),
  ),
  relation('porosity', ['voidRatio'], 'n = e / (1 + e)', ({ voidRatio: e }) => over(e, plusOne(e))),
  relation('dryDensity', ['wetDensity', 'moisture'], 'd = m / (1 + w)', (of) =>
    over(of.wetDensity, plusOne(of.moisture)),
  ),
  relation('wetDensity', ['dryDensity', 'moisture'], 'm = d * (1 + w)', (of) =>
    of.dryDensity.times(plusOne(of.moisture)),
  ),
  relation('moisture', ['wetDensity', 'dryDensity'], 'w = m / d - 1', (of) =>
    over(of.wetDensity.minus(of.dryDensity), of.dryDensity),
  ),
  relation('dryDensity', ['specificGravity', 'voidRatio'], 'd = G / (1 + e)', (of) =>
    over(of.specificGravity, plusOne(of.voidRatio)),
  ),
  relation('voidRatio', ['specificGravity', 'dryDensity'], 'e = G / d - 1', (of) =>
    over(of.specificGravity.minus(of.dryDensity), of.dryDensity),
  ),
  relation('specificGravity', ['dryDensity', 'voidRatio'], 'G = d * (1 + e)', (of) =>
    of.dryDensity.times(plusOne(of.voidRatio)),
  ),
  relation('saturation', ['moisture', 'specificGravity', 'voidRatio'], 'S = w * G / e', (of) =>
    over(of.moisture.times(of.specificGravity), of.voidRatio),
  ),
  relation('moisture', ['saturation', 'voidRatio', 'specificGravity'], 'w = S * e / G', (of) =>
    over(of.saturation.times(of.voidRatio), of.specificGravity),
  ),
  relation('voidRatio', ['moisture', 'specificGravity', 'saturation'], 'e = w * G / S', (of) =>
    over(of.moisture.times(of.specificGravity), of.saturation),
  ),
  relation('specificGravity', ['saturation', 'voidRatio', 'moisture'], 'G = S * e / w', (of) =>
    over(of.saturation.times(of.voidRatio), of.moisture),
  ),
  relation(
    'specificGravity',
    ['wetDensity', 'voidRatio', 'saturation'],
    'G = m * (1 + e) - S * e',
    (of) => of.wetDensity.times(plusOne(of.voidRatio)).minus(of.saturation.times(of.voidRatio)),
  ),
  relation(
    'voidRatio',
    ['wetDensity', 'specificGravity', 'saturation'],
    'e = (G - m) / (m - S)',
    (of) => over(of.specificGravity.minus(of.wetDensity), of.wetDensity.minus(of.saturation)),
  ),
  relation(
    'specificGravity',
    ['dryDensity', 'saturation', 'moisture'],
    'G = d * S / (S - d * w)',
    (of) =>
      over(
        of.dryDensity.times(of.saturation),
        of.saturation.minus(of.dryDensity.times(of.moisture)),
      ),
  ),
];

/** A relation that was used, and what it gave. Internal. */
export interface Used {
  readonly relation: Relation;
  readonly value: Decimal;
}

/** Follows the relations from the given figures until none gives more. Internal. */
export function followRelations(given: Known): { readonly known: Known; readonly used: Used[] } {
  const known: Known = dryLimits({ ...given });
  const used: Used[] = [];
  for (let before = -1; before < used.length;) {
    before = used.length;
    for (const one of RELATIONS) {
      if (known[one.gives] !== undefined || one.from.some((name) => known[name] === undefined)) {
        continue;
      }
      const value = one.solve(known as Phases);
      if (value === null) continue;
      known[one.gives] = value;
      used.push({ relation: one, value });
      dryLimits(known);
    }
  }
  return { known, used };
}

/** Dry soil is not saturated at all, and the other way round. */
function dryLimits(known: Known): Known {
  if (known.moisture?.isZero() === true) known.saturation ??= new Decimal40(0);
  if (known.saturation?.isZero() === true) known.moisture ??= new Decimal40(0);
  return known;
}
