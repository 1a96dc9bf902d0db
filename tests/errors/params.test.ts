// What `params` of a fault holds is what its page says.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ERROR_CODES, type Issue } from 'settline/errors';
import { tryPlanJob } from 'settline/job';
import { faultParams, PARAMS } from '../../.config/fault-params.mjs';
import { cedarCourtFile } from '../cedar-court.js';

const params = faultParams();
const page = readFileSync(
  new URL('../../docs/reference/error-codes.md', import.meta.url),
  'utf8',
).replaceAll(/ +/g, ' ');

test('the page of error codes names them beside each code', () => {
  for (const [code, meaning] of Object.entries(ERROR_CODES)) {
    const keys = (params.get(code) ?? []).map((key) => `\`${key}\``).join(', ');
    expect(page).toContain(`| \`${code}\` | ${meaning} | ${keys}${keys === '' ? '' : ' '}|`);
  }
});

test('each is explained, and no other', () => {
  expect(Object.keys(PARAMS)).toEqual([...new Set([...params.values()].flat())].sort());
  for (const [key, meaning] of Object.entries(PARAMS)) {
    expect(page).toContain(`| \`${key}\` | ${meaning} |`);
  }
});

/** Values that some field refuses, whatever it takes. */
const JUNK = [null, -1, 0, 7, 1e9, NaN, true, '', 'abc', '5', '-3 in', '9000 km', '1/0 in', [], {}];

/** Every place of a value, and its neighbours left out. */
function placesIn(value: unknown, path: readonly (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [[...path]];
  const inner = Object.entries(value).flatMap(([key, one]) =>
    placesIn(one, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [[...path], ...inner];
}

function spoilt(path: readonly (string | number)[], junk: unknown): unknown {
  const job: unknown = cedarCourtFile();
  let at = job as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  at[path.at(-1) ?? ''] = junk;
  return job;
}

describe('faults of spoilt jobs have no other', () => {
  const places = placesIn(cedarCourtFile()).filter((path, k) => path.length > 0 && k % 3 === 0);
  const faults = places.flatMap((path, k): readonly Issue[] => {
    const outcome = tryPlanJob(spoilt(path, JUNK[k % JUNK.length]));
    return outcome.ok ? [] : outcome.errors;
  });
  const codes = [...new Set(faults.map(({ code }) => code))];

  test('many codes are met', () => {
    expect(codes.length).toBeGreaterThan(10);
  });

  test.each(codes)('%s', (code) => {
    const given = faults
      .filter((one) => one.code === code)
      .flatMap((one) => Object.keys(one.params));
    expect(params.get(code) ?? []).toEqual(expect.arrayContaining(given));
  });
});
