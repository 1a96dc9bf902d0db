import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { Shape } from '../input/shape.js';

/** The fields of one form of a reading, all required. Internal. */
export type Form = readonly [string, ...string[]];

/**
 * Refuses a reading that is not given in exactly one complete form. Returns the first field of the
 * form; undefined if there is none, or more than one. Internal.
 */
export function oneForm(
  reader: Reader,
  raw: Readonly<Record<string, unknown>>,
  {
    forms,
    shape,
    path,
  }: { readonly forms: readonly Form[]; readonly shape: Shape; readonly path: FieldPath },
): string | undefined {
  const isGiven = (name: string) => raw[name] !== undefined;
  const used = forms.filter((form) => form.some(isGiven));
  const [form] = used;
  if (form === undefined) {
    const choices = forms.map((one) => one.join(' and ')).join(', or ');
    reader.fail('REQUIRED', path, `missing. Give ${choices}`, { choices });
    return undefined;
  }
  if (used.length > 1) {
    const names = used.map((one) => one.find(isGiven) ?? one[0]).join(' and ');
    reader.fail('CONFLICTING_FIELDS', path, `give only one of ${names}`, { choices: names });
    return undefined;
  }
  for (const name of form) {
    // reading the field already reports that it is missing
    if (!isGiven(name)) shape[name]?.read(reader, undefined, [...path, name]);
  }
  return form[0];
}
