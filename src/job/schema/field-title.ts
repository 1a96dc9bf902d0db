import { capital } from '../../capital.js';

/** The name of a field in words: `stringHeight` is `String height`. Internal. */
export function fieldTitle(key: string): string {
  const words = key
    .replace(/^\$/, '')
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .replaceAll('-', ' ');
  return capital(words);
}
