const LETTERS = 26;

/** The name of a corner, counted from 0: A to Z, then AA, AB ... Internal. */
export function cornerName(index: number): string {
  const letter = String.fromCharCode('A'.charCodeAt(0) + (index % LETTERS));
  return index < LETTERS ? letter : cornerName(Math.floor(index / LETTERS) - 1) + letter;
}
