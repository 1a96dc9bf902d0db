export { drawProfile, type DrawProfileOptions } from './profile/draw-profile.js';
export { drawSection, type DrawSectionOptions } from './section/draw-section.js';
export { DRAWING_TEXTS, type DrawingLabelKey } from './label-texts.js';
export type { DrawingLabel, DrawingLabelValues } from './draw-label.js';
export type { DrawOptions } from './draw-options.js';
export type { DrawTheme } from './frame/themes.js';
