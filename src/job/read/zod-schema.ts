import * as z from 'zod/mini';
import { isSettlineError } from '../../errors.js';
import type { JsonSchemaPart } from '../../input/about.js';

/**
 * A zod schema that reads with a function of the library. Each fault is an issue with its path and
 * message, and its code in `params`. The JSON Schema is made on first use. Internal.
 */
export function zodSchema<T>(
  read: (value: unknown) => T,
  jsonSchema: () => JsonSchemaPart,
): z.ZodMiniType<T, T> {
  const input = z.any().register(z.globalRegistry, fieldsOnRequest(jsonSchema));
  return z.pipe(
    input,
    z.transform((value: unknown, context): T => {
      try {
        return read(value);
      } catch (error) {
        if (!isSettlineError(error)) throw error;
        for (const { code, message, params, path } of error.issues) {
          context.issues.push({
            code: 'custom',
            message,
            path: [...path],
            params: { code, params },
            input: value,
          });
        }
        return z.NEVER;
      }
    }),
  );
}

/** The fields of a JSON Schema of an object. Reading one of them makes the schema. */
const FIELDS = [
  '$schema',
  '$id',
  'title',
  'type',
  'properties',
  'required',
  'additionalProperties',
];

function fieldsOnRequest(jsonSchema: () => JsonSchemaPart): Record<string, unknown> {
  let made: JsonSchemaPart | undefined;
  const fields = {};
  for (const name of FIELDS) {
    const get = () => (made ??= jsonSchema())[name];
    Object.defineProperty(fields, name, { get, enumerable: true });
  }
  return fields;
}
