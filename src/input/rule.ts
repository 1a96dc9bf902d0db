import type { Dimension } from '../units/catalogue.js';
import type { Quantity } from '../units/quantity.js';

/** Which sign a value may have. */
export type Sign = 'positive' | 'not-negative' | 'any';

/** What a quantity in a field may be. */
export interface QuantityRule<D extends Dimension> {
  readonly sign: Sign;
  /** Maximum, in magnitude. */
  readonly most?: Quantity<D>;
  /** What to write, for messages. */
  readonly example?: string;
  /** What to do about a value that cannot be read, if an example does not say it. */
  readonly write?: (given: unknown) => string;
}

/** What a number in a field may be. */
export interface NumberRule {
  readonly sign: Sign;
  readonly least?: number;
  readonly most?: number;
  /** What to write, for messages. */
  readonly example?: string;
}
