import { fromSI } from './quantity.js';
import { ZERO_RATIO } from './ratio.js';

/** No length: what is left out, or adds nothing. Internal. */
export const NO_LENGTH = /* #__PURE__ */ fromSI('length', ZERO_RATIO);
/** No area. Internal. */
export const NO_AREA = /* #__PURE__ */ fromSI('area', ZERO_RATIO);
/** No volume. Internal. */
export const NO_VOLUME = /* #__PURE__ */ fromSI('volume', ZERO_RATIO);
/** No mass. Internal. */
export const NO_MASS = /* #__PURE__ */ fromSI('mass', ZERO_RATIO);
/** No slope: level. Internal. */
export const NO_SLOPE = /* #__PURE__ */ fromSI('slope', ZERO_RATIO);
/** No angle: along the line. Internal. */
export const NO_ANGLE = /* #__PURE__ */ fromSI('angle', ZERO_RATIO);
