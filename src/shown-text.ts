/** Characters of the caller's text that a message shows. */
const MOST_SHOWN = 40;

/** The caller's text, cut if it is long. Internal. */
export const shownText = (text: string): string =>
  text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN - 3)}...` : text;
