// What any public function returns, and its working, can be cloned: posted to a worker, or stored.
import { describe, expect, test } from 'vitest';
import { attempt } from 'settline/errors';
import { recordedCalls } from './recorded-calls.js';

const { calls } = await recordedCalls();

/** The digits that a caller asks for. */
const DECIMALS = ['convert'];
/** Lines and surfaces that are asked for levels: they have functions, and none can be cloned. */
const WITH_FUNCTIONS = ['gradeLine', 'planeThrough', 'bentGrade', 'warpedSurface', 'verticalCurve'];

/** Results that come one by one. */
const ONE_BY_ONE = ['planJobs'];

const isClonable = (value: unknown): boolean => {
  try {
    structuredClone(value);
    return true;
  } catch {
    return false;
  }
};

const resultsOf = (name: string) =>
  calls
    .filter((one) => one.name === name)
    .map(({ call, given }) => {
      // what is refused comes back as faults
      const outcome = attempt(() => call(...given) as { readonly working?: unknown } | null);
      return [outcome, outcome.ok ? (outcome.value?.working ?? null) : null];
    });

const apart = [...DECIMALS, ...WITH_FUNCTIONS, ...ONE_BY_ONE];
const names = [...new Set(calls.map(({ name }) => name))].filter((name) => !apart.includes(name));

describe('can be cloned, and its working', () => {
  test.each(names)('%s', (name) => {
    expect(resultsOf(name).filter((result) => !isClonable(result))).toEqual([]);
  });
});

test('what cannot be cloned is known', () => {
  expect(apart.filter((name) => resultsOf(name).every(isClonable))).toEqual([]);
});
