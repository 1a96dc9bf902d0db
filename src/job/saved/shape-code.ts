import { entry } from '../../invariant.js';
import { PLAN_SHAPE } from './plan-shape.js';

/** What a field of a plan holds. Internal. */
export type Code =
  | { readonly kind: 'nullable' | 'list' | 'record'; readonly of: Code }
  | { readonly kind: 'object'; readonly fields: readonly FieldCode[] }
  | { readonly kind: 'either'; readonly of: readonly (readonly FieldCode[])[] }
  | { readonly kind: 'choice'; readonly words: readonly string[] }
  | { readonly kind: 'plain'; readonly name: string };

/** A field of an object of a plan. Internal. */
export interface FieldCode {
  readonly name: string;
  readonly isOptional: boolean;
  readonly code: Code;
}

const objects = new Map<number, readonly FieldCode[]>();

/** The fields of an object of the table; taken apart once. */
function fieldsOf(at: number): readonly FieldCode[] {
  const known = objects.get(at);
  if (known !== undefined) return known;
  const fields = entry(PLAN_SHAPE, at).split(';').map(fieldIn);
  objects.set(at, fields);
  return fields;
}

function fieldIn(text: string): FieldCode {
  const [head = '', code = ''] = text.split(' ');
  const isOptional = head.endsWith('?');
  return { name: isOptional ? head.slice(0, -1) : head, isOptional, code: codeIn(code) };
}

/**
 * Reads a code: `?` may be null, `[]` list, `{}` record, `=` choice, `#` object, `#|#` objects told apart
 * by their `kind`, else a plain name.
 */
function codeIn(text: string): Code {
  if (text.startsWith('?')) return { kind: 'nullable', of: codeIn(text.slice(1)) };
  if (text.startsWith('[]')) return { kind: 'list', of: codeIn(text.slice(2)) };
  if (text.startsWith('{}')) return { kind: 'record', of: codeIn(text.slice(2)) };
  if (text.startsWith('=')) return { kind: 'choice', words: text.slice(1).split('|') };
  if (text.startsWith('#')) {
    const [fields = [], ...more] = text.split('|').map((one) => fieldsOf(Number(one.slice(1))));
    return more.length === 0
      ? { kind: 'object', fields }
      : { kind: 'either', of: [fields, ...more] };
  }
  return { kind: 'plain', name: text };
}

/** The fields of a plan. Internal. */
export const planFields = (): readonly FieldCode[] => fieldsOf(PLAN_SHAPE.length - 1);
