import type * as z from 'zod';
import { SettlineError, type ErrorCode, type FieldPath, type Issue } from '../../errors.js';
import { shown } from '../../input/shown.js';
import { crossChecks } from './cross-checks.js';
import { knownFields } from '../schema/known-fields.js';
import { jobSchema, type Job } from '../schema/schema.js';

/**
 * Reads a job description: the schema first, then what only the whole can tell (ids, layer order,
 * edges). Internal.
 *
 * @throws `JOB_INVALID` with every fault in `issues`
 */
export function readJob(input: unknown): Job {
  const parsed = jobSchema.safeParse(input);
  if (!parsed.success)
    throw jobInvalid(parsed.error.issues.flatMap((one) => translate(one, input)));
  const issues = crossChecks(parsed.data);
  if (issues.length > 0) throw jobInvalid(issues);
  return parsed.data;
}

/** The error for a job with faults. Internal. */
export function jobInvalid(issues: readonly Issue[]): SettlineError {
  const [first, ...rest] = issues;
  const known = first ?? { path: [], code: 'JOB_INVALID', message: 'invalid', params: {} };
  return new SettlineError([known, ...rest], 'JOB_INVALID');
}

type ZodIssue = z.core.$ZodIssue;

/** Puts a fault of the schema into the library's codes and into words. */
function translate(issue: ZodIssue, input: unknown): Issue[] {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  const value = valueAt(input, path);
  const one = (code: ErrorCode, message: string, params: Issue['params'] = {}): Issue[] => [
    { path, code, message, params },
  ];
  switch (issue.code) {
    case 'custom':
      return one(
        (issue.params?.['code'] ?? 'WRONG_TYPE') as ErrorCode,
        issue.message,
        (issue.params?.['params'] ?? {}) as Issue['params'],
      );
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownField([...path, key]));
    case 'invalid_value': {
      const choices = issue.values.map(String).join(', ');
      return value === undefined
        ? one('REQUIRED', `is missing: choose ${choices}`, { choices })
        : one('UNKNOWN_CHOICE', `${shown(value)} is not among: ${choices}`, { choices });
    }
    case 'too_small':
      return one('EMPTY_LIST', 'the list is empty');
    case 'too_big':
      return one('CAPACITY_EXCEEDED', `more than ${issue.maximum} entries`, {
        most: Number(issue.maximum),
      });
    case 'invalid_type':
      return value === undefined && path.length > 0
        ? one('REQUIRED', `is missing: expected ${TYPE_WORDS[issue.expected] ?? issue.expected}`)
        : one('WRONG_TYPE', wrongType(issue.expected, value, path), { expected: issue.expected });
    default:
      return one('WRONG_TYPE', issue.message);
  }
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  object: 'an object { ... }',
  array: 'a list [ ... ]',
  boolean: 'true or false',
  string: 'text',
  number: 'a number',
};

function wrongType(expected: string, value: unknown, path: FieldPath): string {
  const words = TYPE_WORDS[expected] ?? expected;
  if (path.length === 0 && typeof value === 'string') {
    return 'expected a job object, got text: parse the JSON first';
  }
  return `expected ${words}, got ${shown(value)}`;
}

function unknownField(path: FieldPath): Issue {
  const key = String(path.at(-1));
  const known = knownFields(jobSchema, path.slice(0, -1));
  const takes = known.length === 0 ? '' : `; this object takes ${known.join(', ')}`;
  return { path, code: 'UNKNOWN_FIELD', message: `unknown field${takes}`, params: { key } };
}

function valueAt(input: unknown, path: FieldPath): unknown {
  let value = input;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}
