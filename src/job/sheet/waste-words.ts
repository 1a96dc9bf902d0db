import type { Decimal } from '../../units/decimal.js';
import type { ReadJob } from '../schema/job-shape.js';

/** A share that a material is ordered with. Internal. */
export type Share = Decimal | undefined;

/** Waste and moisture that a stone or sand is ordered with. Internal. */
export function wasteOf(
  material: string,
  { materials }: ReadJob,
): { readonly waste: Share; readonly moisture: Share } {
  const found = [...materials.stones, ...materials.sands].find(({ id }) => id === material);
  return { waste: found?.waste, moisture: found?.moisture };
}

/** True for a share of more than nothing. */
const isPositive = (share: Share): share is Decimal => share?.greaterThan(0) === true;

/** A share as written: `5%`, `2.5%`. */
const shareText = (share: Decimal): string => `${share.times(100).toFixed()}%`;

/** What volumes and weights include; empty where it is nothing. Internal. */
export function wasteText(waste: Share, moisture: Share): string {
  return [
    ...(isPositive(waste) ? [`loose and weight include ${shareText(waste)} waste`] : []),
    ...(isPositive(moisture) ? [`weight includes ${shareText(moisture)} water`] : []),
  ].join('; ');
}

/** A label with what it includes: `loose, with 5% waste`. Internal. */
export const withShares = (
  label: string,
  shares: readonly (readonly [share: Share, of: string])[],
): string => {
  const said = shares.flatMap(([share, of]) =>
    isPositive(share) ? [`${shareText(share)} ${of}`] : [],
  );
  return said.length === 0 ? label : `${label}, with ${said.join(' and ')}`;
};

/** Pavers to order, with what the order includes: `drive pavers to order, with 2% for breakage`. Internal. */
export function paverLabel(name: string, paver: string, { materials }: ReadJob): string {
  const found = materials.pavers?.find(({ id }) => id === paver);
  // with a pattern the cuts are counted one by one
  const why = found?.pattern === undefined ? 'cuts and breakage' : 'breakage';
  const label = `${name} to order`;
  return isPositive(found?.breakage)
    ? `${label}, with ${shareText(found.breakage)} for ${why}`
    : label;
}
