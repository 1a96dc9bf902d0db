import { fromSI } from './quantity.js';
import { ZERO_RATIO } from './ratio.js';

/** Zero length. Internal. */
export const NO_LENGTH = /* #__PURE__ */ fromSI('length', ZERO_RATIO);
/** Zero area. Internal. */
export const NO_AREA = /* #__PURE__ */ fromSI('area', ZERO_RATIO);
/** Zero volume. Internal. */
export const NO_VOLUME = /* #__PURE__ */ fromSI('volume', ZERO_RATIO);
/** Zero mass. Internal. */
export const NO_MASS = /* #__PURE__ */ fromSI('mass', ZERO_RATIO);
/** Zero slope: level. Internal. */
export const NO_SLOPE = /* #__PURE__ */ fromSI('slope', ZERO_RATIO);
/** Zero angle. Internal. */
export const NO_ANGLE = /* #__PURE__ */ fromSI('angle', ZERO_RATIO);
