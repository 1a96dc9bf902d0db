const DECIMAL_COMMA = /^(\s*[+-]?\d+),(\d+)(?![\d.,])([^,]*)$/;
/** After so many digits the comma may group thousands. */
const THOUSANDS = 3;

/**
 * What text with one comma may mean: with a point instead, and without the comma if it may group
 * thousands. Empty for any other text. Internal.
 */
export function withPoint(text: string): readonly string[] {
  const [, before, after, rest] = DECIMAL_COMMA.exec(text) ?? [];
  if (before === undefined || after === undefined || rest === undefined) return [];
  const meant = [`${before}.${after}${rest}`.trim()];
  return after.length === THOUSANDS ? [...meant, `${before}${after}${rest}`.trim()] : meant;
}
