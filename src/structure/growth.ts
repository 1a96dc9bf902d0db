import { Decimal40, ONE, type Decimal } from '../units/decimal.js';

/** Growth below this changes no digit of a result. */
const NO_GROWTH = 1e-18;

/** `(1 + r)^n` to 40 digits. Internal. */
export const grownBy = (growth: Decimal, years: Decimal): Decimal =>
  new Decimal40(ONE.plus(growth)).pow(years);

/** Traffic of n years over that of the first year: `((1 + r)^n - 1) / r`. Internal. */
export const growthFactor = (growth: Decimal, years: Decimal): Decimal =>
  growth.abs().lt(NO_GROWTH) ? years : grownBy(growth, years).minus(ONE).dividedBy(growth);

/** Years for a growth factor, the inverse of {@link growthFactor}; null for no end. Internal. */
export function yearsFor(firstYears: number, growth: number): number | null {
  if (Math.abs(growth) < NO_GROWTH) return firstYears;
  const share = growth * firstYears;
  return share <= -1 ? null : Math.log1p(share) / Math.log1p(growth);
}
