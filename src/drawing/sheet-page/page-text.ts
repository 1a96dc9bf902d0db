import { escapeText } from '../svg/escape-text.js';

/** Marks that turn the direction of all text after them. */
const TURNING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** Words that run from right to left, and the spaces between them. */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefe]+(?: [\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefe]+)*/g;

/** Text in an attribute or a title, where no markup can stand. Internal. */
export const plainText = (text: string): string => escapeText(text.replace(TURNING, ''));

/**
 * Text of a page: nothing in it is markup, and words that run from right to left leave the figures
 * beside them where they are. Internal.
 */
export const pageText = (text: string): string =>
  plainText(text).replace(RIGHT_TO_LEFT, '<bdi>$&</bdi>');

/** An element of a page; what stands in it is markup already. Internal. */
export const tag = (name: string, content: string, style?: string): string =>
  `<${name}${style === undefined ? '' : ` class="${style}"`}>${content}</${name}>`;
