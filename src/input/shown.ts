// the readers of quantities show values in the same way
export { shown } from '../units/shown.js';
export { shownText } from '../shown-text.js';
