import * as z from 'zod';
import type { FieldPath } from '../../errors.js';

/** The field names that the schema knows at a path; none where it cannot tell. Internal. */
export function knownFields(schema: z.ZodType, path: FieldPath): readonly string[] {
  let here: unknown = schema;
  for (const step of path) {
    here = unwrap(here);
    if (here instanceof z.ZodArray) here = here.element;
    else if (here instanceof z.ZodObject) here = here.shape[step] as unknown;
    else return [];
  }
  const last = unwrap(here);
  return last instanceof z.ZodObject ? Object.keys(last.shape) : [];
}

function unwrap(schema: unknown): unknown {
  return schema instanceof z.ZodOptional ? unwrap(schema.unwrap()) : schema;
}
