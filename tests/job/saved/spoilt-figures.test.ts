import { expect, test } from 'vitest';
import { pathText } from 'settline';
import { planJob, readPlan } from 'settline/job';
import { savedPlan } from '../../built-in-plans.js';
import { faultsOf } from '../../faults.js';
import { slateWharfJob } from '../../slate-wharf.js';

const PLAN = savedPlan(planJob(slateWharfJob()));

/** The plan with one field set to something else. */
function spoilt(path: readonly (string | number)[], value: unknown): unknown {
  const plan: unknown = structuredClone(PLAN);
  let at = plan;
  for (const step of path.slice(0, -1)) at = Reflect.get(Object(at) as object, step);
  expect(Reflect.set(Object(at) as object, path.at(-1) ?? '', value)).toBe(true);
  return plan;
}

const LIFT = ['pavements', 0, 'lifts', 0, 'lift'];
const CLOSES_UP = ['pavements', 0, 'digClosesUp'];
const PER_LOOSE = ['job', 'materials', 'stones', 0, 'compactedPerLoose'];
const PASSES = ['job', 'rates', 'plate', 'passes'];
const HEIGHT = ['stringLines', 0, 'stringHeight'];

test.each<[string, readonly (string | number)[], unknown, string]>([
  [
    'a number beyond all plans',
    LIFT,
    2e12,
    '2000000000000 is more than any plan holds. Check the digits',
  ],
  ['a negative number', LIFT, -1, '-1 is negative. This figure is zero or more'],
  ['half a lift', LIFT, 1.5, '1.5 is not a whole number'],
  ['no number', LIFT, null, 'expected a number, got null'],
  ['a word for yes or no', CLOSES_UP, 'yes', 'expected true or false, got "yes"'],
  ['a flag for digits', PER_LOOSE, true, 'expected digits as text, got true'],
  ['digits beyond all jobs', PER_LOOSE, '2e12', '"2e12" is more than any job holds'],
  ['negative digits', PER_LOOSE, '-0.8', '"-0.8" is negative. This figure is zero or more'],
  [
    'a text for a quantity',
    HEIGHT,
    'high',
    'expected { value, unit }, such as { "value": "1", "unit": "m" }, got "high"',
  ],
  ['half a pass', PASSES, '2.5', '"2.5" is not a whole number'],
])('%s', (_name, path, value, message) => {
  const faults = faultsOf(() => readPlan(spoilt(path, value)));
  expect(faults.map((one) => [pathText(one.path), one.code, one.message])).toEqual([
    [pathText(path), 'PLAN_INVALID', message],
  ]);
});

test('of 101 faults the last is counted, as one', () => {
  const faults = faultsOf(() => readPlan(spoilt(['warnings'], Array(101).fill(5))));
  expect(faults).toHaveLength(101);
  expect(faults.at(-1)).toEqual({
    path: [],
    code: 'MORE_FAULTS',
    message: '1 more fault is not listed',
    params: { count: 1 },
  });
});
