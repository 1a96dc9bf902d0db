/** Characters that XML refuses or that nobody can see: controls, lone surrogates, non-characters. */
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\ud800-\udfff\ufffe\uffff]/gu;
/** Letters and signs that stand for themselves. */
const PLAIN = /^[ !#-%(-;=?-~]*$/;
/** Marks that turn the direction of all text after them. */
const TURNING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** Hebrew, Arabic and other letters that run from right to left. */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefe\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A text as it stands in an SVG document, in an element or an attribute. Internal. */
export const escapeText = (text: string): string =>
  PLAIN.test(text)
    ? text
    : text.replace(UNPRINTABLE, '\ufffd').replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);

/**
 * A name that somebody typed, fit to stand inside other text: marks that turn the direction are
 * taken out, and a name that runs from right to left is set apart from the figures beside it.
 * Internal.
 */
export function shownName(name: string): string {
  const still = name.replace(TURNING, '').replace(UNPRINTABLE, '\ufffd');
  return RIGHT_TO_LEFT.test(still) ? `\u2068${still}\u2069` : still;
}
