/**
 * Widths in parts of the type size, measured on a wide sans-serif face and rounded up: others come out
 * narrower.
 */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[\u0300-\u036f\u200b-\u200f\u2060-\u2069\ufe00-\ufe0f]/, 0],
  [/[ ijlIJ,.:;'|/\\]/, 0.36],
  [/[-()[\]tfr!]/, 0.43],
  [/[szcFkLvxy*_`"?]/, 0.61],
  [/[abdeghnopqu0-9PTYES${}]/, 0.66],
  [/[KABCRVXZU]/, 0.75],
  [/[HNDGOQ&]/, 0.81],
  [/[w#+<=>^~\u00a0-\u058f]/, 0.88],
  [/[\u0021-\u007e\u2026]/, 1.02],
];
const OTHER = 1.15;
const BEYOND_PLANE_0 = 1.5;

const widthOf = (character: string): number =>
  WIDTHS.find(([kind]) => kind.test(character))?.[1] ?? OTHER;

/** The widths of the first characters, by their codes. */
const FIRST: readonly number[] = Array.from({ length: 128 }, (_, code) =>
  widthOf(String.fromCharCode(code)),
);

function characterWidth(character: string): number {
  if (character.length > 1) return BEYOND_PLANE_0;
  return FIRST[character.charCodeAt(0)] ?? widthOf(character);
}

/** Bold type is wider by this. Internal. */
export const STRONG = 1.13;

/** How wide a text may come out, in the unit of its size: an estimate on the safe side. Internal. */
export function textWidth(text: string, size: number, isStrong = false): number {
  let sum = 0;
  for (const character of text) sum += characterWidth(character);
  return sum * size * (isStrong ? STRONG : 1);
}

const ELLIPSIS = '\u2026';
const CLOSE_ISOLATE = '\u2069';

/** A text cut to the room there is, with an ellipsis where something is left out. Internal. */
export function fitText(text: string, size: number, room: number): string {
  if (textWidth(text, size) <= room) return text;
  let left = room - textWidth(ELLIPSIS, size);
  let cut = '';
  for (const character of text) {
    left -= textWidth(character, size);
    if (left < 0) break;
    cut += character;
  }
  const isOpen = cut.includes('\u2068') && !cut.includes(CLOSE_ISOLATE);
  return `${cut.trimEnd()}${ELLIPSIS}${isOpen ? CLOSE_ISOLATE : ''}`;
}

/** Words of a line: a measure such as 27 1/4 in or 7' 3 5/8" is one. */
const WORDS =
  /\S*\d' \d+(?: \d+\/\d+)?"\S*|\S*\d \d+\/\d+(?: (?:in|ft|mm|m)(?![a-z]))?\S*|\S*\d (?:in|ft|mm|m)(?![a-z])\S*|\S+/g;

/** A text in lines no wider than the room; the last is cut where there are more than `most`. Internal. */
export function wrapText(text: string, size: number, room: number, most = 40): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.match(WORDS) ?? []) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || lines.length === most - 1 || textWidth(longer, size) <= room) {
      line = longer;
      continue;
    }
    lines.push(line);
    line = word;
  }
  return [...lines, line].map((one) => fitText(one, size, room));
}
