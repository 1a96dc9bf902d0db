import { ERROR_CODES, fault, type ErrorCode, type SettlineError } from '../errors.js';

const SHOWN = 40;

/** The error for text that cannot be read: the reason, the place and the text itself. */
export function readingFault(code: ErrorCode, text: string, position: number): SettlineError {
  const shown = text.length > SHOWN ? `${text.slice(0, SHOWN)}...` : text;
  return fault(
    code,
    `cannot read ${JSON.stringify(shown)}: ${ERROR_CODES[code]} (at character ${position + 1})`,
    { reason: code, text: shown, position },
  );
}
