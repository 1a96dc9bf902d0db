import type { Decimal } from '../../../units/decimal.js';
import type { ReadJob } from '../../schema/job-shape.js';

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

/** A paver by the id that an order has; an altered plan may have another. Internal. */
export const paverNamed = (paver: string, { materials }: ReadJob) =>
  materials.pavers?.find(({ id }) => id === paver);

/** Pavers to order, with what the order includes: `drive pavers to order, with 2% for breakage`. Internal. */
export function paverLabel(name: string, paver: string, job: ReadJob): string {
  const share = breakageShare(paver, job);
  const label = `${name} to order`;
  return share === null ? label : `${label}, with ${share}`;
}

/** What is added to the pavers for breakage: `plus 2% for breakage`. Internal. */
export const breakageLabel = (paver: string, job: ReadJob): string =>
  `plus ${breakageShare(paver, job) ?? 'for breakage'}`;

/** The share for breakage in words; null where the job gives none. */
function breakageShare(paver: string, job: ReadJob): string | null {
  const found = paverNamed(paver, job);
  // with a pattern the cuts are counted one by one
  const why = found?.pattern === undefined ? 'cuts and breakage' : 'breakage';
  return isPositive(found?.breakage) ? `${shareText(found.breakage)} for ${why}` : null;
}
