import { text } from '../../input/field.js';

/** A short name or id: one line of up to 60 characters. Internal. */
export const NAME = text(60);
