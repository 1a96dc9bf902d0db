export { outlineArea, type OutlineArea } from './outline-area.js';
export type { OutlineInput } from './read-outline.js';
export { widenOutline, type WidenedOutline } from './widen-outline.js';
