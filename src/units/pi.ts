import { Decimal40, type Decimal } from './decimal.js';

/** The area of a circle over the square of its radius, to 40 digits. Internal. */
export const PI: Decimal = /* #__PURE__ */ Decimal40.acos(-1);
