/**
 * Widths in parts of the type size, measured on a wide sans-serif face and rounded up: others come out
 * narrower.
 */
const WIDTHS = [0.36, 0.43, 0.61, 0.66, 0.75, 0.81, 0.88, 1.02];
const OTHER = 1.15;
const BEYOND_PLANE_0 = 1.5;

/** The widths of the characters from the space to the tilde, each by its place among those above. */
const FIRST = Array.from(
  '01263750112601003333333333006662744453255004275535433447434101622332331330020733331213262223036',
  (place) => WIDTHS[Number(place)],
);

/** Marks that are drawn over the letter before them, or not at all. */
const NO_WIDTH = /[\u0300-\u036f\u200b-\u200f\u2060-\u2069\ufe00-\ufe0f]/;

function characterWidth(character: string): number {
  const code = character.charCodeAt(0);
  const first = FIRST[code - 32];
  if (first !== undefined) return first;
  if (character.length > 1) return BEYOND_PLANE_0;
  if (NO_WIDTH.test(character)) return 0;
  if (character === ELLIPSIS) return 1.02;
  return code > 0x9f && code < 0x590 ? 0.88 : OTHER;
}

/** Three dots in one. */
const ELLIPSIS = '\u2026';

/** Bold type is wider by this. Internal. */
export const STRONG = 1.13;

/** How wide a text may come out, in the unit of its size: an estimate on the safe side. Internal. */
export function textWidth(text: string, size: number, isStrong = false): number {
  let sum = 0;
  for (const character of text) sum += characterWidth(character);
  return sum * size * (isStrong ? STRONG : 1);
}

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
