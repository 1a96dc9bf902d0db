import { fault, isSettlineError, SettlineError, type ErrorCode, type Issue } from '../errors.js';
import { entry } from '../invariant.js';
import { unknownField } from '../nearest-name.js';
import { shown } from './shown.js';

/** What is wrong with the value of an option. Internal. */
export interface OptionFault {
  readonly code: ErrorCode;
  readonly message: string;
  readonly params?: Issue['params'];
}

/** Checks the value of an option; undefined if it is valid. Internal. */
export type OptionCheck = (value: unknown) => OptionFault | undefined;

/**
 * Refuses unknown keys and invalid values of options, all faults at once. An option that is
 * undefined counts as left out. Internal.
 */
export function checkOptions(
  options: unknown,
  checks: Readonly<Record<string, OptionCheck>>,
): void {
  if (typeof options !== 'object' || options === null || Array.isArray(options)) {
    throw fault('WRONG_TYPE', `expected options { ... }, got ${shown(options)}`);
  }
  let issues: [Issue, ...Issue[]] | undefined;
  const given = options as Readonly<Record<string, unknown>>;
  for (const key in given) {
    const found = Object.hasOwn(checks, key)
      ? faultOf(checks[key], given[key])
      : unknownOption(key, checks);
    if (found === undefined) continue;
    const issue = { path: [key], params: {}, ...found };
    if (issues === undefined) issues = [issue];
    else issues.push(issue);
  }
  if (issues !== undefined) throw new SettlineError(issues);
}

const faultOf = (check: OptionCheck | undefined, value: unknown): OptionFault | undefined =>
  value === undefined ? undefined : check?.(value);

function unknownOption(key: string, checks: Readonly<Record<string, OptionCheck>>): OptionFault {
  const { message, params } = unknownField(key, Object.keys(checks));
  return { code: 'UNKNOWN_FIELD', message, params };
}

/** An option that is true or false. Internal. */
export const isFlag: OptionCheck = (value) =>
  typeof value === 'boolean'
    ? undefined
    : { code: 'WRONG_TYPE', message: `expected true or false, got ${shown(value)}` };

/** An option that is one of several words. Internal. */
export const isOneOf =
  (choices: readonly string[]): OptionCheck =>
  (value) => {
    if (typeof value === 'string' && choices.includes(value)) return undefined;
    const list = choices.join(', ');
    const message = `${shown(value)} is not one of ${list}`;
    return { code: 'UNKNOWN_CHOICE', message, params: { choices: list } };
  };

/** Reads the value of an option; a fault names the option. Internal. */
export function readOption<T>(name: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const { code, message, params } = entry(error.issues, 0);
    throw fault(code, message, params, [name]);
  }
}
